// What is in a notebook and what was done with it, in words.
#pragma once

#include "cli/look.h"
#include "trials/trial.h"
#include "workbench/notebook_changes.h"
#include "workbench/notebook_export.h"
#include "workbench/notebook_merging.h"
#include "workbench/notebook_pages.h"

#include <string>
#include <vector>

namespace keenfall::cli {

// "36 runs and 1,204 readings taken into matting, entry 1.", what grew, what was there, remarks.
[[nodiscard]] std::string taken_text(const workbench::TakenIn& in, const Look& look);
// other: the notebook or package it came from, as typed.
[[nodiscard]] std::string merged_text(const notebook::Merged& merged,
                                      const std::string& other,
                                      const Look& look);
// What was made, laid out, and how a notebook takes it back.
[[nodiscard]] std::string exported_text(const workbench::Exported& exported,
                                        const std::string& to,
                                        const Look& look);
// "the trial spring as a table, ..."
[[nodiscard]] std::string trial_table_words(const std::string& trial);
[[nodiscard]] std::string struck_words(const notebook::Struck& struck);
[[nodiscard]] std::string trials_text(const std::string& path,
                                      const std::vector<notebook::KeptTrial>& trials,
                                      const Look& look);
// The runs of a trial, by arm, and the looks at it.
[[nodiscard]] std::string trial_text(const workbench::TrialWithLooks& shown, const Look& look);
[[nodiscard]] std::string journal_text(const std::vector<notebook::JournalEntry>& journal,
                                       const Look& look);
[[nodiscard]] std::string checked_text(const std::string& path,
                                       const workbench::CheckedNotebook& checked,
                                       const Look& look);

}  // namespace keenfall::cli
