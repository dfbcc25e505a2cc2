#include "sharpening/stones.h"

#include "materials/phases.h"

#include <algorithm>
#include <string>
#include <vector>

namespace keenfall::sharpening {

namespace {

using materials::TrustMark;

constexpr materials::Provenance kHardness = {"abrasives-memory", TrustMark::from_memory};
constexpr materials::Provenance kGuess = {"plausible", TrustMark::guessed};
constexpr materials::Provenance kTuned = {"practice", TrustMark::tuned};

// A tenth to a twentieth of a grain of 45 to 60 um: common practice, no source.
constexpr Estimate kGrooveUm = {4, 2, 8, kGuess};

const std::vector<Stone>& all_stones() {
  static const std::vector<Stone> stones = {
      {.name = "fused alumina",
       .grit = "FEPA-F 220",
       .abrasive_hv = {2100, 1800, 2200, kHardness},
       .groove_width_um = kGrooveUm,
       .cutting_power_ratio = {1, 1, 1, kGuess},
       .blunt_share_fraction = {0.2, 0.1, 0.5, kTuned}},
      {.name = "silicon carbide",
       .grit = "FEPA-F 220",
       .abrasive_hv = {2600, 2400, 2900, kHardness},
       .groove_width_um = kGrooveUm,
       .cutting_power_ratio = {1.3, 1, 1.8, kGuess},
       .blunt_share_fraction = {0.8, 0.5, 0.95, kGuess}},
      {.name = "CBN",
       .grit = "45 µm",
       .abrasive_hv = {4500, 4500, 5000, kHardness},
       .groove_width_um = kGrooveUm,
       .cutting_power_ratio = {2, 1.3, 3, kGuess},
       .blunt_share_fraction = {1, 0.8, 1, kGuess}},
      {.name = "diamond",
       .grit = "45 µm",
       .abrasive_hv = {8000, 7000, 10000, kHardness},
       .groove_width_um = kGrooveUm,
       .cutting_power_ratio = {3, 1.5, 5, kGuess},
       .blunt_share_fraction = {1, 0.8, 1, kGuess}},
  };
  return stones;
}

}  // namespace

std::span<const Stone> known_stones() { return all_stones(); }

base::Result<Stone> find_stone(std::string_view name) {
  const auto phase = materials::find_phase(name);
  const auto& stones = all_stones();
  const auto stone = phase ? std::ranges::find(stones, phase->name, &Stone::name) : stones.end();
  if (stone != stones.end()) return *stone;
  std::string accepted;
  for (const Stone& each : stones) {
    accepted += (accepted.empty() ? "" : ", ") + each.name;
  }
  return base::failed({.kind = base::ProblemKind::unknown_name,
                       .sentence = "there is no stone of “" + std::string(name) + "” in the table",
                       .place = {.found = std::string(name)},
                       .accepted = accepted});
}

}  // namespace keenfall::sharpening
