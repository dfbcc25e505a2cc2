#include "notebook/bench_cells.h"

#include "notebook/notebook_failure.h"
#include "notebook/trial_words.h"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

namespace keenfall::notebook {

namespace {

using bench::WhatWasDone;

// In the order of the variant.
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

// The cells between the word and the checksum; every kind uses some of them.
struct Cells {
  std::optional<double> cuts;
  std::optional<double> reading;
  std::optional<double> angle_deg;
  std::string place_on_edge;
  std::string subject;
  std::string words;
  std::string scale_line;
  std::optional<int> passes_per_side;
  std::optional<double> minutes;
  bool blade_wiped = false;
  bool piece_changed = false;
};

struct IntoCells {
  Cells& cells;

  void operator()(const bench::CutsMade& made) const { cells.cuts = made.cuts; }
  void operator()(const bench::Happened& happened) const {
    cells.subject = word_of(happened.kind);
    cells.cuts = happened.at_cuts;
    cells.words = happened.words;
  }
  void operator()(const bench::ReadingTaken& taken) const {
    cells.cuts = taken.at_cuts;
    cells.reading = taken.reading;
    cells.place_on_edge = taken.station;
    cells.scale_line = taken.scale_line;
    cells.words = taken.note;
  }
  void operator()(const bench::AngleMeasured& measured) const {
    cells.angle_deg = measured.angle.deg;
    cells.place_on_edge = measured.where;
  }
  void operator()(const bench::Sharpened& done) const {
    cells.subject = done.stone;
    cells.passes_per_side = done.passes_per_side;
    cells.minutes = done.minutes;
    cells.words = done.burr;
  }
  void operator()(const bench::StartDecided& decided) const {
    cells.subject = kDecisions.at(static_cast<std::size_t>(decided.decision));
    cells.words = decided.reason;
  }
  void operator()(const bench::Resumed& resumed) const {
    cells.blade_wiped = resumed.blade_wiped;
    cells.piece_changed = resumed.piece_changed;
  }
  void operator()(const bench::Noted& noted) const { cells.words = noted.words; }
  void operator()(const bench::Closed& closed) const { cells.words = closed.reason; }
  void operator()(const bench::Voided& voided) const { cells.words = voided.reason; }
  void operator()(const bench::TakenBack& back) const { cells.subject = back.id; }
  void operator()(const bench::Paused&) const {}
  void operator()(const bench::PieceTaken&) const {}
};

template <std::size_t kSize>
std::size_t place_of(const std::array<std::string_view, kSize>& words, const std::string& word) {
  for (std::size_t place = 0; place < kSize; ++place) {
    if (words.at(place) == word) return place;
  }
  throw NotebookDamaged("an entry of the bench says \"" + word + "\"");
}

double present(const std::optional<double>& number) {
  if (!number) throw NotebookDamaged("an entry of the bench lacks its number");
  return *number;
}

WhatWasDone out_of(const Cells& cells, const std::string& word) {
  const std::array<WhatWasDone (*)(const Cells&), kWords.size()> makers{
      [](const Cells& c) -> WhatWasDone { return bench::CutsMade{.cuts = present(c.cuts)}; },
      [](const Cells& c) -> WhatWasDone {
        return bench::Happened{
            .kind = event_kind_of(c.subject), .at_cuts = present(c.cuts), .words = c.words};
      },
      [](const Cells& c) -> WhatWasDone {
        return bench::ReadingTaken{.at_cuts = present(c.cuts),
                                   .reading = present(c.reading),
                                   .station = c.place_on_edge,
                                   .scale_line = c.scale_line,
                                   .note = c.words};
      },
      [](const Cells& c) -> WhatWasDone {
        return bench::AngleMeasured{.angle = {present(c.angle_deg)}, .where = c.place_on_edge};
      },
      [](const Cells& c) -> WhatWasDone {
        return bench::Sharpened{.stone = c.subject,
                                .passes_per_side = c.passes_per_side,
                                .minutes = c.minutes,
                                .burr = c.words};
      },
      [](const Cells& c) -> WhatWasDone {
        return bench::StartDecided{
            .decision = static_cast<bench::StartDecision>(place_of(kDecisions, c.subject)),
            .reason = c.words};
      },
      [](const Cells&) -> WhatWasDone { return bench::Paused{}; },
      [](const Cells& c) -> WhatWasDone {
        return bench::Resumed{.blade_wiped = c.blade_wiped, .piece_changed = c.piece_changed};
      },
      [](const Cells&) -> WhatWasDone { return bench::PieceTaken{}; },
      [](const Cells& c) -> WhatWasDone { return bench::Noted{.words = c.words}; },
      [](const Cells& c) -> WhatWasDone { return bench::Closed{.reason = c.words}; },
      [](const Cells& c) -> WhatWasDone { return bench::Voided{.reason = c.words}; },
      [](const Cells& c) -> WhatWasDone { return bench::TakenBack{.id = c.subject}; },
  };
  return makers.at(place_of(kWords, word))(cells);
}

}  // namespace

Row cells_of(const bench::Entry& entry) {
  Cells cells;
  std::visit(IntoCells{.cells = cells}, entry.what);
  return {entry.id,
          entry.device,
          entry.at_ms,
          std::string(kWords.at(entry.what.index())),
          cell_or_null(cells.cuts),
          cell_or_null(cells.reading),
          cell_or_null(cells.angle_deg),
          cells.place_on_edge,
          cells.subject,
          cells.words,
          cells.scale_line,
          cell_or_null(cells.passes_per_side),
          cell_or_null(cells.minutes),
          std::int64_t{cells.blade_wiped ? 1 : 0},
          std::int64_t{cells.piece_changed ? 1 : 0}};
}

bench::Entry entry_in(RowReader& row) {
  bench::Entry entry{.id = row.text()};
  entry.device = row.text();
  entry.at_ms = row.whole();
  const std::string word = row.text();
  Cells cells{.cuts = row.real_if_any()};
  cells.reading = row.real_if_any();
  cells.angle_deg = row.real_if_any();
  cells.place_on_edge = row.text();
  cells.subject = row.text();
  cells.words = row.text();
  cells.scale_line = row.text();
  cells.passes_per_side = row.whole_if_any();
  cells.minutes = row.real_if_any();
  cells.blade_wiped = row.yes();
  cells.piece_changed = row.yes();
  entry.what = out_of(cells, word);
  return entry;
}

}  // namespace keenfall::notebook
