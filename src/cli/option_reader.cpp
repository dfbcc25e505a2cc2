#include "cli/option_reader.h"

#include "cli/option_numbers.h"
#include "materials/quantity.h"
#include "materials/units.h"

#include <algorithm>
#include <utility>

namespace keenfall::cli {

void OptionReader::add(base::Problem problem) { problems_.push_back(std::move(problem)); }

void OptionReader::refuse(const std::string& option, const base::Problem& problem) {
  add(under_option(problem, option));
}

void OptionReader::missing(const std::string& option,
                           const std::string& what,
                           const std::string& example) {
  add({.kind = base::ProblemKind::missing,
       .sentence = option + " is missing: " + what + ".",
       .place = {.column = option},
       .accepted = example});
}

void OptionReader::add_new(const std::vector<base::Problem>& problems) {
  const std::vector<base::Problem> before = problems_;
  for (const base::Problem& problem : problems) {
    const auto is_of_option = [&](const base::Problem& known) {
      return known.place.column == problem.place.column;
    };
    if (std::ranges::none_of(before, is_of_option)) add(problem);
  }
}

void OptionReader::quantity(const std::string& option,
                            const std::optional<std::string>& text,
                            std::string_view unit,
                            double& into) {
  if (!text) return;
  into = kUnread;
  const auto typed = materials::parse_quantity(*text);
  if (!typed) return refuse(option, typed.error());
  if (typed->unit.empty()) {
    return refuse(option,
                  {.kind = base::ProblemKind::missing,
                   .sentence = "“" + *text + "” has no unit",
                   .place = {.found = *text},
                   .accepted = "a number with its unit, such as " + *text + std::string(unit)});
  }
  const auto converted = materials::convert(typed->number, typed->unit, unit);
  if (!converted) return refuse(option, converted.error());
  into = *converted;
}

void OptionReader::angle(const std::string& option,
                         const std::optional<std::string>& text,
                         trials::PerSideAngle& into) {
  if (!text) return;
  const auto deg = angle_per_side_of(option, *text);
  into.deg = deg ? *deg : kUnread;
  if (!deg) add(deg.error());
}

void OptionReader::plain_number(const std::string& option,
                                const std::optional<std::string>& text,
                                double& into) {
  if (!text) return;
  const auto number = number_of(option, *text);
  into = number ? *number : kUnread;
  if (!number) add(number.error());
}

}  // namespace keenfall::cli
