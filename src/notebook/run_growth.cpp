#include "notebook/run_growth.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstddef>
#include <utility>
#include <vector>

namespace keenfall::notebook {

namespace {

void strike_as(std::optional<std::string>& reason, const std::optional<std::string>& met) {
  if (!reason) reason = met;
}

template <class Part>
concept CanBeStruck = requires(Part part) {
  part.struck_reason;
};

// The kept part with a strike of the other; nothing where they are not the same part.
template <class Part>
std::optional<Part> joined(const Part& kept, const Part& met) {
  return kept == met ? std::optional<Part>(kept) : std::nullopt;
}

template <CanBeStruck Part>
std::optional<Part> joined(const Part& kept, const Part& met) {
  Part both = met;
  both.line = kept.line;
  both.struck_reason = kept.struck_reason;
  if (both != kept) return std::nullopt;
  strike_as(both.struck_reason, met.struck_reason);
  return both;
}

template <class Part>
bool is_struck(const Part& /*part*/) {
  return false;
}

template <CanBeStruck Part>
bool is_struck(const Part& part) {
  return part.struck_reason.has_value();
}

// All parts of the longer list, those of the shorter joined into them; nothing where the shorter
// has one that the longer has not, or has them in another order. What is struck out in the shorter
// need not be in the longer: a slip that was struck is mended there.
template <class Part>
std::optional<std::vector<Part>> with_all_of(const std::vector<Part>& longer,
                                             const std::vector<Part>& shorter,
                                             bool is_longer_kept) {
  const auto both_of = [is_longer_kept](const Part& one, const Part& other) {
    return is_longer_kept ? joined(one, other) : joined(other, one);
  };
  std::vector<Part> all;
  std::size_t met = 0;
  const auto take_what_was_struck = [&](std::size_t from) {
    for (; met < shorter.size() && is_struck(shorter[met]); ++met) {
      for (std::size_t i = from; i < longer.size(); ++i) {
        if (both_of(longer[i], shorter[met])) return;
      }
      all.push_back(shorter[met]);
    }
  };
  for (std::size_t i = 0; i < longer.size(); ++i) {
    take_what_was_struck(i);
    std::optional<Part> both;
    if (met < shorter.size()) both = both_of(longer[i], shorter[met]);
    if (both) ++met;
    all.push_back(both ? *both : longer[i]);
  }
  take_what_was_struck(longer.size());
  if (met < shorter.size()) return std::nullopt;
  return all;
}

// Joins the lists in `kept`; false where they contradict.
template <class Part>
bool join(std::vector<Part>& kept, const std::vector<Part>& met, MayHaveLess may_have_less) {
  auto all = with_all_of(met, kept, false);
  if (!all && may_have_less == MayHaveLess::yes) all = with_all_of(kept, met, true);
  if (all) kept = std::move(*all);
  return all.has_value();
}

bool join(std::string& kept, const std::string& met) {
  if (kept.empty()) kept = met;
  return met.empty() || kept == met;
}

template <class T>
bool join(std::optional<T>& kept, const std::optional<T>& met) {
  if (!kept) kept = met;
  return !met || kept == met;
}

bool join(trials::Motion& kept, trials::Motion met) {
  if (kept == trials::Motion::not_recorded) kept = met;
  return met == trials::Motion::not_recorded || kept == met;
}

// What was not recorded of an edge, a medium or a way of cutting is filled in.
bool join(trials::Arm& kept, const trials::Arm& met) {
  return kept.blade == met.blade && kept.medium.name == met.medium.name &&
         join(kept.edge.bevel_angle, met.edge.bevel_angle) &&
         join(kept.edge.apex_angle, met.edge.apex_angle) &&
         join(kept.edge.finish, met.edge.finish) &&
         join(kept.edge.thickness_behind_edge_mm, met.edge.thickness_behind_edge_mm) &&
         join(kept.medium.condition, met.medium.condition) &&
         join(kept.method.motion, met.method.motion) &&
         join(kept.method.as_written, met.method.as_written) &&
         join(kept.method.cut_length_mm, met.method.cut_length_mm) &&
         join(kept.method.edge_used_mm, met.method.edge_used_mm) &&
         join(kept.method.board, met.method.board);
}

std::string shown(const std::string& text) { return "\"" + text + "\""; }
std::string shown(int number) { return std::to_string(number); }
std::string shown(const std::optional<int>& number) { return number ? shown(*number) : ""; }

// "has the block "1", and here "2"", for the first that is told apart.
template <class T>
std::optional<std::string> other_word(const std::string& what, T kept, const T& met) {
  const T before = kept;
  if (join(kept, met)) return std::nullopt;
  return "has the " + what + " " + shown(before) + ", and here " + shown(met);
}

std::optional<std::string> first_other_word(const trials::Run& kept, const trials::Run& met) {
  for (auto& found :
       {other_word("block", kept.block, met.block),
        other_word("order", kept.order, met.order),
        other_word("date", kept.date, met.date),
        other_word("person", kept.operator_name, met.operator_name),
        other_word("lot", kept.medium_lot, met.medium_lot),
        other_word(
            "number of sharpenings", kept.sharpenings_since_new, met.sharpenings_since_new)}) {
    if (found) return found;
  }
  return std::nullopt;
}

// All words of a list, as they are read out.
std::string all_of(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + shown(word);
  return text.empty() ? "none" : text;
}

std::vector<std::string> words_of_events(const trials::Run& run) {
  std::vector<std::string> words;
  for (const trials::Event& event : run.events) words.push_back(event.as_written);
  return words;
}

// A reading that was converted has more figures than anyone wrote.
std::string figures_of(double number) {
  std::array<char, 32> text{};
  const auto end =
      std::to_chars(text.data(), text.data() + text.size(), number, std::chars_format::general, 6);
  return {text.data(), end.ptr};
}

// The first reading of the kept run that the other has not at its place.
std::string first_other_reading(const trials::Run& kept, const trials::Run& met) {
  std::size_t next = 0;
  for (const trials::Reading& reading : kept.readings) {
    std::size_t found = next;
    while (found < met.readings.size() && !joined(reading, met.readings[found])) ++found;
    if (found == met.readings.size() && !is_struck(reading)) {
      const auto instead = std::ranges::find_if(met.readings, [&](const trials::Reading& other) {
        return other.series == reading.series && other.cuts == reading.cuts &&
               other.station == reading.station && other.repeat == reading.repeat;
      });
      return "reads " + figures_of(reading.reading) + " at " + figures_of(reading.cuts) +
             (instead == met.readings.end() ? ", which is missing here"
                                            : ", and here " + figures_of(instead->reading));
    }
    if (found < met.readings.size()) next = found + 1;
  }
  return "has its readings in another order";
}

// What was not recorded of the run; nothing of it contradicts.
void fill_words(trials::Run& run, const trials::Run& met) {
  (void)join(run.block, met.block);
  (void)join(run.order, met.order);
  (void)join(run.date, met.date);
  (void)join(run.operator_name, met.operator_name);
  (void)join(run.medium_lot, met.medium_lot);
  (void)join(run.sharpenings_since_new, met.sharpenings_since_new);
}

}  // namespace

Growth growth_of(const trials::Run& kept, const trials::Run& met, MayHaveLess may_have_less) {
  Growth growth{.joined = kept};
  trials::Run& run = growth.joined;
  if (!join(run.arm, met.arm) || !join(run.specimen, met.specimen)) {
    growth.contradiction = "is of another edge, medium or way of cutting";
  } else if (!join(run.readings, met.readings, may_have_less)) {
    growth.contradiction = first_other_reading(kept, met);
  } else if (!join(run.edge_lives, met.edge_lives, may_have_less)) {
    growth.contradiction = "lasted otherwise";
  } else if (!join(run.events, met.events, may_have_less)) {
    growth.contradiction = "has the events " + all_of(words_of_events(kept)) + ", and here " +
                           all_of(words_of_events(met));
  } else if (!join(run.deviations, met.deviations, may_have_less)) {
    growth.contradiction =
        "has the deviations " + all_of(kept.deviations) + ", and here " + all_of(met.deviations);
  } else if (!join(run.notes, met.notes, may_have_less)) {
    growth.contradiction =
        "has the notes " + all_of(kept.notes) + ", and here " + all_of(met.notes);
  } else if (auto other = first_other_word(kept, met)) {
    growth.contradiction = std::move(other);
  } else {
    fill_words(run, met);
  }
  strike_as(run.voided_reason, met.voided_reason);
  return growth;
}

bool are_surely_one(const trials::Run& kept, const trials::Run& met) {
  const bool both_read = !kept.readings.empty() && !met.readings.empty();
  const bool both_tested = !kept.edge_lives.empty() && !met.edge_lives.empty();
  return (both_read || both_tested) && !growth_of(kept, met, MayHaveLess::yes).contradiction;
}

}  // namespace keenfall::notebook
