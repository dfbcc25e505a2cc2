#include "notebook/schema.h"

#include "base/require.h"
#include "notebook/schema_beside_the_journal.h"
#include "notebook/schema_of_plans.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace keenfall::notebook {

namespace {

constexpr std::array kTablesOfTrials{
    TableText{"notebook", R"(CREATE TABLE notebook (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  uid TEXT NOT NULL,
  made_at_utc TEXT NOT NULL,
  made_by TEXT NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    TableText{"journal", R"(CREATE TABLE journal (
  entry INTEGER PRIMARY KEY CHECK (entry > 0),
  client_id TEXT NOT NULL UNIQUE,
  at_utc TEXT NOT NULL,
  who TEXT NOT NULL,
  what TEXT NOT NULL,
  why TEXT NOT NULL,
  undoes INTEGER REFERENCES journal (entry),
  changeset BLOB NOT NULL,
  hash BLOB NOT NULL CHECK (length(hash) = 32)
) STRICT)"},
    TableText{"blade", R"(CREATE TABLE blade (
  blade_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  steel TEXT NOT NULL,
  hardness REAL,
  hardness_scale TEXT CHECK (hardness_scale IN ('HRC', 'HV')),
  hardness_error REAL,
  hardness_how_known TEXT,
  checksum INTEGER NOT NULL
) STRICT)"},
    TableText{"specimen", R"(CREATE TABLE specimen (
  specimen_id INTEGER PRIMARY KEY,
  blade_id INTEGER NOT NULL REFERENCES blade (blade_id),
  name TEXT NOT NULL,
  hardness REAL,
  hardness_scale TEXT CHECK (hardness_scale IN ('HRC', 'HV')),
  hardness_error REAL,
  hardness_how_known TEXT,
  checksum INTEGER NOT NULL,
  UNIQUE (blade_id, name)
) STRICT)"},
    TableText{"medium", R"(CREATE TABLE medium (
  medium_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  name TEXT NOT NULL,
  condition TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  UNIQUE (name, condition)
) STRICT)"},
    TableText{"trial", R"(CREATE TABLE trial (
  trial_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  counted_one TEXT NOT NULL,
  counted_many TEXT NOT NULL,
  counted_is_measured INTEGER NOT NULL CHECK (counted_is_measured IN (0, 1)),
  checksum INTEGER NOT NULL
) STRICT)"},
    TableText{"trial_blade", R"(CREATE TABLE trial_blade (
  trial_id INTEGER NOT NULL REFERENCES trial (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  blade_id INTEGER NOT NULL REFERENCES blade (blade_id),
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, place),
  UNIQUE (trial_id, blade_id)
) STRICT, WITHOUT ROWID)"},
    TableText{"trial_specimen", R"(CREATE TABLE trial_specimen (
  trial_id INTEGER NOT NULL REFERENCES trial (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  specimen_id INTEGER NOT NULL REFERENCES specimen (specimen_id),
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, place),
  UNIQUE (trial_id, specimen_id)
) STRICT, WITHOUT ROWID)"},
    TableText{"series", R"(CREATE TABLE series (
  trial_id INTEGER NOT NULL REFERENCES trial (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  kind TEXT NOT NULL,
  kind_words TEXT NOT NULL,
  kind_unit TEXT NOT NULL,
  keener_when TEXT NOT NULL,
  kind_use TEXT NOT NULL,
  default_level REAL NOT NULL,
  zero_reading TEXT NOT NULL,
  resolution REAL,
  largest REAL,
  unit TEXT NOT NULL,
  thread TEXT NOT NULL,
  thread_lot TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"taken_table", R"(CREATE TABLE taken_table (
  trial_id INTEGER NOT NULL REFERENCES trial (trial_id),
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  file_name TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, sha256)
) STRICT, WITHOUT ROWID)"},
    TableText{"run", R"(CREATE TABLE run (
  run_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  trial_id INTEGER NOT NULL REFERENCES trial (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  name TEXT NOT NULL,
  blade_id INTEGER NOT NULL REFERENCES blade (blade_id),
  bevel_angle_deg REAL CHECK (bevel_angle_deg > 0 AND bevel_angle_deg < 90),
  apex_angle_deg REAL CHECK (apex_angle_deg > 0 AND apex_angle_deg < 90),
  finish TEXT NOT NULL,
  thickness_behind_edge_mm REAL,
  medium_id INTEGER NOT NULL REFERENCES medium (medium_id),
  motion TEXT NOT NULL,
  method_as_written TEXT NOT NULL,
  cut_length_mm REAL,
  edge_used_mm REAL,
  board TEXT NOT NULL,
  specimen TEXT NOT NULL,
  block TEXT NOT NULL,
  cutting_order INTEGER,
  medium_lot TEXT NOT NULL,
  operator TEXT NOT NULL,
  date TEXT NOT NULL,
  sharpenings_since_new INTEGER,
  voided_reason TEXT,
  checksum INTEGER NOT NULL,
  UNIQUE (trial_id, place)
) STRICT)"},
    TableText{"reading", R"(CREATE TABLE reading (
  run_id INTEGER NOT NULL REFERENCES run (run_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  series INTEGER NOT NULL CHECK (series >= 0),
  cuts REAL NOT NULL CHECK (cuts >= 0),
  reading REAL NOT NULL,
  station TEXT NOT NULL,
  repeat INTEGER,
  struck_reason TEXT,
  doubtful_reason TEXT,
  line INTEGER NOT NULL,
  checksum INTEGER NOT NULL,
  PRIMARY KEY (run_id, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"edge_life", R"(CREATE TABLE edge_life (
  run_id INTEGER NOT NULL REFERENCES run (run_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  test TEXT NOT NULL,
  lasted_cuts REAL NOT NULL CHECK (lasted_cuts >= 0),
  failed_by_cuts REAL,
  level REAL,
  struck_reason TEXT,
  line INTEGER NOT NULL,
  checksum INTEGER NOT NULL,
  PRIMARY KEY (run_id, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"event", R"(CREATE TABLE event (
  run_id INTEGER NOT NULL REFERENCES run (run_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  kind TEXT NOT NULL,
  cuts REAL NOT NULL CHECK (cuts >= 0),
  as_written TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  PRIMARY KEY (run_id, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"run_note", R"(CREATE TABLE run_note (
  run_id INTEGER NOT NULL REFERENCES run (run_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  is_deviation INTEGER NOT NULL CHECK (is_deviation IN (0, 1)),
  words TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  PRIMARY KEY (run_id, place)
) STRICT, WITHOUT ROWID)"},
    TableText{"trial_remark", R"(CREATE TABLE trial_remark (
  trial_id INTEGER NOT NULL REFERENCES trial (trial_id),
  place INTEGER NOT NULL CHECK (place >= 0),
  words TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  PRIMARY KEY (trial_id, place)
) STRICT, WITHOUT ROWID)"},
    // Version 2. What was seen stays seen: a look names its trial by uid only, so that a trial
    // whose table is taken back goes, and its looks are there again when it comes back.
    TableText{"stored_judgement", R"(CREATE TABLE stored_judgement (
  judgement_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  trial_uid TEXT NOT NULL,
  inputs_sha256 TEXT NOT NULL CHECK (length(inputs_sha256) = 64),
  runs INTEGER NOT NULL CHECK (runs >= 0),
  readings INTEGER NOT NULL CHECK (readings >= 0),
  question TEXT NOT NULL,
  seed TEXT NOT NULL,
  program_version TEXT NOT NULL,
  answer TEXT NOT NULL,
  checksum INTEGER NOT NULL,
  UNIQUE (trial_uid, inputs_sha256, question, seed, program_version)
) STRICT)"},
    TableText{"look", R"(CREATE TABLE look (
  look_id INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE,
  judgement_id INTEGER NOT NULL REFERENCES stored_judgement (judgement_id),
  at_utc TEXT NOT NULL,
  who TEXT NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
};

constexpr auto kTables = [] {
  constexpr std::size_t kAll =
      kTablesOfTrials.size() + kTablesOfPlans.size() + kTablesBesideTheJournal.size();
  std::array<TableText, kAll> all{};
  auto next = std::ranges::copy(kTablesOfTrials, all.begin()).out;
  next = std::ranges::copy(kTablesOfPlans, next).out;
  std::ranges::copy(kTablesBesideTheJournal, next);
  return all;
}();

constexpr std::array<std::size_t, kSchemaVersion> kTablesOfVersion{
    16, kTablesOfTrials.size(), kTablesOfTrials.size() + kTablesOfPlans.size(), kTables.size()};

}  // namespace

std::span<const TableText> tables_of_schema(std::int64_t version) {
  base::require(version >= 1 && version <= kSchemaVersion, "the version of the schema is known");
  return std::span(kTables).first(kTablesOfVersion[static_cast<std::size_t>(version - 1)]);
}

bool is_beside_the_journal(std::string_view table) {
  return std::ranges::count(kTablesBesideTheJournal, table, &TableText::name) > 0;
}

}  // namespace keenfall::notebook
