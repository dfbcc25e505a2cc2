// The app's smaller answers as JSON: which notebooks there are, a trial, the journal, a change,
// what was found, reference rows. Values with their writers.
//
// Each out: one JSON object in one line. Shapes: docs/wire/api.json.
#pragma once

#include "materials/told_in.h"
#include "notebook/notebook.h"
#include "planning/runs_to_cut.h"
#include "trials/trial.h"
#include "wire/asked_json.h"
#include "wire/home.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

struct FoundNotebook {
  std::string name;
  std::string path;
  std::string changed_at_utc;
};

struct Notebooks {
  std::string folder;
  std::vector<FoundNotebook> notebooks;  // newest first
};

struct SeenLook {
  std::string at_utc;
  std::string who;
  std::string words;  // which readings it saw
};

struct TrialPage {
  std::string uid;
  std::int64_t last_entry = 0;
  Path path;
  std::optional<AskedTold> asked;  // absent: nothing was asked or planned
  trials::Trial trial;
  materials::ToldIn told_in;
  std::vector<SeenLook> looks;
  std::vector<std::string> deviations;
  std::vector<planning::RunToCut> to_cut;  // of a sealed plan
};

struct JournalPage {
  std::vector<notebook::JournalEntry> entries;  // newest first
  std::optional<std::int64_t> next_before;      // there are older ones
};

struct Changed {
  std::int64_t entry = 0;  // 0: it was so already
  std::int64_t last_entry = 0;
  std::string what;
  std::vector<std::string> remarks;
};

// A table that was taken back to be corrected: its cells are the sheet that is typed.
struct TakenBack {
  Changed changed;
  std::string trial;       // uid, of whose sheet they are; empty: of a new trial's
  std::string trial_name;  // what it is, or was, called
};

struct FoundPlace {
  std::string kind;  // "trial", "run", "blade", "medium", "note" or "entry"
  std::string words;
  std::string trial;  // its name; empty: it is a trial itself, or of none
  std::string path;   // of the page that shows it
};

struct SteelRow {
  std::string name;
  std::vector<std::string> also;
  std::string words;
};

struct GritWords {
  std::string name;
  double size_um = 0;
  std::string words;
};

[[nodiscard]] std::string notebooks_to_json(const Notebooks& notebooks);
[[nodiscard]] std::string trial_page_to_json(const TrialPage& page);
[[nodiscard]] std::string journal_to_json(const JournalPage& page);
[[nodiscard]] std::string changed_to_json(const Changed& changed);
[[nodiscard]] std::string taken_back_to_json(const TakenBack& back);
[[nodiscard]] std::string found_to_json(const std::vector<FoundPlace>& found);
[[nodiscard]] std::string steels_to_json(const std::vector<SteelRow>& steels);
[[nodiscard]] std::string grits_to_json(const std::vector<GritWords>& grits);

}  // namespace keenfall::wire
