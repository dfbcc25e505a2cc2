#include "bench/as_run.h"

#include "base/plain_number.h"
#include "bench/entry_fields.h"
#include "bench/standing.h"
#include "bench/typed_reading.h"

#include <algorithm>
#include <map>
#include <string>

namespace keenfall::bench {

namespace {

using base::plain_number;

std::string words_of(const Sharpened& done) {
  std::string words = "Sharpened on " + done.stone;
  if (done.passes_per_side) {
    words += ", " + std::to_string(*done.passes_per_side) + " passes per side";
  }
  if (done.minutes) words += ", " + plain_number(*done.minutes) + " min";
  if (!done.burr.empty()) words += "; burr: " + done.burr;
  return words + ".";
}

class Telling {
 public:
  Telling(const RunSheet& sheet, std::span<const Entry> entries)
      : sheet_(sheet), entries_(entries), standing_(standing_of(sheet, entries)) {
    told_.run = sheet.run;
  }

  CutRun told() {
    tell_readings();
    if (told_.series.empty()) (void)series_in(sheet_.unit);
    std::map<std::size_t, std::string> set_aside;
    for (const SetAside& aside : standing_.set_aside) set_aside[aside.entry] = aside.why;
    for (const std::size_t index : entries_that_stand(entries_)) {
      if (set_aside.contains(index)) continue;
      std::visit([&](const auto& what) { tell(what); }, entries_[index].what);
    }
    tell_passed_by();
    return std::move(told_);
  }

 private:
  std::size_t series_in(const std::string& unit) {
    const auto known = std::ranges::find(told_.series, unit, &trials::ReadingSeries::unit);
    if (known != told_.series.end()) return static_cast<std::size_t>(known - told_.series.begin());
    told_.series.push_back({.kind = sheet_.kind,
                            .unit = unit,
                            .thread = sheet_.thread,
                            .thread_lot = sheet_.thread_lot});
    return told_.series.size() - 1;
  }

  void tell_readings() {
    std::map<std::size_t, int> repeats;
    for (const TakenReading& taken : standing_.readings) {
      const auto& entry = std::get<ReadingTaken>(entries_[taken.entry].what);
      const std::string& unit = unit_of(sheet_, entry);
      trials::Reading reading{.series = series_in(unit),
                              .cuts = taken.at_cuts,
                              .reading = entry.reading,
                              .station = taken.station};
      if (taken.before_sharpening) {
        reading.struck_reason = "read before the edge was sharpened again";
      } else {
        reading.repeat = ++repeats[taken.checkpoint];
      }
      told_.run.readings.push_back(std::move(reading));
      const std::string where = "Reading " + plain_number(entry.reading) + " " + unit + " at " +
                                trials::so_many(plain_number(taken.at_cuts), sheet_.counted);
      if (!entry.note.empty()) note(where + ": " + entry.note);
      if (!entry.scale_line.empty()) note(where + ", from the scale: " + entry.scale_line);
    }
  }

  void tell(const Happened& happened) { event(happened.kind, happened.at_cuts, happened.words); }
  void tell(const Paused&) { event(trials::EventKind::pause, cuts_, ""); }
  void tell(const Resumed& resumed) {
    if (!resumed.blade_wiped) return;
    note("Blade wiped before going on at " + trials::so_many(plain_number(cuts_), sheet_.counted) +
         ".");
  }
  void tell(const AngleMeasured& measured) {
    note("Measured " + plain_number(measured.angle.deg) + "° per side" +
         (measured.where.empty() ? "" : " (" + measured.where + ")") + ".");
  }
  void tell(const Sharpened& done) { note(words_of(done)); }
  void tell(const StartDecided& decided) {
    if (decided.decision == StartDecision::matched) return;
    if (decided.decision == StartDecision::sharpen_again) {
      note("Sharpened again before the first cut" +
           (decided.reason.empty() ? "." : ": " + decided.reason));
      return;
    }
    deviate("Begun unmatched: " + decided.reason);
  }
  void tell(const Noted& noted) { note(noted.words); }
  void tell(const Closed& closed) {
    if (!closed.reason.empty()) deviate("Stopped: " + closed.reason);
  }
  void tell(const Voided& voided) { told_.run.voided_reason = voided.reason; }

  void tell(const CutsMade& made) { cuts_ = cuts_after(cuts_, made); }
  // Told by the readings and the standing.
  void tell(const ReadingTaken&) {}
  void tell(const PieceTaken&) {}
  void tell(const TakenBack&) {}

  void event(trials::EventKind kind, double at_cuts, const std::string& words) {
    told_.run.events.push_back(
        {.kind = kind,
         .cuts = at_cuts,
         .as_written =
             words.empty() ? std::string(event_words()[static_cast<std::size_t>(kind)]) : words});
  }
  void note(std::string words) { told_.run.notes.push_back(std::move(words)); }
  void deviate(std::string words) { told_.run.deviations.push_back(std::move(words)); }

  // Checkpoints up to where the run got to that were read less often than planned.
  void tell_passed_by() {
    if (standing_.phase == Phase::voided) return;
    std::map<std::size_t, int> read;
    for (const TakenReading& taken : standing_.readings) {
      if (!taken.before_sharpening) ++read[taken.checkpoint];
    }
    for (std::size_t at = 0; at < sheet_.checkpoint_cuts.size(); ++at) {
      if (sheet_.checkpoint_cuts[at] > standing_.cuts) break;
      const int times = read[at];
      if (times >= sheet_.repeats) continue;
      const std::string where =
          trials::so_many(plain_number(sheet_.checkpoint_cuts[at]), sheet_.counted);
      deviate(times == 0 ? "Not read at " + where + "."
                         : "Read " + std::to_string(times) + " times instead of " +
                               std::to_string(sheet_.repeats) + " at " + where + ".");
    }
  }

  const RunSheet& sheet_;
  std::span<const Entry> entries_;
  Standing standing_;
  CutRun told_;
  double cuts_ = 0;
};

}  // namespace

CutRun as_run(const RunSheet& sheet, std::span<const Entry> entries) {
  return Telling(sheet, entries).told();
}

}  // namespace keenfall::bench
