#include "cli/option_numbers.h"

#include "materials/quantity.h"
#include "materials/units.h"

#include <charconv>
#include <cstdint>
#include <string_view>
#include <system_error>
#include <utility>

namespace keenfall::cli {

namespace {

constexpr unsigned kMostThreads = 256;

struct Wanted {
  std::string words;     // "a whole number"
  std::string accepted;  // may be empty
};

base::Problem not_wanted(const std::string& option, const std::string& text, const Wanted& wanted) {
  return {.kind = base::ProblemKind::bad_value,
          .sentence = option + " must be " + wanted.words + ", not \"" + text + "\".",
          .place = {.column = option, .found = text},
          .accepted = wanted.accepted};
}

template <class Number>
base::Result<Number> whole_text(const std::string& option,
                                const std::string& text,
                                const Wanted& wanted) {
  Number number{};
  const char* const end = text.data() + text.size();
  const auto [stop, fault] = std::from_chars(text.data(), end, number);
  if (fault == std::errc() && stop == end && !text.empty()) return number;
  return base::failed(not_wanted(option, text, wanted));
}

}  // namespace

base::Result<long> whole_number_of(const std::string& option, const std::string& text) {
  return whole_text<long>(option, text, {.words = "a whole number", .accepted = {}});
}

base::Result<double> number_of(const std::string& option, const std::string& text) {
  const auto number = materials::parse_quantity(text);
  if (number && number->unit.empty()) return number->number;
  if (number) {
    return base::failed(
        not_wanted(option, text, {.words = "a number without a unit", .accepted = {}}));
  }
  const bool is_of_marks = text.find(',') != std::string::npos;
  return base::failed(is_of_marks
                          ? under_option(number.error(), option)
                          : not_wanted(option, text, {.words = "a number", .accepted = {}}));
}

base::Result<double> angle_per_side_of(const std::string& option, const std::string& text) {
  const Wanted wanted{.words = "an angle",
                      .accepted =
                          "degrees per side, such as 20 or 20deg-per-side, or "
                          "40deg-inclusive"};
  const auto refuse = [&](base::Problem problem) {
    problem.accepted = wanted.accepted;
    return base::failed(under_option(std::move(problem), option));
  };
  const auto angle = materials::parse_quantity(text);
  if (!angle) {
    const bool is_of_marks = text.find(',') != std::string::npos;
    return is_of_marks ? refuse(angle.error()) : base::failed(not_wanted(option, text, wanted));
  }
  constexpr std::string_view kPerSide = "deg-per-side";
  const bool is_bare = angle->unit.empty() || materials::is_bare_degree(angle->unit);
  // Whoever works with an angle says which of them are edges.
  if (is_bare || angle->unit == kPerSide) return angle->number;
  const auto deg = materials::convert(angle->number, angle->unit, kPerSide);
  if (!deg) return refuse(deg.error());
  return *deg;
}

base::Problem under_option(base::Problem problem, const std::string& option) {
  problem.place.column = option;
  problem.sentence = option + ": " + problem.sentence;
  return problem;
}

base::Result<base::Seed> seed_of(const std::string& option, const std::string& text) {
  return whole_text<std::uint64_t>(
             option, text, {.words = "a whole number", .accepted = "0 to 18446744073709551615"})
      .transform([](std::uint64_t number) { return base::Seed{number}; });
}

base::Result<long> count_of(const std::string& option,
                            const std::string& text,
                            const CountRange& range) {
  const auto number = whole_number_of(option, text);
  if (!number || (*number >= range.least && *number <= range.most)) return number;
  return base::failed({.kind = base::ProblemKind::bad_value,
                       .sentence = option + " must lie between " + std::to_string(range.least) +
                                   " and " + std::to_string(range.most) + ", not at " + text + ".",
                       .place = {.column = option, .found = text}});
}

base::Result<std::uint16_t> port_of(const std::string& option, const std::string& text) {
  constexpr CountRange kPorts{.least = 1, .most = 65535};
  return count_of(option, text, kPorts).map([](long port) {
    return static_cast<std::uint16_t>(port);
  });
}

base::Result<int> draws_of(const std::string& text) {
  // Of 50 draws two lie beyond each end of the middle 90 %; of fewer it is their lowest and
  // highest.
  constexpr CountRange kEnough = {.least = 50, .most = 100'000};
  const auto draws = count_of("--draws", text, kEnough);
  if (draws) return static_cast<int>(*draws);
  base::Problem problem = draws.error();
  problem.accepted = "50 to 100000, since fewer draws make no range";
  return base::failed(std::move(problem));
}

base::Result<unsigned> threads_of(const std::string& option, const std::string& text) {
  const Wanted wanted{.words = "a whole number of threads", .accepted = "1 to 256"};
  const auto number = whole_text<unsigned>(option, text, wanted);
  if (number && (*number < 1 || *number > kMostThreads)) {
    return base::failed(not_wanted(option, text, wanted));
  }
  return number;
}

}  // namespace keenfall::cli
