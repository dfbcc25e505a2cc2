#include "notebook/trial_words.h"

#include "notebook/notebook_failure.h"

#include <array>
#include <utility>

namespace keenfall::notebook {

namespace {

using trials::EventKind;
using trials::HardnessScale;
using trials::HowKnown;
using trials::KeenerWhen;
using trials::Motion;
using trials::ReadingUse;
using trials::ZeroReading;

constexpr std::array<std::pair<Motion, const char*>, 4> kMotions{{
    {Motion::not_recorded, "not_recorded"},
    {Motion::push, "push"},
    {Motion::draw, "draw"},
    {Motion::slice, "slice"},
}};
constexpr std::array<std::pair<EventKind, const char*>, 6> kEvents{{
    {EventKind::twisted, "twisted"},
    {EventKind::hit_something, "hit_something"},
    {EventKind::board_touched, "board_touched"},
    {EventKind::wet, "wet"},
    {EventKind::pause, "pause"},
    {EventKind::other, "other"},
}};
constexpr std::array<std::pair<HardnessScale, const char*>, 2> kScales{{
    {HardnessScale::rockwell_c, "HRC"},
    {HardnessScale::vickers, "HV"},
}};
constexpr std::array<std::pair<HowKnown, const char*>, 4> kHowKnown{{
    {HowKnown::not_said, "not_said"},
    {HowKnown::declared_by_maker, "declared_by_maker"},
    {HowKnown::mill_sheet, "mill_sheet"},
    {HowKnown::measured, "measured"},
}};
constexpr std::array<std::pair<KeenerWhen, const char*>, 2> kKeenerWhen{{
    {KeenerWhen::lower, "lower"},
    {KeenerWhen::higher, "higher"},
}};
constexpr std::array<std::pair<ReadingUse, const char*>, 2> kUses{{
    {ReadingUse::curve, "curve"},
    {ReadingUse::evidence, "evidence"},
}};
constexpr std::array<std::pair<ZeroReading, const char*>, 3> kZeros{{
    {ZeroReading::refused, "refused"},
    {ZeroReading::below_resolution, "below_resolution"},
    {ZeroReading::honest, "honest"},
}};

template <class Pairs>
std::string word_in(const Pairs& pairs, auto kind) {
  for (const auto& [known, word] : pairs) {
    if (known == kind) return word;
  }
  return {};
}

template <class Pairs>
auto kind_in(const Pairs& pairs, const std::string& word) {
  for (const auto& [known, its_word] : pairs) {
    if (its_word == word) return known;
  }
  throw NotebookDamaged("a row says \"" + word + "\" where no such word is known");
}

}  // namespace

std::string word_of(Motion motion) { return word_in(kMotions, motion); }
std::string word_of(EventKind kind) { return word_in(kEvents, kind); }
std::string word_of(HardnessScale scale) { return word_in(kScales, scale); }
std::string word_of(HowKnown how) { return word_in(kHowKnown, how); }
std::string word_of(KeenerWhen when) { return word_in(kKeenerWhen, when); }
std::string word_of(ReadingUse use) { return word_in(kUses, use); }
std::string word_of(ZeroReading zero) { return word_in(kZeros, zero); }

std::string words_of(const trials::Run& run) {
  return "run " + run.name + " of " + run.arm.blade + " on " + run.arm.medium.name;
}

Motion motion_of(const std::string& word) { return kind_in(kMotions, word); }
EventKind event_kind_of(const std::string& word) { return kind_in(kEvents, word); }
HardnessScale hardness_scale_of(const std::string& word) { return kind_in(kScales, word); }
HowKnown how_known_of(const std::string& word) { return kind_in(kHowKnown, word); }
KeenerWhen keener_when_of(const std::string& word) { return kind_in(kKeenerWhen, word); }
ReadingUse use_of(const std::string& word) { return kind_in(kUses, word); }
ZeroReading zero_of(const std::string& word) { return kind_in(kZeros, word); }

}  // namespace keenfall::notebook
