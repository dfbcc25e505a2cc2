// The tables that came with version 3 of the schema: the kit, claims and plans. Private to the
// folder.
#pragma once

#include "notebook/schema.h"

#include <array>

namespace keenfall::notebook {

inline constexpr std::array kTablesOfPlans{
    TableText{"edge", R"(CREATE TABLE edge (
  edge_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  bevel_angle_deg REAL CHECK (bevel_angle_deg > 0 AND bevel_angle_deg < 90),
  apex_angle_deg REAL CHECK (apex_angle_deg > 0 AND apex_angle_deg < 90),
  finish TEXT NOT NULL,
  thickness_behind_edge_mm REAL,
  note TEXT NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    TableText{"medium_lot", R"(CREATE TABLE medium_lot (
  medium_lot_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  medium_id INTEGER NOT NULL REFERENCES medium (medium_id),
  name TEXT NOT NULL CHECK (name <> ''),
  length_m REAL CHECK (length_m > 0),
  note TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  UNIQUE (medium_id, name)
) STRICT)"},
    TableText{"thread", R"(CREATE TABLE thread (
  thread_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL CHECK (kind <> ''),
  name TEXT NOT NULL CHECK (name <> ''),
  lot TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  UNIQUE (kind, name, lot)
) STRICT)"},
    TableText{"reading_kind", R"(CREATE TABLE reading_kind (
  reading_kind_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL UNIQUE CHECK (kind <> ''),
  kind_words TEXT NOT NULL,
  kind_unit TEXT NOT NULL,
  keener_when TEXT NOT NULL,
  kind_use TEXT NOT NULL,
  default_level REAL NOT NULL CHECK (default_level > 1),
  zero_reading TEXT NOT NULL,
  resolution REAL CHECK (resolution > 0),
  largest REAL CHECK (largest > 0),
  checksum INTEGER NOT NULL
) STRICT)"},
    TableText{"stone", R"(CREATE TABLE stone (
  stone_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  abrasive TEXT NOT NULL,
  grit TEXT NOT NULL,
  note TEXT NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    TableText{"claim", R"(CREATE TABLE claim (
  trial_id INTEGER NOT NULL REFERENCES trial (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  words TEXT NOT NULL,
  worth_it_margin REAL NOT NULL CHECK (worth_it_margin > 1),
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"plan", R"(CREATE TABLE plan (
  trial_id INTEGER PRIMARY KEY REFERENCES trial (trial_id),
  reading_kind TEXT NOT NULL,
  reading_unit TEXT NOT NULL,
  thread TEXT NOT NULL,
  thread_lot TEXT NOT NULL,
  repeats INTEGER NOT NULL CHECK (repeats >= 1),
  start_target_reading REAL CHECK (start_target_reading > 0),
  start_tolerance_fraction REAL CHECK (start_tolerance_fraction > 0),
  stop_level REAL CHECK (stop_level > 1),
  stop_reading REAL CHECK (stop_reading > 0),
  force_cap_newton REAL CHECK (force_cap_newton > 0),
  runs_each INTEGER NOT NULL CHECK (runs_each >= 1),
  house_blade_id INTEGER REFERENCES blade (blade_id),
  order_seed TEXT NOT NULL,
  sealed_at_utc TEXT,
  runs_read_before INTEGER NOT NULL CHECK (runs_read_before >= 0),
  checksum INTEGER NOT NULL,
  CHECK ((start_target_reading IS NULL) = (start_tolerance_fraction IS NULL)),
  CHECK (stop_level IS NULL OR stop_reading IS NULL)
) STRICT)"},
    TableText{"plan_station", R"(CREATE TABLE plan_station (
  trial_id INTEGER NOT NULL REFERENCES plan (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  station TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"plan_look", R"(CREATE TABLE plan_look (
  trial_id INTEGER NOT NULL REFERENCES plan (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  runs INTEGER NOT NULL CHECK (runs >= 1),
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"plan_cutting", R"(CREATE TABLE plan_cutting (
  trial_id INTEGER NOT NULL REFERENCES plan (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  medium_id INTEGER NOT NULL REFERENCES medium (medium_id),
  medium_lot TEXT NOT NULL,
  motion TEXT NOT NULL,
  method_as_written TEXT NOT NULL,
  cut_length_mm REAL,
  edge_used_mm REAL,
  board TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"plan_checkpoint", R"(CREATE TABLE plan_checkpoint (
  trial_id INTEGER NOT NULL REFERENCES plan (trial_id),
  cutting INTEGER NOT NULL CHECK (cutting >= 0),
  place INTEGER NOT NULL CHECK (place >= 0),
  cuts REAL NOT NULL CHECK (cuts >= 0),
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, cutting, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"plan_arm", R"(CREATE TABLE plan_arm (
  trial_id INTEGER NOT NULL REFERENCES plan (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  blade_id INTEGER NOT NULL REFERENCES blade (blade_id),
  bevel_angle_deg REAL CHECK (bevel_angle_deg > 0 AND bevel_angle_deg < 90),
  apex_angle_deg REAL CHECK (apex_angle_deg > 0 AND apex_angle_deg < 90),
  finish TEXT NOT NULL,
  thickness_behind_edge_mm REAL,
  cutting INTEGER NOT NULL CHECK (cutting >= 0),
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"plan_cell", R"(CREATE TABLE plan_cell (
  trial_id INTEGER NOT NULL REFERENCES plan (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  arm INTEGER NOT NULL CHECK (arm >= 0),
  specimen TEXT NOT NULL,
  block INTEGER NOT NULL CHECK (block >= 1),
  cutting_order INTEGER NOT NULL CHECK (cutting_order >= 1),
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, place)
) STRICT, WITHOUT ROWID)"},
};

}  // namespace keenfall::notebook
