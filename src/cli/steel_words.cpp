#include "cli/steel_words.h"

#include "materials/quantity.h"
#include "materials/units.h"

#include <algorithm>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

constexpr std::size_t kMostWordsOfAQuantity = 4;  // "17 deg per side"

std::vector<std::string> words_of(std::string_view text) {
  std::istringstream stream{std::string(text)};
  std::vector<std::string> words;
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

std::string joined(const std::vector<std::string>& words, std::size_t from, std::size_t count) {
  std::string text;
  for (std::size_t i = from; i < from + count; ++i) text += (i == from ? "" : " ") + words[i];
  return text;
}

// What was said of a blade beside its steel.
struct Said {
  std::vector<std::string> steel;
  std::optional<double> hardness_hrc;
  std::optional<double> angle_per_side_deg;
};

// Takes a hardness or an angle; nothing where the words are neither.
base::Result<bool> taken_from(const std::string& words, Said& said) {
  const auto quantity = materials::parse_quantity(words);
  if (!quantity) return false;
  const bool is_bare_degree = materials::is_bare_degree(quantity->unit);
  const std::string unit_name = is_bare_degree ? "deg-per-side" : quantity->unit;
  const materials::Unit* unit = materials::find_unit(unit_name);
  if (unit == nullptr) return false;
  const bool is_angle = unit->dimension == materials::Dimension::angle;
  if (!is_angle && unit->dimension != materials::Dimension::hardness) return false;
  const auto number =
      materials::convert(quantity->number, unit_name, is_angle ? "deg-per-side" : "HRC");
  if (!number) return base::failed(number.error());
  auto& into = is_angle ? said.angle_per_side_deg : said.hardness_hrc;
  if (into) {
    return base::failed(
        {.kind = base::ProblemKind::conflicting,
         .sentence = is_angle ? "the angle is said twice" : "the hardness is said twice",
         .accepted = "one"});
  }
  into = *number;
  return true;
}

base::Result<Said> said_of_blade(std::string_view text) {
  const std::vector<std::string> words = words_of(text);
  Said said;
  for (std::size_t at = 0; at < words.size();) {
    std::size_t used = 0;
    const std::size_t most = at == 0 ? 0 : std::min(kMostWordsOfAQuantity, words.size() - at);
    for (std::size_t count = most; count > 0 && used == 0; --count) {
      const auto taken = taken_from(joined(words, at, count), said);
      if (!taken) return base::failed(taken.error());
      if (*taken) used = count;
    }
    if (used == 0) said.steel.push_back(words[at]);
    at += std::max<std::size_t>(1, used);
  }
  return said;
}

enum class Beside { hardness_and_angle, hardness };

// Where the steel is known without what stands after it, that is what is wrong.
base::Problem unknown_steel(const workbench::ApexCatalogue& catalogue,
                            const std::vector<std::string>& words,
                            Beside beside,
                            const base::Problem& of_all) {
  const bool takes_angle = beside == Beside::hardness_and_angle;
  const std::string neither = takes_angle ? "neither a hardness nor an angle" : "no hardness";
  for (std::size_t count = words.size() - 1; count > 0; --count) {
    const std::string steel = joined(words, 0, count);
    const std::string rest = joined(words, count, words.size() - count);
    if (!workbench::find_steel(catalogue, steel)) continue;
    const auto quantity = materials::parse_quantity(rest);
    const bool is_bare = quantity && quantity->unit.empty();
    return {.kind = base::ProblemKind::bad_value,
            .sentence = "“" + rest + "” after " + steel +
                        (is_bare ? " has no unit and so is " : " is ") + neither,
            .place = {.found = rest},
            .accepted = takes_angle ? "a hardness (“" + steel + " 58HRC”), an angle (“" + steel +
                                          " 17deg-per-side”), or both"
                                    : "a hardness, such as “" + steel + " 58HRC”"};
  }
  return of_all;
}

base::Result<SteelInWords> in_words_beside(const workbench::ApexCatalogue& catalogue,
                                           std::string_view text,
                                           Beside beside) {
  // A name of a file may hold anything.
  if (auto whole = workbench::find_steel(catalogue, text)) return SteelInWords{.steel = *whole};
  const auto said = said_of_blade(text);
  if (!said) return base::failed(said.error());
  auto steel = workbench::find_steel(catalogue, joined(said->steel, 0, said->steel.size()));
  if (!steel && said->steel.size() > 1) {
    return base::failed(unknown_steel(catalogue, said->steel, beside, steel.error()));
  }
  if (steel && said->hardness_hrc) steel = materials::at_hardness(*steel, *said->hardness_hrc);
  if (!steel) return base::failed(steel.error());
  SteelInWords found{.steel = *steel};
  if (said->angle_per_side_deg) found.angle = trials::PerSideAngle{*said->angle_per_side_deg};
  return found;
}

}  // namespace

base::Result<SteelInWords> steel_in_words(const workbench::ApexCatalogue& catalogue,
                                          std::string_view text) {
  return in_words_beside(catalogue, text, Beside::hardness_and_angle);
}

base::Result<materials::Microstructure> steel_without_angle(
    const workbench::ApexCatalogue& catalogue, std::string_view text) {
  const auto found = in_words_beside(catalogue, text, Beside::hardness);
  if (!found) return base::failed(found.error());
  if (found->angle) {
    return base::failed({.kind = base::ProblemKind::bad_value,
                         .sentence = "an angle stands in --angle, not beside the steel",
                         .place = {.found = std::string(text)},
                         .accepted = "a steel and, if need be, its hardness: “C75S 58HRC”"});
  }
  return found->steel;
}

}  // namespace keenfall::cli
