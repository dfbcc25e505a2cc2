#include "telling/across_media_words.h"

#include "telling/arm_groups.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>

namespace keenfall::telling {

namespace {

using verdicts::AcrossMedia;
using verdicts::Judgement;
using verdicts::MediaInteraction;
using verdicts::MediaPair;

constexpr std::size_t kMostPairsSaid = 3;
constexpr std::size_t kFewInteractions = 3;
constexpr std::size_t kMostInteractionsSaid = 12;
constexpr std::size_t kMostBladesListed = 8;

// The names of the table's media and blades, and how ratios are rounded.
class AcrossNames {
 public:
  explicit AcrossNames(const Judgement& judgement)
      : judgement_(judgement), groups_(groups_of(judgement)), names_(names_of(judgement)) {}

  [[nodiscard]] std::string medium(std::size_t index) const {
    const std::size_t arm = across().media[index].arms.front();
    for (const ArmGroup& group : groups_) {
      if (std::ranges::count(group.arms, arm) > 0) return group.medium_words;
    }
    return {};
  }

  [[nodiscard]] std::string blade(std::size_t index) const {
    return names_[across().media.front().arms[index]].name;
  }

  // "blades"; "edges" where one blade was cut with several.
  [[nodiscard]] std::string things() const {
    std::vector<std::string> blades;
    for (const std::size_t arm : across().media.front().arms) {
      const std::string& blade = judgement_.arms[arm].arm.blade;
      if (std::ranges::count(blades, blade) > 0) return "edges";
      blades.push_back(blade);
    }
    return "blades";
  }

  [[nodiscard]] const std::string& counted() const { return judgement_.counted.many; }

  [[nodiscard]] std::size_t blade_count() const { return across().media.front().arms.size(); }

  [[nodiscard]] std::string ratio(double number) const {
    return ratio_text(number, judgement_.worth_it_margin);
  }

  [[nodiscard]] std::string in_95(double lo, double hi) const {
    return ratio(lo) + " to " + ratio(hi);
  }

  [[nodiscard]] const AcrossMedia& across() const { return *judgement_.media; }

 private:
  const Judgement& judgement_;
  std::vector<ArmGroup> groups_;
  std::vector<ArmName> names_;
};

// A spread can hardly be told from none: below a twentieth its lower end says no more than that.
std::string gap_in_95(const numerics::Interval& ratio) {
  constexpr double kHardlyAny = 0.05;
  const std::string low = ratio.lo95 > kHardlyAny ? percent_text(ratio.lo95) : "under 5";
  return fmt::format("95 % interval {} to {} %", low, percent_text(ratio.hi95));
}

numerics::Interval turned_over(const numerics::Interval& ratio) {
  return {.median = 1 / ratio.median,
          .lo90 = 1 / ratio.hi90,
          .hi90 = 1 / ratio.lo90,
          .lo95 = 1 / ratio.hi95,
          .hi95 = 1 / ratio.lo95};
}

Sentence gap_sentence(const MediaPair& pair, const AcrossNames& names) {
  const bool second_is_closer = pair.spread_ratio.median < 1;
  const numerics::Interval ratio =
      second_is_closer ? pair.spread_ratio : turned_over(pair.spread_ratio);
  const std::string closer = names.medium(second_is_closer ? pair.second : pair.first);
  const std::string wider = names.medium(second_is_closer ? pair.first : pair.second);
  const std::string gap = "he gap between the " + names.things();
  if (ratio.hi95 < 1) {
    return {.words = {{"T" + gap + " closes", Tone::settled},
                      {fmt::format(" on {}, to {} % of that on {} ({}; gaps are in logs of {}).",
                                   closer,
                                   percent_text(ratio.median),
                                   wider,
                                   gap_in_95(ratio),
                                   names.counted())}}};
  }
  return {
      .words = {{fmt::format("Whether t{} is narrower on {} than on {} is ", gap, closer, wider)},
                {"not settled", Tone::not_settled},
                {fmt::format(": it comes to {} % of that there ({}).",
                             percent_text(ratio.median),
                             gap_in_95(ratio))}}};
}

std::string order_sentence(const MediaPair& pair, const AcrossNames& names) {
  const std::string chance = chance_text(pair.probability_same_order);
  const std::string media = names.medium(pair.first) + " and on " + names.medium(pair.second);
  return fmt::format("The chance that the {} {} stand in one order on {} is {}.",
                     names.blade_count(),
                     names.things(),
                     media,
                     chance);
}

Sentence advantage_sentence(const MediaInteraction& interaction, const AcrossNames& names) {
  const Tone tone = is_settled(interaction.verdict) ? Tone::settled : Tone::not_settled;
  const std::string ratio =
      fmt::format("{} against {}: the ratio on {} is {} times that on {} (95 % interval {}): ",
                  names.blade(interaction.a),
                  names.blade(interaction.b),
                  names.medium(interaction.first),
                  names.ratio(interaction.ratio.median),
                  names.medium(interaction.second),
                  names.in_95(interaction.simultaneous.lo95, interaction.simultaneous.hi95));
  return {.words = {{ratio},
                    {std::string(verdicts::dependence_in_words(interaction.verdict)), tone},
                    {"."}}};
}

std::string agreement_sentence(const AcrossMedia& across) {
  return fmt::format(
      "Over all {} media the orders of the medians agree by Kendall's W {} (0 none, 1 wholly); "
      "orders by chance agree so well with probability {}{}.",
      across.media.size(),
      to_figures(across.agreement.kendall_w, 2),
      to_figures(across.agreement.p, 2),
      across.agreement.exact ? "" : ", by random orders");
}

std::string order_words(std::size_t medium, const AcrossNames& names) {
  std::string words;
  for (const std::size_t blade : names.across().media[medium].order) {
    words += (words.empty() ? "" : ", ") + names.blade(blade);
  }
  return fmt::format("Most probable order on {}: {} (chance {}).",
                     names.medium(medium),
                     words,
                     chance_text(names.across().media[medium].order_probability));
}

// Of many: how many are open, else how many settled ones were not said one by one.
std::vector<Sentence> the_other_interactions(std::size_t said,
                                             std::size_t open,
                                             const AcrossNames& names) {
  const std::size_t all = names.across().interactions.size();
  if (open > 0) {
    return {{.words = {{fmt::format("Whether the ratio of two {} depends on the medium is ",
                                    names.things())},
                       {"not settled", Tone::not_settled},
                       {fmt::format(" for {} of {} pairs.", open, all)}},
             .left_out = "all"}};
  }
  if (said == all) return {};
  return {{.words = {{fmt::format("All {} pairs are settled; {} of them stand here.", all, said)}},
           .left_out = "all"}};
}

// All of a few; of many those that are settled, and how many are not.
std::vector<Sentence> interactions_told(const AcrossNames& names) {
  const auto& all = names.across().interactions;
  std::vector<Sentence> told;
  std::size_t open = 0;
  for (const MediaInteraction& interaction : all) {
    const bool settled = is_settled(interaction.verdict);
    if (!settled) ++open;
    if (!settled && all.size() > kFewInteractions) continue;
    if (told.size() < kMostInteractionsSaid) told.push_back(advantage_sentence(interaction, names));
  }
  if (all.size() <= kFewInteractions) return told;
  const auto others = the_other_interactions(told.size(), open, names);
  told.insert(told.end(), others.begin(), others.end());
  return told;
}

// Said so that the number is above 1: how many times as long where an edge lasts longer.
std::string media_lasting_words(const MediaPair& pair, const AcrossNames& names) {
  const bool second_lasts = pair.lasting_ratio.median >= 1;
  const numerics::Interval ratio =
      second_lasts ? pair.lasting_ratio : turned_over(pair.lasting_ratio);
  return fmt::format(
      "On {} an edge lasts {} times as many {} as on {}, averaged over the {} (95 % interval {}).",
      names.medium(second_lasts ? pair.second : pair.first),
      names.ratio(ratio.median),
      names.counted(),
      names.medium(second_lasts ? pair.first : pair.second),
      names.things(),
      names.in_95(ratio.lo95, ratio.hi95));
}

std::vector<Sentence> section_items(const AcrossNames& names) {
  const AcrossMedia& across = names.across();
  std::vector<Sentence> items;
  if (across.pairs.size() <= kMostPairsSaid) {
    for (const MediaPair& pair : across.pairs) {
      items.push_back(plain(media_lasting_words(pair, names)));
    }
  }
  if (names.blade_count() > 2) {
    for (Sentence& told : interactions_told(names)) items.push_back(std::move(told));
  }
  if (names.blade_count() <= kMostBladesListed) {
    for (std::size_t m = 0; m < across.media.size(); ++m) {
      items.push_back(plain(order_words(m, names)));
    }
  }
  if (across.media.size() > 2) items.push_back(plain(agreement_sentence(across)));
  return items;
}

std::vector<Sentence> section_remarks(const AcrossMedia& across) {
  std::vector<Sentence> remarks;
  if (!across.arms_left_out.empty()) {
    const std::size_t left_out = across.arms_left_out.size();
    remarks.push_back(plain(
        left_out == 1
            ? std::string("1 of the arms has no partner in every medium; it is left out here.")
            : fmt::format("{} of the arms have no partner in every medium; they are left out here.",
                          left_out)));
  }
  for (const std::string& remark : across.remarks) remarks.push_back(plain(remark));
  return remarks;
}

}  // namespace

std::vector<Sentence> across_media_sentences(const Judgement& judgement) {
  if (!judgement.media) return {};
  const AcrossNames names(judgement);
  const AcrossMedia& across = *judgement.media;
  std::vector<Sentence> told;
  if (across.pairs.size() > kMostPairsSaid) {
    const auto by_gap = [](const MediaPair& pair) {
      return std::abs(std::log(pair.spread_ratio.median));
    };
    told.push_back(gap_sentence(*std::ranges::max_element(across.pairs, {}, by_gap), names));
    told.push_back(plain(agreement_sentence(across)));
    return told;
  }
  if (names.blade_count() > 2) {
    for (const MediaPair& pair : across.pairs) {
      told.push_back(gap_sentence(pair, names));
      told.back().words.push_back({" " + order_sentence(pair, names)});
    }
  }
  if (names.blade_count() == 2) {
    for (const MediaInteraction& interaction : across.interactions) {
      told.push_back(advantage_sentence(interaction, names));
    }
  }
  return told;
}

std::optional<Section> across_media_section(const Judgement& judgement) {
  if (!judgement.media) return std::nullopt;
  return Section{.id = "across_media",
                 .heading = "Across media",
                 .items = section_items(AcrossNames(judgement)),
                 .when_long = WhenLong::kept,
                 .remarks = section_remarks(*judgement.media)};
}

}  // namespace keenfall::telling
