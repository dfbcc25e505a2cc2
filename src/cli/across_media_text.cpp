#include "cli/across_media_text.h"

#include "cli/text_layout.h"
#include "telling/arm_groups.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <vector>

namespace keenfall::cli {

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
  AcrossNames(const Judgement& judgement, const Look& look)
      : judgement_(judgement),
        look_(look),
        groups_(telling::groups_of(judgement)),
        names_(telling::names_of(judgement)) {}

  [[nodiscard]] std::string medium(std::size_t index) const {
    const std::size_t arm = across().media[index].arms.front();
    for (const telling::ArmGroup& group : groups_) {
      if (std::ranges::count(group.arms, arm) > 0) return shown_as(group.medium_words, look_);
    }
    return {};
  }

  [[nodiscard]] std::string blade(std::size_t index) const {
    return shown_as(names_[across().media.front().arms[index]].name, look_);
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
    return telling::ratio_text(number, judgement_.worth_it_margin);
  }

  [[nodiscard]] std::string in_95(double lo, double hi) const {
    return ratio(lo) + " to " + ratio(hi);
  }

  [[nodiscard]] const AcrossMedia& across() const { return *judgement_.media; }

 private:
  const Judgement& judgement_;
  const Look& look_;
  std::vector<telling::ArmGroup> groups_;
  std::vector<telling::ArmName> names_;
};

// A spread can hardly be told from none: below a twentieth its lower end says no more than that.
std::string gap_in_95(const numerics::Interval& ratio, const AcrossNames& names) {
  constexpr double kHardlyAny = 0.05;
  if (ratio.lo95 > kHardlyAny) return names.in_95(ratio.lo95, ratio.hi95);
  return "under 0.05 to " + names.ratio(ratio.hi95);
}

numerics::Interval turned_over(const numerics::Interval& ratio) {
  return {.median = 1 / ratio.median,
          .lo90 = 1 / ratio.hi90,
          .hi90 = 1 / ratio.lo90,
          .lo95 = 1 / ratio.hi95,
          .hi95 = 1 / ratio.lo95};
}

std::string gap_sentence(const MediaPair& pair, const AcrossNames& names, const Look& look) {
  const bool second_is_closer = pair.spread_ratio.median < 1;
  const numerics::Interval ratio =
      second_is_closer ? pair.spread_ratio : turned_over(pair.spread_ratio);
  const std::string closer = names.medium(second_is_closer ? pair.second : pair.first);
  const std::string wider = names.medium(second_is_closer ? pair.first : pair.second);
  if (ratio.hi95 < 1) {
    return fmt::format(
        "{} on {}: there they lie {} times as far apart as on {} (95 % interval {}).",
        as_settled("The gap between the " + names.things() + " closes", look),
        closer,
        names.ratio(ratio.median),
        wider,
        gap_in_95(ratio, names));
  }
  return fmt::format(
      "Whether the gap between the {} is narrower on {} than on {} is {}: {} times as wide, "
      "could be {} (95 % interval).",
      names.things(),
      closer,
      wider,
      as_not_settled("not settled", look),
      names.ratio(ratio.median),
      gap_in_95(ratio, names));
}

std::string order_sentence(const MediaPair& pair, const AcrossNames& names) {
  const std::string chance = telling::chance_text(pair.probability_same_order);
  const std::string media = names.medium(pair.first) + " and on " + names.medium(pair.second);
  return fmt::format("The chance that the {} {} stand in one order on {} is {}.",
                     names.blade_count(),
                     names.things(),
                     media,
                     chance);
}

std::string advantage_sentence(const MediaInteraction& interaction,
                               const AcrossNames& names,
                               const Look& look) {
  const bool settled = is_settled(interaction.verdict);
  const std::string words(verdicts::dependence_in_words(interaction.verdict));
  return fmt::format(
      "{} against {}: the ratio on {} is {} times that on {} (95 % interval {}): {}.",
      names.blade(interaction.a),
      names.blade(interaction.b),
      names.medium(interaction.first),
      names.ratio(interaction.ratio.median),
      names.medium(interaction.second),
      names.in_95(interaction.simultaneous.lo95, interaction.simultaneous.hi95),
      settled ? as_settled(words, look) : as_not_settled(words, look));
}

std::string agreement_sentence(const AcrossMedia& across) {
  return fmt::format(
      "Over all {} media the orders of the medians agree by Kendall's W {} (0 none, 1 wholly); "
      "orders by chance agree so well with probability {}{}.",
      across.media.size(),
      telling::to_figures(across.agreement.kendall_w, 2),
      telling::to_figures(across.agreement.p, 2),
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
                     telling::chance_text(names.across().media[medium].order_probability));
}

// All of a few; of many those that are settled, and how many are not.
void add_interactions(std::vector<std::string>& items, const AcrossNames& names, const Look& look) {
  const auto& all = names.across().interactions;
  std::size_t open = 0;
  std::size_t said = 0;
  for (const MediaInteraction& interaction : all) {
    const bool settled = is_settled(interaction.verdict);
    if (!settled) ++open;
    if (said == kMostInteractionsSaid || (!settled && all.size() > kFewInteractions)) continue;
    ++said;
    items.push_back(advantage_sentence(interaction, names, look));
  }
  if (all.size() <= kFewInteractions) return;
  items.push_back(fmt::format(
      "Whether the ratio of two {} depends on the medium is {} for {} of {} pairs; --json has all.",
      names.things(),
      as_not_settled("not settled", look),
      open,
      all.size()));
}

std::vector<std::string> section_items(const AcrossNames& names, const Look& look) {
  const AcrossMedia& across = names.across();
  std::vector<std::string> items;
  if (across.pairs.size() <= kMostPairsSaid) {
    for (const MediaPair& pair : across.pairs) {
      items.push_back(
          fmt::format("On {} an edge lasts {} times as many {} as on {}, averaged "
                      "over the {} (95 % interval {}).",
                      names.medium(pair.second),
                      names.ratio(pair.lasting_ratio.median),
                      names.counted(),
                      names.medium(pair.first),
                      names.things(),
                      names.in_95(pair.lasting_ratio.lo95, pair.lasting_ratio.hi95)));
    }
  }
  if (names.blade_count() > 2) add_interactions(items, names, look);
  for (std::size_t m = 0; m < across.media.size() && names.blade_count() <= kMostBladesListed;
       ++m) {
    items.push_back(order_words(m, names));
  }
  if (across.media.size() > 2) items.push_back(agreement_sentence(across));
  if (!across.arms_left_out.empty()) {
    items.push_back(
        fmt::format("{} of the arms have no partner in every medium; they are left out "
                    "here.",
                    across.arms_left_out.size()));
  }
  for (const std::string& remark : across.remarks) items.push_back(shown_as(remark, look));
  return items;
}

}  // namespace

std::string across_media_sentences(const Judgement& judgement, const Look& look) {
  if (!judgement.media) return {};
  const AcrossNames names(judgement, look);
  const AcrossMedia& across = *judgement.media;
  std::string text;
  const auto add = [&](const std::string& sentence) {
    text += wrapped(sentence, {.first = 2, .rest = 4}, look);
  };
  if (across.pairs.size() > kMostPairsSaid) {
    const auto by_gap = [](const MediaPair& pair) {
      return std::abs(std::log(pair.spread_ratio.median));
    };
    add(gap_sentence(*std::ranges::max_element(across.pairs, {}, by_gap), names, look));
    add(agreement_sentence(across));
  } else {
    for (const MediaPair& pair : across.pairs) {
      if (names.blade_count() > 2) {
        add(gap_sentence(pair, names, look) + " " + order_sentence(pair, names));
      }
    }
    for (const MediaInteraction& interaction : across.interactions) {
      if (names.blade_count() == 2) add(advantage_sentence(interaction, names, look));
    }
  }
  return text.empty() ? text : wrapped("Across media:", {}, look) + text;
}

std::string across_media_section(const Judgement& judgement, const Look& look) {
  if (!judgement.media) return {};
  std::string text = wrapped("Across media", {}, look);
  for (const std::string& item : section_items(AcrossNames(judgement, look), look)) {
    text += wrapped(item, {.first = 2, .rest = 4}, look);
  }
  return text;
}

}  // namespace keenfall::cli
