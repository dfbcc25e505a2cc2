#include "trust/measuring/sums.h"

#include "base/plain_number.h"

#include <charconv>

namespace keenfall::trust {

void add(Sums& sums, std::string_view name, double amount) { sums[std::string(name)] += amount; }

void add_all(Sums& sums, const Sums& others) {
  for (const auto& [name, amount] : others) sums[name] += amount;
}

double sum_of(const Sums& sums, std::string_view name) {
  const auto found = sums.find(std::string(name));
  return found == sums.end() ? 0 : found->second;
}

std::string in_one_line(const Sums& sums) {
  std::string line;
  for (const auto& [name, amount] : sums) {
    if (!line.empty()) line += ';';
    line += name + "=" + base::plain_number(amount);
  }
  return line;
}

base::Result<Sums> sums_in(std::string_view line) {
  Sums sums;
  while (!line.empty()) {
    const std::string_view part = line.substr(0, line.find(';'));
    line.remove_prefix(part.size() == line.size() ? part.size() : part.size() + 1);
    const std::size_t equals = part.find('=');
    double amount = 0;
    const std::string_view number =
        equals == std::string_view::npos ? std::string_view() : part.substr(equals + 1);
    const auto read = std::from_chars(number.data(), number.data() + number.size(), amount);
    if (number.empty() || read.ec != std::errc() || read.ptr != number.data() + number.size()) {
      return base::failed({.kind = base::ProblemKind::bad_value,
                           .sentence = "A sum is a name, \"=\" and a number.",
                           .place = {.found = std::string(part)}});
    }
    sums[std::string(part.substr(0, equals))] = amount;
  }
  return sums;
}

}  // namespace keenfall::trust
