#include "bench/standing.h"

#include "bench/typed_reading.h"
#include "bench/usual_range.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string_view>

namespace keenfall::bench {

namespace {

constexpr std::int64_t kLongestGapMs = 10 * 60 * 1000;

std::size_t checkpoint_reached(const RunSheet& sheet, double cuts) {
  const auto beyond = std::ranges::upper_bound(sheet.checkpoint_cuts, cuts);
  const auto reached = beyond - sheet.checkpoint_cuts.begin();
  return reached == 0 ? 0 : static_cast<std::size_t>(reached - 1);
}

class Course {
 public:
  Course(const RunSheet& sheet, std::span<const Entry> entries)
      : sheet_(sheet), entries_(entries) {}

  Standing gone_through() {
    for (const std::size_t index : entries_that_stand(entries_)) {
      standing_.to_take_back = index;
      if (is_over()) {
        set_aside(index, "It came after the run was over.");
        continue;
      }
      spend_time(entries_[index]);
      std::visit([&](const auto& what) { take(index, what); }, entries_[index].what);
    }
    say_what_is_next();
    return std::move(standing_);
  }

 private:
  bool is_over() const {
    return standing_.phase == Phase::closed || standing_.phase == Phase::voided;
  }

  void set_aside(std::size_t index, std::string why) {
    standing_.set_aside.push_back({.entry = index, .why = std::move(why)});
  }

  void spend_time(const Entry& entry) {
    if (last_at_ms_ && !standing_.is_paused) {
      const std::int64_t gap = entry.at_ms - *last_at_ms_;
      if (gap > 0 && gap <= kLongestGapMs) at_work_ms_ += gap;
    }
    last_at_ms_ = entry.at_ms;
  }

  void take(std::size_t, const CutsMade& made) {
    standing_.cuts = cuts_after(standing_.cuts, made);
  }

  void take(std::size_t index, const ReadingTaken& taken) {
    standing_.readings.push_back({.entry = index,
                                  .at_cuts = taken.at_cuts,
                                  .reading = in_unit_of(sheet_, taken),
                                  .station = taken.station,
                                  .checkpoint = checkpoint_reached(sheet_, taken.at_cuts)});
  }

  void take(std::size_t index, const StartDecided& decided) {
    if (decided.decision != StartDecision::sharpen_again) {
      standing_.decided = decided;
      return;
    }
    if (standing_.cuts > 0) {
      set_aside(index, "The edge had cut already: what is sharpened now begins another run.");
      return;
    }
    for (TakenReading& taken : standing_.readings) taken.before_sharpening = true;
    standing_.decided.reset();
    ++standing_.sharpenings;
  }

  void take(std::size_t, const Paused&) { standing_.is_paused = true; }

  void take(std::size_t, const Resumed& resumed) {
    standing_.is_paused = false;
    if (resumed.piece_changed) ++standing_.pieces;
  }

  void take(std::size_t, const PieceTaken&) { ++standing_.pieces; }
  void take(std::size_t, const Closed&) { standing_.phase = Phase::closed; }
  void take(std::size_t, const Voided&) { standing_.phase = Phase::voided; }

  // Said of the run, without moving it.
  void take(std::size_t, const Happened&) {}
  void take(std::size_t, const AngleMeasured&) {}
  void take(std::size_t, const Sharpened&) {}
  void take(std::size_t, const Noted&) {}
  void take(std::size_t, const TakenBack&) {}

  std::vector<SpotReading> spots_at(std::size_t checkpoint) const {
    std::vector<SpotReading> spots;
    for (const TakenReading& taken : standing_.readings) {
      if (taken.before_sharpening || taken.checkpoint != checkpoint) continue;
      spots.push_back({.station = taken.station, .reading = taken.reading});
    }
    return spots;
  }

  std::optional<StopReached> stop_after(const std::vector<SpotReading>& spots,
                                        std::size_t checkpoint) const {
    if (checkpoint == 0) return std::nullopt;
    const bool lower_is_keener = sheet_.kind.keener_when == trials::KeenerWhen::lower;
    const double now = combined_reading(spots);
    if (sheet_.stop.level && standing_.start.combined) {
      const double start = *standing_.start.combined;
      const double blunter = lower_is_keener ? now / start : start / now;
      if (blunter >= *sheet_.stop.level) return StopReached::level;
    }
    if (sheet_.stop.reading) {
      const double limit = *sheet_.stop.reading;
      if (lower_is_keener ? now >= limit : now <= limit) return StopReached::reading;
    }
    if (checkpoint + 1 == sheet_.checkpoint_cuts.size()) return StopReached::cap;
    return std::nullopt;
  }

  void say_what_is_next() {
    standing_.minutes_at_work = static_cast<double>(at_work_ms_) / 60000;
    standing_.start = start_of(sheet_, spots_at(0));
    const std::size_t here = checkpoint_reached(sheet_, standing_.cuts);
    const std::vector<SpotReading> spots = spots_at(here);
    const bool is_read = spots.size() >= static_cast<std::size_t>(sheet_.repeats);
    if (here + 1 < sheet_.checkpoint_cuts.size()) {
      standing_.next_checkpoint_cuts = sheet_.checkpoint_cuts[here + 1];
    }
    standing_.readings_here = spots.size();
    standing_.next_station = station_in_turn(sheet_, spots.size());
    standing_.usual = usual_range(sheet_, spots, here == 0 ? spots : last_read_before(here));
    if (is_read) standing_.stop = stop_after(spots, here);
    if (is_over()) return;
    if (!standing_.decided && standing_.cuts == 0) {
      standing_.phase = Phase::preparing;
    } else if (!is_read) {
      standing_.phase = Phase::reading;
    } else {
      standing_.phase = standing_.stop ? Phase::at_the_stop : Phase::cutting;
    }
  }

  std::vector<SpotReading> last_read_before(std::size_t checkpoint) const {
    while (checkpoint > 0) {
      std::vector<SpotReading> spots = spots_at(--checkpoint);
      if (!spots.empty()) return spots;
    }
    return {};
  }

  const RunSheet& sheet_;
  std::span<const Entry> entries_;
  Standing standing_;
  std::optional<std::int64_t> last_at_ms_;
  std::int64_t at_work_ms_ = 0;
};

}  // namespace

double cuts_after(double cuts, const CutsMade& made) {
  constexpr double kFinest = 1e6;
  return std::round((cuts + made.cuts) * kFinest) / kFinest;
}

std::vector<std::size_t> entries_that_stand(std::span<const Entry> entries) {
  std::set<std::string_view> gone;
  for (const Entry& entry : entries) {
    if (const auto* back = std::get_if<TakenBack>(&entry.what)) gone.insert(back->id);
  }
  std::vector<std::size_t> standing;
  for (std::size_t index = 0; index < entries.size(); ++index) {
    const Entry& entry = entries[index];
    if (std::holds_alternative<TakenBack>(entry.what)) continue;
    if (gone.insert(entry.id).second) standing.push_back(index);
  }
  return standing;
}

Standing standing_of(const RunSheet& sheet, std::span<const Entry> entries) {
  return Course(sheet, entries).gone_through();
}

}  // namespace keenfall::bench
