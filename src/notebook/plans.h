// What is asked and planned in a trial: kept before the first cut, changed while it is a draft, and
// sealed. A sealed claim or plan is not changed any more.
//
// A trial may have a plan and no run yet, runs and no plan, or both. Angles, lengths and readings
// as in trials/plan.h. Blades and media that the kit has not come into it by their names. Refused
// with a Problem: what cannot be kept (a name that is taken, numbers out of range), and any change
// of what is sealed.
#pragma once

#include "base/result.h"
#include "notebook/notebook.h"
#include "trials/plan.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {

// As a draft it may lack claims, arms, runs.
struct Asked {
  std::vector<trials::Claim> claims;
  trials::Plan plan;

  bool operator==(const Asked&) const = default;
};

struct KeptPlan {
  std::vector<trials::Claim> claims;
  trials::Plan plan;
  std::optional<std::string> sealed_at_utc;  // absent: a draft
  int runs_read_before = 0;                  // that had readings or edge lives when it was sealed
  std::string sha256;                        // of plan_text() (plan_text.h), in hexadecimal

  bool operator==(const KeptPlan&) const = default;
};

// A trial that has no run yet.
[[nodiscard]] base::Result<JournalEntry> make_trial(Notebook& notebook,
                                                    const std::string& name,
                                                    const Asked& asked,
                                                    const Authorship& by);

// In place of the draft, or where the trial has none. Absent: it says so already.
[[nodiscard]] base::Result<std::optional<JournalEntry>> change_asked(Notebook& notebook,
                                                                     const std::string& trial,
                                                                     const Asked& asked,
                                                                     const Authorship& by);

// At by.at_utc. Needs a claim and an arm.
[[nodiscard]] base::Result<JournalEntry> seal(Notebook& notebook,
                                              const std::string& trial,
                                              const Authorship& by);

// The entry by which a plan is sealed.
struct Sealing {
  std::int64_t entry = 0;  // undoing it takes the seal back
  bool is_held = false;    // by what was read or tapped since: undoing it is refused

  bool operator==(const Sealing&) const = default;
};

// Nothing where the plan is not sealed, or was sealed in another notebook that was merged in.
// Throws NotebookDamaged where the journal cannot be read.
[[nodiscard]] std::optional<Sealing> sealing_of(const Notebook& notebook, const std::string& trial);

// Absent: it is called so already.
[[nodiscard]] base::Result<std::optional<JournalEntry>> rename_trial(Notebook& notebook,
                                                                     const std::string& trial,
                                                                     const std::string& name,
                                                                     const Authorship& by);

// Nothing where the trial has no plan, or there is no such trial. Throws NotebookDamaged where a
// row of it is not as it was written.
[[nodiscard]] std::optional<KeptPlan> kept_plan(const Notebook& notebook, const std::string& trial);

}  // namespace keenfall::notebook
