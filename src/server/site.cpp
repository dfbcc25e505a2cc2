#include "server/site.h"

#include "server/refusal.h"

#include <algorithm>
#include <string>
#include <string_view>

namespace keenfall::server {

namespace {

constexpr std::string_view kDeskPage = "/index.html";
constexpr std::string_view kBench = "/bench";
constexpr std::string_view kBenchPage = "/bench.html";

const PageFile* file_at(std::string_view path, std::span<const PageFile> files) {
  const auto found = std::ranges::find(files, path, &PageFile::path);
  return found == files.end() ? nullptr : &*found;
}

bool is_path_of_app(std::string_view path) {
  return path.substr(path.rfind('/')).find('.') == std::string_view::npos;
}

// As in "br;q=1.0, gzip;q=0.8, *;q=0.1", where q=0 means: not that.
bool takes_gzip(const HttpRequest& request) {
  std::string wanted = in_lower_case(header_of(request, "accept-encoding"));
  std::erase(wanted, ' ');
  const std::size_t at = wanted.find("gzip");
  if (at == std::string::npos) return false;
  const std::string_view after = std::string_view(wanted).substr(at, wanted.find(',', at) - at);
  const std::size_t weight = after.find(";q=0");
  return weight == std::string_view::npos ||
         after.substr(weight + 4).find_first_of("123456789") != std::string_view::npos;
}

bool has_it_already(const HttpRequest& request, const std::string& tag) {
  const std::string_view held = header_of(request, "if-none-match");
  return held == "*" || held.find(tag) != std::string_view::npos;
}

}  // namespace

HttpResponse site_answer(const HttpRequest& request,
                         std::span<const PageFile> files,
                         FirstPage first) {
  const bool is_read = request.method == "GET" || request.method == "HEAD";
  if (!is_read) {
    HttpResponse answer = refused({.status = 405,
                                   .kind = "bad_value",
                                   .sentence = "A page can only be asked for with GET or HEAD."},
                                  request.path);
    answer.headers.push_back({.name = "Allow", .text = "GET, HEAD"});
    return answer;
  }
  const PageFile* file = file_at(request.path, files);
  if (first == FirstPage::bench && request.path == kDeskPage) file = nullptr;
  if (file == nullptr && is_path_of_app(request.path)) {
    const bool is_bench = first == FirstPage::bench || request.path == kBench;
    file = file_at(is_bench ? kBenchPage : kDeskPage, files);
  }
  if (file == nullptr) {
    return refused({.status = 404,
                    .kind = "not_found",
                    .sentence = "Keenfall has no page at " + request.path + "."},
                   request.path);
  }
  const std::string tag = "W/\"" + file->tag + "\"";
  const bool is_named_by_content = file->path.starts_with("/assets/");
  HttpResponse answer{
      .content_type = file->content_type,
      .headers = {{"ETag", tag},
                  {"Vary", "Accept-Encoding"},
                  {"Cache-Control",
                   is_named_by_content ? "private, max-age=31536000, immutable" : "no-cache"}}};
  if (has_it_already(request, tag)) {
    answer.status = 304;
  } else if (takes_gzip(request)) {
    answer.body = file->compressed;
    answer.headers.push_back({.name = "Content-Encoding", .text = "gzip"});
  } else {
    answer.body = file->whole;
  }
  return answer;
}

}  // namespace keenfall::server
