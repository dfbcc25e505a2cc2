#include "cli/option_problems.h"

#include "materials/spelling.h"

#include <string_view>
#include <vector>

namespace keenfall::cli {

namespace {

// "did you mean --worth-it", of the options that are there.
std::string nearest_option(const std::string& option, const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::Option* known : app.get_options()) {
    for (const std::string& name : known->get_lnames()) names.push_back("--" + name);
  }
  const std::vector<std::string_view> views(names.begin(), names.end());
  return materials::did_you_mean(option, views);
}

}  // namespace

base::Problem unknown_option(const std::string& word, const CLI::App& app) {
  const std::string option = word.substr(0, word.find('='));
  if (option == "--keep-good") {
    return {.kind = base::ProblemKind::unknown_name,
            .sentence =
                "--keep-good is for taking tables into a notebook (keenfall take): an "
                "answer never rests on tables of which only some rows were read.",
            .place = {.column = option}};
  }
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "There is no option \"" + option + "\" here.",
          .place = {.column = "--", .found = word},
          .accepted = nearest_option(option, app)};
}

// The parser's message begins with the option: "--seed: 1 required TEXT missing".
base::Problem problem_of_parsing(const CLI::ParseError& error) {
  const std::string message = error.what();
  const std::string option = message.substr(0, message.find(':'));
  const bool names_an_option = option.starts_with("--");
  const bool too_many =
      message.find("At most") != std::string::npos || message.find("received") != std::string::npos;
  std::string sentence = "These options cannot be read: " + message + ".";
  if (names_an_option) {
    sentence = too_many ? option + " is given more than once; once is enough."
                        : option + " needs a value after it.";
  }
  return {.kind = base::ProblemKind::bad_value,
          .sentence = sentence,
          .place = {.column = names_an_option ? option : "--", .found = ""}};
}

}  // namespace keenfall::cli
