#include "trust/request.h"

#include "trust/experiment.h"

#include <algorithm>
#include <charconv>
#include <optional>
#include <string_view>

namespace keenfall::trust {

namespace {

using base::Problem;

// "--trials=400" after "--trials=".
std::optional<std::string> argument_of(std::string_view word, std::string_view option) {
  if (!word.starts_with(option)) return std::nullopt;
  return std::string(word.substr(option.size()));
}

struct WholeNumber {
  std::string option;
  int most = 0;
};

base::Result<int> whole_number(const std::string& found, const WholeNumber& wanted) {
  int number = 0;
  const auto read = std::from_chars(found.data(), found.data() + found.size(), number);
  const bool all = !found.empty() && read.ptr == found.data() + found.size();
  if (all && read.ec == std::errc() && number >= 1 && number <= wanted.most) return number;
  return base::failed(
      {.kind = base::ProblemKind::bad_value,
       .sentence = wanted.option + " takes a number, and \"" + found + "\" is none it takes.",
       .accepted = "a whole number from 1 to " + std::to_string(wanted.most)});
}

bool is_known(const std::string& name) {
  return std::ranges::any_of(all_experiments(1), [&name](const Experiment& experiment) {
    return experiment.name == name || experiment.cell == name || experiment.kind == name;
  });
}

}  // namespace

base::ResultOrProblems<Request> request_of(std::span<const std::string> words,
                                           unsigned usual_threads) {
  Request request{.threads = usual_threads};
  std::vector<Problem> problems;
  for (const std::string& word : words) {
    if (word == "list") {
      request.list = true;
    } else if (const auto trials = argument_of(word, "--trials=")) {
      const auto number = whole_number(*trials, {.option = "--trials", .most = 1'000'000});
      if (number) request.most_trials = *number;
      if (!number) problems.push_back(number.error());
    } else if (const auto threads = argument_of(word, "--threads=")) {
      const auto number = whole_number(*threads, {.option = "--threads", .most = 1024});
      if (number) request.threads = static_cast<unsigned>(*number);
      if (!number) problems.push_back(number.error());
    } else if (const auto folder = argument_of(word, "--folder=")) {
      request.folder = *folder;
    } else if (const auto code = argument_of(word, "--code=")) {
      request.code = *code;
    } else if (const auto commit = argument_of(word, "--commit=")) {
      request.commit = *commit;
    } else if (is_known(word)) {
      request.names.push_back(word);
    } else {
      problems.push_back(
          {.kind = base::ProblemKind::unknown_name,
           .sentence = "There is no experiment and no option called \"" + word + "\".",
           .accepted = "--trials=, --threads=, or what `./keen trust list` names"});
    }
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return request;
}

}  // namespace keenfall::trust
