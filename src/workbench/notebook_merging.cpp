#include "workbench/notebook_merging.h"

#include "exchange/run_remarks.h"
#include "workbench/notebook_package.h"

#include <filesystem>
#include <utility>
#include <vector>

namespace keenfall::workbench {

namespace {

using Outcome = base::ResultOrProblems<notebook::Merged>;

// Its own name; of a descriptor or "folder/", the folder's.
std::string short_name(const std::string& path) {
  std::filesystem::path name(path);
  if (name.filename() == "datapackage.json" || !name.has_filename()) name = name.parent_path();
  return name.filename().string();
}

Outcome merged(const MergeRequest& request,
               const notebook::Notebook& other,
               const std::string& what,
               const Hand& hand) {
  return naming_the_file(request.notebook, [&]() -> Outcome {
    auto opened = opened_whole_to_write(request.notebook, hand, Checked::any_size);
    if (!opened) return base::failed_by(opened.error());
    notebook::MergeRules rules = request.rules;
    rules.remarks_on = exchange::remarks_on_names;
    auto result = notebook::merge(*opened, other, what, rules, authorship_of(hand));
    if (result) return result;
    for (base::Problem& problem : result.error()) {
      if (problem.place.file.empty()) problem.place.file = request.notebook;
    }
    return result;
  });
}

Outcome merge_package(const MergeRequest& request, const Hand& hand) {
  const auto package = read_package(request.other);
  if (!package) return tl::unexpected(package.error());
  auto result = merged(
      request, package->content->notebook(), "take package " + short_name(request.other), hand);
  if (result) {
    result->remarks.insert(result->remarks.end(), package->remarks.begin(), package->remarks.end());
  }
  return result;
}

}  // namespace

Outcome merge_into(const MergeRequest& request, const Hand& hand) {
  if (is_package(request.other)) return merge_package(request, hand);
  return naming_the_file(request.other, [&]() -> Outcome {
    const auto other = opened_to_read(request.other);
    if (!other) return base::failed_by(other.error());
    const notebook::OneMoment moment(*other);  // what was checked is what is merged
    return merged(request, *other, "merge " + short_name(request.other), hand);
  });
}

}  // namespace keenfall::workbench
