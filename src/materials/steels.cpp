#include "materials/steels.h"

#include "materials/spelling.h"
#include "materials/steel_table.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace keenfall::materials {

namespace {

const std::vector<Steel>& all_steels() {
  static const std::vector<Steel> steels = [] {
    std::vector<Steel> rows = carbon_and_low_alloy_steels();
    std::ranges::move(tool_steels(), std::back_inserter(rows));
    std::ranges::move(stainless_steels(), std::back_inserter(rows));
    return rows;
  }();
  return steels;
}

// Longer prefixes first, so that none hides another.
constexpr std::array<std::string_view, 9> kIssuers = {
    "werkstoffnummer", "wnr", "aisi", "astm", "din", "iso", "sae", "uns", "en"};

// "EN 1.2379" and "1.2379" -> "12379".
std::string bare_designation(std::string_view text) {
  std::string bare = folded(text);
  for (bool shorter = true; shorter;) {
    shorter = false;
    for (const std::string_view issuer : kIssuers) {
      if (bare.size() > issuer.size() && bare.starts_with(issuer)) {
        bare.erase(0, issuer.size());
        shorter = true;
      }
    }
  }
  return bare;
}

bool is_among(std::span<const std::string_view> designations, std::string_view bare) {
  return std::ranges::any_of(designations, [bare](std::string_view designation) {
    return bare_designation(designation) == bare;
  });
}

struct Match {
  const Steel* steel = nullptr;
  bool only_near = false;
};

Match match(std::string_view text) {
  const std::string bare = bare_designation(text);
  if (bare.empty()) return {};
  for (const Steel& steel : all_steels()) {
    if (bare_designation(steel.name) == bare || is_among(steel.same, bare)) return {&steel, false};
  }
  for (const Steel& steel : all_steels()) {
    if (is_among(steel.near, bare)) return {&steel, true};
  }
  return {};
}

std::vector<std::string_view> all_designations() {
  std::vector<std::string_view> designations;
  for (const Steel& steel : all_steels()) {
    designations.push_back(steel.name);
    designations.insert(designations.end(), steel.same.begin(), steel.same.end());
  }
  return designations;
}

base::Problem unknown_steel(std::string_view text) {
  std::string accepted = did_you_mean(bare_designation(text), all_designations());
  if (accepted.empty()) accepted = "a designation that `keenfall steels` lists";
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "the steel “" + std::string(text) +
                      "” is not in the table, which holds open designations only (AISI, SAE, UNS, "
                      "EN) and knows no trade names",
          .place = {.found = std::string(text)},
          .accepted = accepted};
}

// "C75S (EN 1.1248)" -> "C75S", "EN 1.1248".
std::vector<std::string_view> parts_of(std::string_view text) {
  std::vector<std::string_view> parts;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("()/;="), text.size());
    if (const auto part = trimmed(text.substr(0, end)); !part.empty()) parts.push_back(part);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return parts;
}

bool go_together(const Match& one, const Match& other) {
  return one.steel == other.steel ||
         is_among(one.steel->near, bare_designation(other.steel->name)) ||
         is_among(other.steel->near, bare_designation(one.steel->name));
}

}  // namespace

std::string_view symbol(Element element) {
  switch (element) {
    case Element::C:
      return "C";
    case Element::Si:
      return "Si";
    case Element::Mn:
      return "Mn";
    case Element::Cr:
      return "Cr";
    case Element::Mo:
      return "Mo";
    case Element::V:
      return "V";
    case Element::W:
      return "W";
    case Element::Ni:
      return "Ni";
    case Element::Co:
      return "Co";
  }
  return "";
}

std::span<const Steel> known_steels() { return all_steels(); }

base::Result<FoundSteel> find_steel(std::string_view text) {
  const std::string_view written = trimmed(text);
  const Match whole = match(written);
  if (whole.steel != nullptr) return FoundSteel{*whole.steel, whole.only_near};
  Match found;
  for (const std::string_view part : parts_of(written)) {
    const Match next = match(part);
    if (next.steel == nullptr) return base::failed(unknown_steel(written));
    if (found.steel == nullptr) found = next;
    if (!go_together(found, next)) {
      return base::failed({.kind = base::ProblemKind::conflicting,
                           .sentence = "“" + std::string(written) + "” names two steels, " +
                                       std::string(found.steel->name) + " and " +
                                       std::string(next.steel->name),
                           .place = {.found = std::string(written)},
                           .accepted = "designations of one steel"});
    }
  }
  if (found.steel == nullptr) return base::failed(unknown_steel(written));
  return FoundSteel{*found.steel, found.only_near};
}

std::vector<std::string> nearest_steels(std::string_view text) {
  return nearest_names(bare_designation(trimmed(text)), all_designations());
}

}  // namespace keenfall::materials
