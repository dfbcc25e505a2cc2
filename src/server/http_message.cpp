#include "server/http_message.h"

#include <algorithm>

namespace keenfall::server {

std::string_view header_of(const HttpRequest& request, std::string_view name_in_lower_case) {
  const auto found = std::ranges::find(request.headers, name_in_lower_case, &NamedText::name);
  return found == request.headers.end() ? std::string_view() : std::string_view(found->text);
}

std::optional<std::string> queried(const HttpRequest& request, std::string_view name) {
  const auto found = std::ranges::find(request.query, name, &NamedText::name);
  if (found == request.query.end()) return std::nullopt;
  return found->text;
}

std::string in_lower_case(std::string_view text) {
  std::string lower(text);
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return lower;
}

}  // namespace keenfall::server
