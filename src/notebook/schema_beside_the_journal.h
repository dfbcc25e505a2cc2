// The tables that came with version 4 of the schema, which no entry of the journal touches: runs at
// the bench, and sheets that are being typed. Private to the folder.
#pragma once

#include "notebook/schema.h"

#include <array>

namespace keenfall::notebook {

// A run names its trial by uid only, and no change of the journal touches what was tapped: it is
// there before any of it is part of a trial, and stays when that is undone.
inline constexpr std::array kTablesBesideTheJournal{
    TableText{"bench_run", R"(CREATE TABLE bench_run (
  bench_run_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  trial_uid TEXT NOT NULL,
  name TEXT NOT NULL,
  arm INTEGER NOT NULL CHECK (arm >= 0),
  specimen TEXT NOT NULL,
  block INTEGER NOT NULL CHECK (block >= 1),
  cutting_order INTEGER CHECK (cutting_order >= 1),
  begun_at_utc TEXT NOT NULL,
  who TEXT NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    TableText{"bench_entry", R"(CREATE TABLE bench_entry (
  bench_run_id INTEGER NOT NULL REFERENCES bench_run (bench_run_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  client_id TEXT NOT NULL UNIQUE,
  device TEXT NOT NULL,
  at_ms INTEGER NOT NULL,
  what TEXT NOT NULL,
  cuts REAL CHECK (cuts >= 0),
  reading REAL,
  angle_deg REAL CHECK (angle_deg > 0 AND angle_deg < 90),
  place_on_edge TEXT NOT NULL,
  subject TEXT NOT NULL,
  words TEXT NOT NULL,
  scale_line TEXT NOT NULL,
  passes_per_side INTEGER CHECK (passes_per_side >= 0),
  minutes REAL CHECK (minutes > 0),
  blade_wiped INTEGER NOT NULL CHECK (blade_wiped IN (0, 1)),
  piece_changed INTEGER NOT NULL CHECK (piece_changed IN (0, 1)),
  checksum INTEGER NOT NULL,
  PRIMARY KEY (bench_run_id, place)
) STRICT, WITHOUT ROWID)"},
    // What is not taken in yet is nobody's record: it is changed in place, and goes when it is.
    TableText{"typed_sheet", R"(CREATE TABLE typed_sheet (
  trial_uid TEXT NOT NULL PRIMARY KEY,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  cells TEXT NOT NULL,
  at_utc TEXT NOT NULL,
  who TEXT NOT NULL,
  checksum INTEGER NOT NULL
) STRICT, WITHOUT ROWID)"},
};

}  // namespace keenfall::notebook
