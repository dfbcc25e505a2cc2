#include "workbench/reference_rows.h"

#include "base/plain_number.h"
#include "materials/grits.h"
#include "materials/spelling.h"
#include "materials/steels.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <iterator>
#include <optional>
#include <string_view>
#include <utility>

namespace keenfall::workbench {

namespace {

using materials::Grit;
using materials::GritRow;
using materials::GritSystem;

constexpr std::size_t kMostGrits = 60;
constexpr std::array<GritSystem, 4> kSystems{
    GritSystem::fepa_f, GritSystem::fepa_p, GritSystem::jis, GritSystem::cami};

// Small letters without spaces and what else is only for the eye.
std::string bare(std::string_view text) {
  std::string kept;
  for (const char letter : materials::lower_case(std::string(text))) {
    if (letter != ' ' && letter != '-' && letter != '\t') kept += letter;
  }
  return kept;
}

std::string content_words(const materials::Content& content) {
  const auto number = [](double percent) { return base::plain_number(percent); };
  const std::string element(materials::symbol(content.element));
  if (content.lo_percent && content.hi_percent) {
    return element + " " + number(*content.lo_percent) + " to " + number(*content.hi_percent) +
           " %";
  }
  if (content.hi_percent) return element + " up to " + number(*content.hi_percent) + " %";
  return element + " " + number(content.lo_percent.value_or(0)) + " % or more";
}

std::string steel_words(const materials::Steel& steel) {
  std::string words;
  for (const materials::Content& content : steel.composition) {
    words += (words.empty() ? "" : ", ") + content_words(content);
  }
  if (steel.working_hardness) {
    words += (words.empty() ? "" : "; ") + std::string("usually ") +
             base::plain_number(steel.working_hardness->lo_hrc) + " to " +
             base::plain_number(steel.working_hardness->hi_hrc) + " HRC";
  }
  return words;
}

wire::SteelRow steel_row(const materials::Steel& steel) {
  wire::SteelRow row{.name = std::string(steel.name), .words = steel_words(steel)};
  for (const std::string_view name : steel.same) row.also.emplace_back(name);
  return row;
}

// 0: it begins a designation; 1: one holds it; 2: a near grade does; nothing: none.
std::optional<int> nearness(const materials::Steel& steel, const std::string& wanted) {
  std::vector<std::string> own{bare(steel.name)};
  for (const std::string_view name : steel.same) own.push_back(bare(name));
  const auto begins = [&](const std::string& name) { return name.starts_with(wanted); };
  const auto holds = [&](const std::string& name) {
    return name.find(wanted) != std::string::npos;
  };
  if (std::ranges::any_of(own, begins)) return 0;
  if (std::ranges::any_of(own, holds)) return 1;
  const bool is_near =
      std::ranges::any_of(steel.near, [&](std::string_view name) { return holds(bare(name)); });
  return is_near ? std::optional(2) : std::nullopt;
}

std::string micrometres(double size_um) { return base::with_decimals(size_um, 1) + " µm"; }

// "4.5 µm; near FEPA-P 2500 and JIS 3000".
std::string neighbours_words(double size_um, GritSystem own) {
  std::string words = micrometres(size_um);
  const char* between = "; nearest: ";
  for (const GritSystem system : kSystems) {
    if (system == own) continue;
    const auto nearest = materials::nearest_in_system(size_um, system);
    if (!nearest) continue;
    words +=
        between + materials::in_words(nearest->grit) + " (" + micrometres(nearest->median_um) + ")";
    between = ", ";
  }
  return words;
}

wire::GritWords row_words(const GritRow& row) {
  const Grit grit{.system = row.system, .number = row.number};
  return {.name = materials::in_words(grit),
          .size_um = row.median_um,
          .words = neighbours_words(row.median_um, row.system)};
}

std::vector<wire::GritWords> nearest_to(double size_um) {
  std::vector<wire::GritWords> grits{{.name = base::plain_number(size_um) + " µm",
                                      .size_um = size_um,
                                      .words = neighbours_words(size_um, GritSystem::micrometres)}};
  for (const GritSystem system : kSystems) {
    const auto nearest = materials::nearest_in_system(size_um, system);
    if (nearest) grits.push_back(row_words(*materials::find_grit(nearest->grit)));
  }
  return grits;
}

std::optional<double> bare_number(const std::string& text) {
  const std::string digits = text.starts_with('#') ? text.substr(1) : text;
  double number = 0;
  const auto [stop, fault] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  if (fault != std::errc() || stop != digits.data() + digits.size()) return std::nullopt;
  return number;
}

}  // namespace

std::vector<wire::SteelRow> steels_like(const std::string& text) {
  const std::string wanted = bare(text);
  std::array<std::vector<wire::SteelRow>, 3> by_nearness;
  for (const materials::Steel& steel : materials::known_steels()) {
    if (const auto near = nearness(steel, wanted)) {
      by_nearness.at(static_cast<std::size_t>(*near)).push_back(steel_row(steel));
    }
  }
  std::vector<wire::SteelRow> rows;
  for (auto& some : by_nearness) std::ranges::move(some, std::back_inserter(rows));
  return rows;
}

std::vector<wire::GritWords> grits_like(const std::string& text) {
  const Grit grit = materials::parse_grit(text);
  std::vector<wire::GritWords> grits;
  if (grit.system == GritSystem::micrometres && grit.number && *grit.number > 0) {
    return nearest_to(*grit.number);
  }
  if (const GritRow* row = materials::find_grit(grit)) grits.push_back(row_words(*row));
  const std::string wanted = bare(text);
  if (const auto number = bare_number(wanted)) {
    for (const GritRow& row : materials::possible_sizes_um(*number)) {
      grits.push_back(row_words(row));
    }
  }
  if (!grits.empty()) return grits;
  for (const GritRow& row : materials::known_grits()) {
    const std::string name =
        bare(materials::in_words(Grit{.system = row.system, .number = row.number}));
    if (grits.size() < kMostGrits && name.find(wanted) != std::string::npos) {
      grits.push_back(row_words(row));
    }
  }
  return grits;
}

}  // namespace keenfall::workbench
