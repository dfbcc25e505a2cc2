#include "scale/line.h"

#include "materials/spelling.h"
#include "materials/units.h"
#include "scale/line_bytes.h"
#include "scale/line_pieces.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <span>
#include <vector>

namespace keenfall::scale {

namespace {

using base::Problem;
using base::ProblemKind;

// Tags in capitals: common practice, no source.
constexpr auto kStable = std::to_array<std::string_view>({"ST", "S", "STABLE"});
constexpr auto kUnstable =
    std::to_array<std::string_view>({"US", "U", "D", "UNSTABLE", "DYNAMIC", "MOTION"});
constexpr auto kWeighing = std::to_array<std::string_view>({"GS", "NT", "GROSS", "NET"});
constexpr auto kOverload = std::to_array<std::string_view>({"OL", "O-L", "OVER", "OVERLOAD"});
constexpr auto kUnderload = std::to_array<std::string_view>({"UL", "U-L", "UNDER", "UNDERLOAD"});
// Before the number, or behind its unit, these say gross and net; they are units right behind it.
constexpr auto kAlsoWeighing = std::to_array<std::string_view>({"G", "N"});
constexpr int kMostDigits = 15;  // that a double holds

bool is_among(std::string_view tag, std::span<const std::string_view> tags) {
  return std::ranges::count(tags, tag) > 0;
}

std::string capitals(std::string_view word) {
  std::string text(word);
  for (char& letter : text) {
    if (letter >= 'a' && letter <= 'z') letter = static_cast<char>(letter - 'a' + 'A');
  }
  return text;
}

bool any_word(std::span<const LinePiece> pieces, std::span<const std::string_view> tags) {
  return std::ranges::any_of(pieces, [tags](const LinePiece& piece) {
    return piece.kind == PieceKind::word && is_among(capitals(piece.text), tags);
  });
}

bool says_a_fault(std::span<const LinePiece> pieces) {
  return std::ranges::any_of(pieces, [](const LinePiece& piece) {
    return piece.kind == PieceKind::word && capitals(piece.text).starts_with("ERR");
  });
}

const materials::Unit* load_unit(std::string_view word) {
  const materials::Unit* unit = materials::find_unit(word);
  const bool is_load = unit != nullptr && (unit->dimension == materials::Dimension::force ||
                                           unit->dimension == materials::Dimension::mass);
  return is_load ? unit : nullptr;
}

struct Number {
  double value = 0;
  int decimals = 0;
};

Problem unclear_number(std::string_view written) {
  return {.sentence = "the number “" + std::string(written) +
                      "” could be read in two ways, with its mark for decimals or for thousands",
          .accepted = "a decimal point, or saying that the scale writes a decimal comma"};
}

// "1,104", but not "0,230" or "1104,5"; and a point where decimals are written with a comma.
bool could_divide_thousands(std::string_view text, std::size_t mark, const LineRules& rules) {
  if (text[mark] == '.') return rules.comma_is_decimal;
  const bool looks_like_it = mark <= 3 && text[0] != '0' && text.size() - mark - 1 == 3;
  return looks_like_it && !rules.comma_is_decimal;
}

// Of digits with marks between them, as line_pieces gives them.
base::Result<Number> number_of(std::string_view written, const LineRules& rules) {
  std::string text(written);
  if (text.ends_with('.')) text.pop_back();
  const std::size_t mark = text.find_first_of(".,");
  std::size_t decimals = 0;
  if (mark != std::string::npos) {
    decimals = text.size() - mark - 1;
    const bool has_two_marks = text.find_first_of(".,", mark + 1) != std::string::npos;
    if (has_two_marks || could_divide_thousands(text, mark, rules)) {
      return base::failed(unclear_number(written));
    }
    text[mark] = '.';
    if (mark == 0) text.insert(text.begin(), '0');
  }
  if (std::ranges::count_if(text, [](char c) { return c != '.'; }) > kMostDigits) {
    return base::failed({.sentence = "the number has more digits than a scale shows"});
  }
  Number number{.decimals = static_cast<int>(decimals)};
  std::from_chars(text.data(), text.data() + text.size(), number.value);
  return number;
}

// Where in `pieces` the one number stands.
base::Result<std::size_t> place_of_number(std::span<const LinePiece> pieces) {
  std::optional<std::size_t> place;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (pieces[i].kind != PieceKind::number) continue;
    if (place) {
      return base::failed({.kind = ProblemKind::conflicting,
                           .sentence = "the line has more than one number, and does not say which "
                                       "of them is the reading",
                           .accepted = "lines with one number each"});
    }
    place = i;
  }
  if (!place)
    return base::failed(
        {.kind = ProblemKind::missing, .sentence = "the line has no number to read"});
  return *place;
}

// -1 or 1. A sign belongs to the number if nothing but blanks lies between.
base::Result<double> sign_of(std::span<const LinePiece> pieces, std::size_t number) {
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (pieces[i].kind == PieceKind::sign && i + 1 != number) {
      return base::failed({.sentence = "the line has a sign that is not the number's own",
                           .accepted = "one sign at most, before the number"});
    }
  }
  const bool is_negative = number > 0 && pieces[number - 1].text == "-";
  return is_negative ? -1.0 : 1.0;
}

Problem no_unit_known(std::string_view word) {
  return {.kind = ProblemKind::unknown_name,
          .sentence = "“" + std::string(word) + "” is no unit of force or mass that is known",
          .accepted = "N, mN, gf, kgf, lbf, ozf, g, kg, lb or oz"};
}

// The first word behind the number that is no tag.
base::Result<std::size_t> place_of_unit(std::span<const LinePiece> pieces, std::size_t number) {
  for (std::size_t i = number + 1; i < pieces.size(); ++i) {
    const std::string tag = capitals(pieces[i].text);
    const bool is_tag = is_among(tag, kStable) || is_among(tag, kUnstable) ||
                        is_among(tag, kWeighing) || is_among(tag, kAlsoWeighing);
    if (pieces[i].kind != PieceKind::word) continue;
    if (load_unit(pieces[i].text) != nullptr) return i;
    if (!is_tag) return base::failed(no_unit_known(pieces[i].text));
  }
  return base::failed({.kind = ProblemKind::missing,
                       .sentence = "behind the number no unit is said",
                       .accepted = "a scale set to send its unit: N, gf, g, kg, lbf, lb or oz"});
}

// Another unit elsewhere in the line, such as that of a number that was lost.
bool has_another_unit(std::span<const LinePiece> pieces, std::size_t unit) {
  const materials::Unit* own = load_unit(pieces[unit].text);
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (i == unit || pieces[i].kind != PieceKind::word) continue;
    const materials::Unit* other = load_unit(pieces[i].text);
    const bool may_be_a_tag = is_among(capitals(pieces[i].text), kAlsoWeighing);
    if (other != nullptr && other != own && !may_be_a_tag) return true;
  }
  return false;
}

// What says unstable wins: "S D" is a stable-value answer that is not stable yet.
Stability stability_of(std::span<const LinePiece> pieces) {
  const bool is_asked_back = std::ranges::any_of(
      pieces, [](const LinePiece& piece) { return piece.kind == PieceKind::question; });
  if (is_asked_back || any_word(pieces, kUnstable)) return Stability::unstable;
  return any_word(pieces, kStable) ? Stability::stable : Stability::not_said;
}

Reading overload_of(std::span<const LinePiece> pieces, std::string line) {
  Reading reading{.is_overload = true, .line = std::move(line)};
  for (const LinePiece& piece : pieces) {
    const bool is_word = piece.kind == PieceKind::word;
    if (const auto* unit = is_word ? load_unit(piece.text) : nullptr) reading.unit = unit->name;
  }
  return reading;
}

base::Result<Reading> reading_of_text(const std::string& text, const LineRules& rules) {
  const auto pieces = line_pieces(text);
  if (!pieces) return base::failed(pieces.error());
  if (says_a_fault(*pieces)) return base::failed({.sentence = "the scale reports a fault"});
  if (any_word(*pieces, kUnderload)) {
    return base::failed({.sentence = "the scale says that it is below what it can show",
                         .accepted = "setting it to zero with nothing on it"});
  }
  if (any_word(*pieces, kOverload)) return overload_of(*pieces, text);
  const auto at = place_of_number(*pieces);
  if (!at) return base::failed(at.error());
  const auto number = number_of((*pieces)[*at].text, rules);
  if (!number) return base::failed(number.error());
  const auto sign = sign_of(*pieces, *at);
  if (!sign) return base::failed(sign.error());
  const auto unit = place_of_unit(*pieces, *at);
  if (!unit) return base::failed(unit.error());
  if (has_another_unit(*pieces, *unit)) {
    return base::failed({.kind = ProblemKind::conflicting,
                         .sentence = "the line names two units",
                         .accepted = "lines with one number and one unit each"});
  }
  return Reading{.number = number->value == 0 ? 0 : *sign * number->value,
                 .unit = std::string(load_unit((*pieces)[*unit].text)->name),
                 .decimals = number->decimals,
                 .stability = stability_of(*pieces),
                 .line = text};
}

}  // namespace

std::string shown_line(std::string_view bytes) {
  std::string shown;
  for (const char byte : bytes.substr(0, kLongestLine)) {
    if (byte == '\t') shown += ' ';
    if (byte >= ' ' && byte <= '~') shown += byte;
  }
  shown.erase(shown.find_last_not_of(' ') + 1);
  return shown;
}

base::Result<Reading> reading_of_line(std::string_view bytes, const LineRules& rules) {
  auto text = text_of_bytes(bytes);
  auto reading =
      text ? reading_of_text(*text, rules) : base::Result<Reading>(base::failed(text.error()));
  if (!reading) reading.error().place.found = shown_line(text ? *text : bytes);
  return reading;
}

}  // namespace keenfall::scale
