#include "workbench/table_reading.h"

#include "exchange/long_table.h"
#include "exchange/plain_columns.h"
#include "exchange/watched_tables.h"
#include "notebook/digest.h"
#include "notebook/kept_trials.h"
#include "notebook/watched_taking.h"
#include "trials/cutting.h"
#include "trials/edge.h"
#include "workbench/arms_alike.h"
#include "workbench/said_on_a_page.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <utility>

namespace keenfall::workbench {

namespace {

using Problems = std::vector<base::Problem>;

constexpr std::size_t kMostArmsNamed = 200;

// "A (17° per side) on new sisal, dry: slice of 100 mm".
std::string arm_in_words(const trials::Arm& arm) {
  const std::string edge = trials::in_words(arm.edge);
  const std::string method = trials::in_words(arm.method);
  std::string words = arm.blade;
  if (!edge.empty()) words += " (" + edge + ")";
  words += " on " + arm.medium.name;
  if (!arm.medium.condition.empty()) words += ", " + arm.medium.condition;
  if (!method.empty()) words += ": " + method;
  return words;
}

std::vector<std::string> arms_in_words(const trials::Trial& trial) {
  std::vector<std::string> words;
  const std::vector<trials::Arm> arms = trials::arms_of(trial);
  for (const trials::Arm& arm : arms) {
    if (words.size() == kMostArmsNamed) {
      words.push_back("and " + std::to_string(arms.size() - kMostArmsNamed) + " more");
      break;
    }
    words.push_back(arm_in_words(arm));
  }
  return words;
}

// Two halves of one job, and whether it was stopped.
class Halves {
 public:
  explicit Halves(const base::ProgressReport& progress) : progress_(progress) {}

  [[nodiscard]] base::ProgressReport first() { return half(0); }
  [[nodiscard]] base::ProgressReport second() { return half(0.5); }
  [[nodiscard]] bool is_stopped() const { return is_stopped_; }

 private:
  base::ProgressReport half(double before) {
    return [this, before](base::Progress told) {
      told.fraction_done = before + told.fraction_done / 2;
      is_stopped_ = is_stopped_ || !progress_(told);
      return !is_stopped_;
    };
  }

  const base::ProgressReport& progress_;
  bool is_stopped_ = false;
};

base::Problem stopped() {
  return {.kind = base::ProblemKind::interrupted,
          .sentence = "It was stopped before it was done, and nothing was changed."};
}

std::string file_name_of(const exchange::TableInHand& table) {
  return table.name.substr(table.name.find_last_of("/\\") + 1);
}

std::vector<notebook::TakenTable> tables_of(const wire::ReadTables& asked, bool is_in_part) {
  std::vector<notebook::TakenTable> tables;
  for (const exchange::TableInHand& table : asked.tables) {
    tables.push_back({.file_name = file_name_of(table),
                      .sha256 = notebook::in_hex(notebook::sha256_of(table.bytes)),
                      .is_in_part = is_in_part});
  }
  return tables;
}

base::Problem no_such_trial(const std::string& uid) {
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "The notebook has no such trial; it may have been undone.",
          .place = {.column = "trial", .found = uid},
          .accepted = "a trial of this notebook, or a new one"};
}

base::Problem name_is_taken(const std::string& name) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "There is a trial “" + name +
                      "” already. Take the table into it, or give the new trial another name.",
          .place = {.column = "trial_name", .found = name},
          .accepted = "a name that no trial of this notebook has"};
}

// What would be taken is there as it is.
bool is_all_known(const wire::IntoTrial& into) {
  return into.contradictions.empty() && into.taken.runs_added == 0 && into.taken.runs_grown == 0;
}

std::string new_name(const wire::TakeTables& asked) {
  if (!asked.trial_name.empty() || asked.read.tables.empty()) return asked.trial_name;
  return exchange::trial_name_after(asked.read.tables.front());
}

constexpr std::size_t kMostDoublesNamed = 10;

// Runs that would be new beside one of the same name, since something of their arm is not said.
std::vector<std::string> doubles_of(const trials::Trial& kept, const trials::Trial& taken) {
  std::vector<std::string> remarks;
  for (const trials::Run& run : taken.runs) {
    const auto is_its_double = [&run](const trials::Run& other) {
      return other.name == run.name && other.arm != run.arm && may_be_one(other.arm, run.arm);
    };
    const bool is_known = std::ranges::any_of(kept.runs, [&run](const trials::Run& other) {
      return other.name == run.name && other.arm == run.arm;
    });
    const auto other = std::ranges::find_if(kept.runs, is_its_double);
    if (is_known || other == kept.runs.end()) continue;
    if (remarks.size() == kMostDoublesNamed) break;
    remarks.push_back("Run " + run.name + " of " + arm_in_words(other->arm) +
                      " is in already; run " + run.name + " of " + arm_in_words(run.arm) +
                      " would come in beside it, as a run of its own.");
  }
  return remarks;
}

// As kept, with what is remarked on it: what would be written for what was read.
wire::IntoTrial stands_to(const notebook::Notebook& opened,
                          const std::string& name,
                          const wire::ReadTables& asked,
                          const exchange::GoodRows& good,
                          const base::ProgressReport& progress) {
  trials::Trial trial = good.trial;
  trial.name = name;
  wire::IntoTrial into{.trial = name, .taken = {}, .contradictions = {}};
  auto would = notebook::would_take(
      opened, std::move(trial), tables_of(asked, !good.left_out.empty()), progress);
  if (would) {
    into.taken = std::move(*would);
    const bool adds = into.taken.runs_added > 0;
    if (const auto kept = notebook::kept_trial(opened, name); adds && kept) {
      std::ranges::copy(doubles_of(*kept, good.trial), std::back_inserter(into.taken.remarks));
    }
  } else {
    into.contradictions = said_on_a_page(std::move(would.error()));
  }
  return into;
}

// A new trial: by a name that is free, unless all of it is there already under its own.
void read_as_new(const notebook::Notebook& opened,
                 const wire::ReadTables& asked,
                 const base::ProgressReport& progress,
                 wire::TablesRead& read) {
  const std::string name = read.trial_name;
  const auto namesake = notebook::trial_uid_of(opened, name);
  if (!namesake) return;
  if (read.survey.good) {
    wire::IntoTrial into = stands_to(opened, name, asked, *read.survey.good, progress);
    if (is_all_known(into)) {
      read.into = std::move(into);
      return;
    }
  }
  read.namesake = wire::Namesake{.trial = *namesake, .trial_name = name};
  for (int number = 2; notebook::trial_uid_of(opened, read.trial_name); ++number) {
    read.trial_name = name + " " + std::to_string(number);
  }
}

base::ResultOrProblems<exchange::GoodRows> good_rows_of(const wire::TakeTables& asked,
                                                        const base::ProgressReport& progress) {
  const wire::ReadTables& read = asked.read;
  if (asked.keeps_good) {
    return exchange::take_good_rows_in_hand(read.tables, read.options, progress);
  }
  auto trial = exchange::take_tables_in_hand(read.tables, read.options, progress);
  if (!trial) return tl::unexpected<Problems>(std::move(trial.error()));
  return exchange::GoodRows{.trial = std::move(*trial), .left_out = {}};
}

// The name of the trial to take into; why not, where that cannot be.
base::Result<std::string> trial_to_take_into(const notebook::Notebook& opened,
                                             const wire::TakeTables& asked,
                                             const exchange::GoodRows& rows) {
  if (!asked.read.trial.empty()) {
    const auto name = notebook::trial_name_of(opened, asked.read.trial);
    if (!name) return base::failed(no_such_trial(asked.read.trial));
    return *name;
  }
  const std::string name = new_name(asked);
  if (!notebook::trial_uid_of(opened, name)) return name;
  if (is_all_known(stands_to(opened, name, asked.read, rows, base::unwatched()))) return name;
  return base::failed(name_is_taken(name));
}

std::int64_t last_entry_of(const notebook::Notebook& opened) {
  const auto journal = opened.journal();
  return journal.empty() ? 0 : journal.back().entry;
}

}  // namespace

bool is_long_to_read(const wire::ReadTables& asked) {
  constexpr std::size_t kMostBytesAtOnce = std::size_t{128} * 1024;
  constexpr std::size_t kUnpacked = 10;  // a spreadsheet, which begins as any ZIP archive
  std::size_t bytes = 0;
  for (const exchange::TableInHand& table : asked.tables) {
    bytes += table.bytes.size() * (table.bytes.starts_with("PK") ? kUnpacked : 1);
  }
  return bytes > kMostBytesAtOnce;
}

base::ResultOrProblems<wire::TablesRead> read_tables(const std::string& notebook,
                                                     const wire::ReadTables& asked,
                                                     const base::ProgressReport& progress) {
  using Outcome = base::ResultOrProblems<wire::TablesRead>;
  return naming_the_file(notebook, [&]() -> Outcome {
    Halves halves(progress);
    wire::TablesRead read{.survey =
                              exchange::survey_tables(asked.tables, asked.options, halves.first())};
    if (halves.is_stopped()) return base::failed_by(stopped());
    if (!asked.tables.empty()) read.trial_name = exchange::trial_name_after(asked.tables.front());
    for (exchange::PlacedProblem& placed : read.survey.problems) {
      placed.problem = said_on_a_page(std::move(placed.problem));
    }
    if (auto& good = read.survey.good) {
      for (std::string& remark : good->trial.remarks) remark = exchange::said_plainly(remark);
    }
    const auto& good = read.survey.good;
    if (good) read.arms = arms_in_words(good->trial);
    if (notebook.empty() && asked.trial.empty()) return read;
    const auto opened = opened_to_read(notebook);
    if (!opened) return base::failed_by(opened.error());
    const notebook::OneMoment moment(*opened);
    std::optional<std::string> name;
    if (!asked.trial.empty()) {
      name = notebook::trial_name_of(*opened, asked.trial);
      if (!name) return base::failed_by(no_such_trial(asked.trial));
    } else {
      read_as_new(*opened, asked, halves.second(), read);
    }
    if (name && good) read.into = stands_to(*opened, *name, asked, *good, halves.second());
    if (halves.is_stopped()) return base::failed_by(stopped());
    return read;
  });
}

base::ResultOrProblems<wire::TablesTaken> take_tables_in_hand(
    const std::string& notebook,
    const wire::TakeTables& asked,
    const Hand& hand,
    const base::ProgressReport& progress) {
  using Outcome = base::ResultOrProblems<wire::TablesTaken>;
  return naming_the_file(notebook, [&]() -> Outcome {
    // Nobody else need wait while a large table is read.
    Halves halves(progress);
    auto rows = good_rows_of(asked, halves.first());
    if (halves.is_stopped()) return base::failed_by(stopped());
    if (!rows) return tl::unexpected<Problems>(said_on_a_page(std::move(rows.error())));
    auto opened = opened_whole_to_write(notebook, hand, Checked::any_size);
    if (!opened) return base::failed_by(opened.error());
    const auto name = trial_to_take_into(*opened, asked, *rows);
    if (!name) return base::failed_by(name.error());
    trials::Trial& trial = rows->trial;
    trial.name = *name;
    wire::TablesTaken in{.trial = {}, .trial_name = *name, .taken = {}, .remarks = trial.remarks};
    std::ranges::copy(rows->left_out.remarks, std::back_inserter(trial.remarks));
    auto taken = notebook::take(*opened,
                                std::move(trial),
                                tables_of(asked.read, !rows->left_out.empty()),
                                authorship_of(hand),
                                halves.second());
    if (halves.is_stopped()) return base::failed_by(stopped());
    if (!taken) return tl::unexpected<Problems>(said_on_a_page(std::move(taken.error())));
    std::ranges::copy(taken->remarks, std::back_inserter(in.remarks));
    in.taken = std::move(*taken);
    in.left_out = std::move(rows->left_out.remarks);
    in.problems = said_on_a_page(std::move(rows->left_out.problems));
    in.trial = notebook::trial_uid_of(*opened, *name).value_or("");
    in.last_entry = last_entry_of(*opened);
    return in;
  });
}

}  // namespace keenfall::workbench
