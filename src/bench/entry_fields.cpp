#include "bench/entry_fields.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace keenfall::bench {

namespace {

constexpr std::array<std::string_view, std::variant_size_v<WhatWasDone>> kWords{"cuts",
                                                                                "happened",
                                                                                "reading",
                                                                                "angle",
                                                                                "sharpened",
                                                                                "start",
                                                                                "paused",
                                                                                "resumed",
                                                                                "piece",
                                                                                "noted",
                                                                                "closed",
                                                                                "voided",
                                                                                "taken back"};
constexpr std::array<std::string_view, 3> kDecisions{"matched", "sharpen again", "go on unmatched"};
constexpr std::array<std::string_view, 6> kEvents{
    "twisted", "hit something", "board touched", "wet", "pause", "other"};

struct IntoFields {
  EntryFields& fields;

  void operator()(const CutsMade& made) const { fields.cuts = made.cuts; }
  void operator()(const Happened& happened) const {
    fields.subject = kEvents.at(static_cast<std::size_t>(happened.kind));
    fields.cuts = happened.at_cuts;
    fields.words = happened.words;
  }
  void operator()(const ReadingTaken& taken) const {
    fields.cuts = taken.at_cuts;
    fields.reading = taken.reading;
    fields.subject = taken.unit;
    fields.place_on_edge = taken.station;
    fields.scale_line = taken.scale_line;
    fields.words = taken.note;
  }
  void operator()(const AngleMeasured& measured) const {
    fields.angle_deg = measured.angle.deg;
    fields.place_on_edge = measured.where;
  }
  void operator()(const Sharpened& done) const {
    fields.subject = done.stone;
    fields.passes_per_side = done.passes_per_side;
    fields.minutes = done.minutes;
    fields.words = done.burr;
  }
  void operator()(const StartDecided& decided) const {
    fields.subject = kDecisions.at(static_cast<std::size_t>(decided.decision));
    fields.words = decided.reason;
  }
  void operator()(const Resumed& resumed) const {
    fields.blade_wiped = resumed.blade_wiped;
    fields.piece_changed = resumed.piece_changed;
  }
  void operator()(const Noted& noted) const { fields.words = noted.words; }
  void operator()(const Closed& closed) const { fields.words = closed.reason; }
  void operator()(const Voided& voided) const { fields.words = voided.reason; }
  void operator()(const TakenBack& back) const { fields.subject = back.id; }
  void operator()(const Paused&) const {}
  void operator()(const PieceTaken&) const {}
};

std::optional<std::size_t> place_of(std::span<const std::string_view> words,
                                    std::string_view word) {
  const auto found = std::ranges::find(words, word);
  if (found == words.end()) return std::nullopt;
  return static_cast<std::size_t>(found - words.begin());
}

using Maybe = std::optional<WhatWasDone>;

Maybe cuts_in(const EntryFields& fields) {
  if (!fields.cuts) return std::nullopt;
  return CutsMade{.cuts = *fields.cuts};
}

Maybe happened_in(const EntryFields& fields) {
  const auto kind = place_of(kEvents, fields.subject);
  if (!kind || !fields.cuts) return std::nullopt;
  return Happened{.kind = static_cast<trials::EventKind>(*kind),
                  .at_cuts = *fields.cuts,
                  .words = fields.words};
}

Maybe reading_in(const EntryFields& fields) {
  if (!fields.cuts || !fields.reading) return std::nullopt;
  return ReadingTaken{.at_cuts = *fields.cuts,
                      .reading = *fields.reading,
                      .unit = fields.subject,
                      .station = fields.place_on_edge,
                      .scale_line = fields.scale_line,
                      .note = fields.words};
}

Maybe angle_in(const EntryFields& fields) {
  if (!fields.angle_deg) return std::nullopt;
  return AngleMeasured{.angle = {*fields.angle_deg}, .where = fields.place_on_edge};
}

Maybe sharpened_in(const EntryFields& fields) {
  return Sharpened{.stone = fields.subject,
                   .passes_per_side = fields.passes_per_side,
                   .minutes = fields.minutes,
                   .burr = fields.words};
}

Maybe decision_in(const EntryFields& fields) {
  const auto decision = place_of(kDecisions, fields.subject);
  if (!decision) return std::nullopt;
  return StartDecided{.decision = static_cast<StartDecision>(*decision), .reason = fields.words};
}

Maybe resumed_in(const EntryFields& fields) {
  return Resumed{.blade_wiped = fields.blade_wiped, .piece_changed = fields.piece_changed};
}

Maybe paused_in(const EntryFields&) { return Paused{}; }
Maybe piece_in(const EntryFields&) { return PieceTaken{}; }
Maybe noted_in(const EntryFields& fields) { return Noted{.words = fields.words}; }
Maybe closed_in(const EntryFields& fields) { return Closed{.reason = fields.words}; }
Maybe voided_in(const EntryFields& fields) { return Voided{.reason = fields.words}; }
Maybe taken_back_in(const EntryFields& fields) { return TakenBack{.id = fields.subject}; }

// In the order of the variant.
constexpr std::array<Maybe (*)(const EntryFields&), kWords.size()> kReaders{cuts_in,
                                                                            happened_in,
                                                                            reading_in,
                                                                            angle_in,
                                                                            sharpened_in,
                                                                            decision_in,
                                                                            paused_in,
                                                                            resumed_in,
                                                                            piece_in,
                                                                            noted_in,
                                                                            closed_in,
                                                                            voided_in,
                                                                            taken_back_in};

}  // namespace

std::span<const std::string_view> entry_words() { return kWords; }
std::span<const std::string_view> decision_words() { return kDecisions; }
std::span<const std::string_view> event_words() { return kEvents; }

EntryFields fields_of(const WhatWasDone& what) {
  EntryFields fields{.what = std::string(kWords.at(what.index()))};
  std::visit(IntoFields{.fields = fields}, what);
  return fields;
}

std::optional<WhatWasDone> what_is_in(const EntryFields& fields) {
  const auto which = place_of(kWords, fields.what);
  if (!which) return std::nullopt;
  return kReaders.at(*which)(fields);
}

}  // namespace keenfall::bench
