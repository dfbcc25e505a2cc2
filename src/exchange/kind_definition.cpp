#include "exchange/kind_definition.h"

#include "base/plain_number.h"
#include "exchange/number_cell.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

namespace keenfall::exchange {

namespace {

constexpr const char* kDefinitionExample =
    "flank_wear:mm:lower or flank_wear:mm:lower:level=2:zero=below:0.01";

base::Problem definition_problem(std::string_view found, std::string sentence) {
  return {.sentence = std::move(sentence),
          .place = {.column = "--define-kind", .found = excerpt(found)},
          .accepted = kDefinitionExample};
}

std::vector<std::string_view> parts_of(std::string_view text) {
  std::vector<std::string_view> parts;
  while (true) {
    const std::size_t colon = text.find(':');
    parts.push_back(trimmed(text.substr(0, colon)));
    if (colon == text.npos) return parts;
    text.remove_prefix(colon + 1);
  }
}

std::optional<double> plain_number_in(std::string_view text) {
  if (text.empty()) return std::nullopt;
  const NumberCell cell = number_cell(text, DecimalMark::point);
  if (cell.fault != NumberFault::none || !cell.unit.empty()) return std::nullopt;
  return cell.number;
}

// Applies one option; `resolution` is the part after "zero=below". Returns what is wrong, or "".
std::string apply_option(trials::ReadingKind& kind,
                         std::string_view option,
                         std::string_view resolution) {
  const std::size_t equals = option.find('=');
  const std::string name = folded(option.substr(0, equals));
  const std::string_view given =
      equals == option.npos ? std::string_view{} : trimmed(option.substr(equals + 1));
  const std::optional<double> number = plain_number_in(given);
  if (name == "level") {
    if (!number || *number <= 1) return "level is how many times the start reading: above 1";
    kind.default_level = *number;
  } else if (name == "largest") {
    if (!number || *number <= 0) return "largest is the largest possible reading: above 0";
    kind.largest = number;
  } else if (name == "use" && (given == "evidence" || given == "curve")) {
    const bool is_evidence = given == "evidence";
    kind.use = is_evidence ? trials::ReadingUse::evidence : trials::ReadingUse::curve;
    if (is_evidence) kind.zero = trials::ZeroReading::honest;
  } else if (name == "zero" && given == "refused") {
    kind.zero = trials::ZeroReading::refused;
  } else if (name == "zero" && given == "below") {
    const std::optional<double> smallest = plain_number_in(resolution);
    if (!smallest || *smallest <= 0) {
      return "zero=below needs the smallest step of the instrument: zero=below:0.01";
    }
    kind.zero = trials::ZeroReading::below_resolution;
    kind.resolution = smallest;
  } else {
    return "the option is not known; there are level=, zero=refused, zero=below:, largest= and "
           "use=evidence";
  }
  return "";
}

}  // namespace

base::Result<trials::ReadingKind> parse_kind_definition(std::string_view text) {
  const std::vector<std::string_view> parts = parts_of(text);
  if (parts.size() < 3 || parts[0].empty() || parts[1].empty()) {
    return base::failed(definition_problem(
        text, "A kind is defined as name:unit:direction; " + in_quotes(text) + " lacks a part."));
  }
  trials::ReadingKind kind{
      .name = std::string(parts[0]), .words = std::string(parts[0]), .unit = std::string(parts[1])};
  std::ranges::replace(kind.words, '_', ' ');
  const std::string direction = folded(parts[2]);
  if (direction != "lower" && direction != "higher") {
    return base::failed(definition_problem(
        parts[2],
        "The direction of a kind says which reading is keener: lower or higher, not " +
            in_quotes(parts[2]) + "."));
  }
  if (direction == "higher") kind.keener_when = trials::KeenerWhen::higher;
  const trials::ReadingKind* const known = trials::find_reading_kind(kind.name);
  if (known != nullptr && known->keener_when != kind.keener_when) {
    return base::failed(definition_problem(
        parts[2],
        "The kind " + known->name + " is known here, and of it the " +
            (known->keener_when == trials::KeenerWhen::lower ? "lower" : "higher") +
            " reading is the keener one."));
  }
  for (std::size_t i = 3; i < parts.size(); ++i) {
    const bool takes_next = folded(parts[i]) == "zero=below";
    const std::string_view next = i + 1 < parts.size() ? parts[i + 1] : std::string_view{};
    const std::string fault = apply_option(kind, parts[i], next);
    if (!fault.empty()) {
      return base::failed(definition_problem(
          parts[i],
          "In the definition of " + kind.name + ", " + in_quotes(parts[i]) + ": " + fault + "."));
    }
    if (takes_next) ++i;
  }
  return kind;
}

std::string kind_definition_text(const trials::ReadingKind& kind) {
  const trials::ReadingKind by_itself;
  std::string text = kind.name + ":" + kind.unit;
  text += kind.keener_when == trials::KeenerWhen::lower ? ":lower" : ":higher";
  if (kind.default_level != by_itself.default_level) {
    text += ":level=" + base::plain_number(kind.default_level);
  }
  if (kind.use == trials::ReadingUse::evidence) {
    text += ":use=evidence";
    if (kind.zero == trials::ZeroReading::refused) text += ":zero=refused";
  }
  if (kind.zero == trials::ZeroReading::below_resolution && kind.resolution) {
    text += ":zero=below:" + base::plain_number(*kind.resolution);
  }
  if (kind.largest) text += ":largest=" + base::plain_number(*kind.largest);
  return text;
}

const trials::ReadingKind* find_kind(std::string_view name,
                                     std::span<const trials::ReadingKind> defined) {
  const std::string wanted = folded(name);
  const auto found = std::ranges::find_if(
      defined, [&wanted](const trials::ReadingKind& kind) { return folded(kind.name) == wanted; });
  return found == defined.end() ? trials::find_reading_kind(name) : &*found;
}

std::string list_of_kinds(std::span<const trials::ReadingKind> defined) {
  std::string list;
  const auto append = [&list](const trials::ReadingKind& kind) {
    list += (list.empty() ? "" : ", ") + kind.name;
  };
  std::ranges::for_each(defined, append);
  std::ranges::for_each(trials::known_reading_kinds(), append);
  return list;
}

}  // namespace keenfall::exchange
