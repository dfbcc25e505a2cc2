#include "cli/option_numbers.h"

#include <charconv>
#include <cmath>
#include <cstdint>
#include <system_error>

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
  const Wanted wanted{.words = "a number", .accepted = {}};
  const auto number = whole_text<double>(option, text, wanted);
  if (number && !std::isfinite(*number)) return base::failed(not_wanted(option, text, wanted));
  return number;
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

base::Result<unsigned> threads_of(const std::string& option, const std::string& text) {
  const Wanted wanted{.words = "a whole number of threads", .accepted = "1 to 256"};
  const auto number = whole_text<unsigned>(option, text, wanted);
  if (number && (*number < 1 || *number > kMostThreads)) {
    return base::failed(not_wanted(option, text, wanted));
  }
  return number;
}

}  // namespace keenfall::cli
