#include "trials/reading_kind.h"

#include "base/plain_number.h"
#include "materials/units.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <vector>

namespace keenfall::trials {

namespace {

// Default levels: half keenness (2) unless the kind hardly ever doubles. A rope force rose 1.4-fold
// and a cord draw 6.1-fold while a thread push doubled (one published hobby record; common
// practice).
const std::vector<ReadingKind>& all_kinds() {
  using enum KeenerWhen;
  using enum ReadingUse;
  using enum ZeroReading;
  static const std::vector<ReadingKind> kinds = {
      {.name = "thread_push", .words = "thread push reading", .unit = "gf"},
      {.name = "cord_draw", .words = "cord draw reading", .unit = "mm", .default_level = 4},
      {.name = "card_bite", .words = "card bite", .unit = "mm", .keener_when = higher},
      {.name = "rope_press", .words = "rope press reading", .unit = "N", .default_level = 1.4},
      {.name = "paper_reach", .words = "paper reach", .unit = "mm", .keener_when = higher},
      {.name = "pass_ladder",
       .words = "pass ladder rung",
       .unit = "rung",
       .keener_when = higher,
       .use = evidence,
       .zero = honest,
       .largest = 9},
      {.name = "apex_width", .words = "apex width", .unit = "um"},
      {.name = "chip_count",
       .words = "chip count",
       .unit = "chips",
       .use = evidence,
       .zero = honest},
      {.name = "chip_depth",
       .words = "deepest chip",
       .unit = "um",
       .use = evidence,
       .zero = honest},
      {.name = "glint",
       .words = "glint length",
       .unit = "%",
       .use = evidence,
       .zero = honest,
       .largest = 100},
      {.name = "steel_back_recovery",
       .words = "steel-back recovery",
       .unit = "%",
       .use = evidence,
       .zero = honest,
       .largest = 100},
  };
  return kinds;
}

std::string folded(std::string_view name) {
  std::string letters;
  for (const char c : name) {
    if (c == ' ' || c == '-' || c == '_') continue;
    letters += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return letters;
}

}  // namespace

std::span<const ReadingKind> known_reading_kinds() { return all_kinds(); }

const ReadingKind* find_reading_kind(std::string_view name) {
  const std::string wanted = folded(name);
  const auto& kinds = all_kinds();
  const auto found = std::ranges::find_if(
      kinds, [&wanted](const ReadingKind& kind) { return folded(kind.name) == wanted; });
  return found == kinds.end() ? nullptr : &*found;
}

std::optional<base::Problem> problem_of_reading(const ReadingKind& kind,
                                                double reading,
                                                const std::string& unit) {
  const auto refused = [](const std::string& sentence, const std::string& accepted) {
    return base::Problem{
        .kind = base::ProblemKind::bad_value, .sentence = sentence, .accepted = accepted};
  };
  const std::string number = base::plain_number(reading);
  const bool is_zero_refused = kind.zero == ZeroReading::refused;
  if (!std::isfinite(reading) || reading < 0 || (reading == 0 && is_zero_refused)) {
    return refused(
        "A " + kind.words + " of " + number + " cannot be.",
        is_zero_refused ? "a number above zero, such as 104" : "a number of zero or more");
  }
  const auto in_own_unit = materials::convert(reading, unit, kind.unit);
  if (kind.largest && (in_own_unit ? *in_own_unit : reading) > *kind.largest) {
    return refused("The largest possible " + kind.words + " is " +
                       base::plain_number(*kind.largest) + " " + kind.unit + ", and not " + number +
                       " " + unit + ".",
                   "a reading up to that");
  }
  return std::nullopt;
}

}  // namespace keenfall::trials
