#include "trials/arm_order.h"

#include <algorithm>
#include <string>

namespace keenfall::trials {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// The digits that `text` begins with, without leading zeros; removed from it.
std::string_view take_digits(std::string_view& text) {
  const auto end = std::ranges::find_if_not(text, is_digit);
  std::string_view digits(text.begin(), end);
  text.remove_prefix(digits.size());
  while (digits.size() > 1 && digits.front() == '0') digits.remove_prefix(1);
  return digits;
}

}  // namespace

bool naturally_before(std::string_view one, std::string_view other) {
  while (!one.empty() && !other.empty()) {
    if (is_digit(one.front()) && is_digit(other.front())) {
      const std::string_view left = take_digits(one);
      const std::string_view right = take_digits(other);
      if (left.size() != right.size()) return left.size() < right.size();
      if (left != right) return left < right;
      continue;
    }
    if (one.front() != other.front()) return one.front() < other.front();
    one.remove_prefix(1);
    other.remove_prefix(1);
  }
  return one.empty() && !other.empty();
}

bool listed_before(const Arm& one, const Arm& other) {
  const auto decide = [](const std::string& a, const std::string& b) {
    return a == b ? 0 : (naturally_before(a, b) ? -1 : 1);
  };
  int order = decide(one.blade, other.blade);
  if (order == 0) order = decide(in_words(one.edge), in_words(other.edge));
  if (order == 0) order = decide(one.medium.name, other.medium.name);
  if (order == 0) order = decide(one.medium.condition, other.medium.condition);
  if (order == 0) order = decide(in_words(one.method), in_words(other.method));
  return order < 0;
}

}  // namespace keenfall::trials
