#include "workbench/notebook_changes.h"

#include "exchange/long_table.h"
#include "exchange/long_table_text.h"
#include "notebook/digest.h"
#include "notebook/random_uid.h"
#include "workbench/notebook_pages.h"

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <string_view>
#include <utility>

namespace keenfall::workbench {

namespace {

using Problems = std::vector<base::Problem>;

// Problems of the notebook's own name no file.
base::Problem with_file(base::Problem problem, const std::string& path) {
  if (problem.place.file.empty()) problem.place.file = path;
  return problem;
}

base::ResultOrProblems<exchange::GoodRows> rows_of(const TakeRequest& request,
                                                   const exchange::BytesSeen& seen) {
  if (request.keeps_good) {
    return exchange::take_good_rows(request.tables, request.options, seen);
  }
  auto trial = exchange::take_tables(request.tables, request.options, seen);
  if (!trial) return tl::unexpected<Problems>(std::move(trial.error()));
  return exchange::GoodRows{.trial = std::move(*trial), .left_out = {}};
}

// Into `in`; or why it was not taken.
std::optional<Problems> put_in(notebook::Notebook& opened,
                               trials::Trial trial,
                               const std::vector<notebook::TakenTable>& tables,
                               const Hand& hand,
                               TakenIn& in) {
  auto taken = notebook::take(opened, std::move(trial), tables, authorship_of(hand));
  if (!taken) {
    Problems problems;
    for (base::Problem& problem : taken.error()) {
      problems.push_back(with_file(std::move(problem), opened.path()));
    }
    return problems;
  }
  in.taken = *taken;
  std::ranges::copy(taken->remarks, std::back_inserter(in.remarks));
  return std::nullopt;
}

}  // namespace

base::Result<std::string> new_notebook(const std::string& path,
                                       const std::string& made_by,
                                       const Hand& hand) {
  return naming_the_file(path, [&]() -> base::Result<std::string> {
    const auto made = notebook::Notebook::create(
        path, {.uid = notebook::random_uid(), .made_by = made_by}, opener_of(hand));
    if (!made) return base::failed(made.error());
    return path;
  });
}

base::ResultOrProblems<TakenIn> take_into(const TakeRequest& request, const Hand& hand) {
  using Outcome = base::ResultOrProblems<TakenIn>;
  return naming_the_file(request.notebook, [&]() -> Outcome {
    // First, since a large table takes a while.
    auto opened = opened_whole_to_write(request.notebook, hand, Checked::any_size);
    if (!opened) return base::failed_by(opened.error());
    std::vector<notebook::TakenTable> tables;
    auto rows = rows_of(request, [&](const std::string& path, std::string_view bytes) {
      tables.push_back({.file_name = std::filesystem::path(path).filename().string(),
                        .sha256 = notebook::in_hex(notebook::sha256_of(bytes))});
    });
    if (!rows) return tl::unexpected<Problems>(std::move(rows.error()));
    trials::Trial& trial = rows->trial;
    if (!request.trial.empty()) trial.name = request.trial;
    TakenIn in{.trial = trial.name, .remarks = trial.remarks};
    std::ranges::copy(rows->left_out.remarks, std::back_inserter(trial.remarks));
    in.left_out = std::move(rows->left_out);
    for (notebook::TakenTable& table : tables) table.is_in_part = !in.left_out.empty();
    if (auto problems = put_in(*opened, std::move(trial), tables, hand, in)) {
      return tl::unexpected<Problems>(std::move(*problems));
    }
    return in;
  });
}

base::Problem made_trial_is_there(const std::string& trial, const std::string& notebook) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "the notebook has a trial “" + trial +
                      "” already, and a simulation is not added to another trial",
          .place = {.file = notebook, .found = trial},
          .accepted = "another name, with --trial=NAME, or another seed, with --seed"};
}

base::ResultOrProblems<TakenIn> take_made(MadeTrial made, const Hand& hand) {
  using Outcome = base::ResultOrProblems<TakenIn>;
  return naming_the_file(made.notebook, [&]() -> Outcome {
    auto opened = opened_whole_to_write(made.notebook, hand, Checked::any_size);
    if (!opened) return base::failed_by(opened.error());
    const auto names = notebook::trial_names(*opened);
    if (std::ranges::find(names, made.trial.name) != names.end()) {
      return base::failed_by(made_trial_is_there(made.trial.name, made.notebook));
    }
    const std::string table = exchange::long_table_of(made.trial);
    TakenIn in{.trial = made.trial.name, .remarks = {}};
    const std::vector<notebook::TakenTable> tables = {
        {.file_name = made.made_from, .sha256 = notebook::in_hex(notebook::sha256_of(table))}};
    if (auto problems = put_in(*opened, std::move(made.trial), tables, hand, in)) {
      return tl::unexpected<Problems>(std::move(*problems));
    }
    return in;
  });
}

base::Result<notebook::Struck> strike_in(const std::string& path,
                                         notebook::StrikeRequest request,
                                         const Hand& hand) {
  return naming_the_file(path, [&]() -> base::Result<notebook::Struck> {
    auto opened = opened_whole_to_write(path, hand, Checked::if_small);
    if (!opened) return base::failed(opened.error());
    if (!exchange::is_reason_in_tables(request.reason)) {
      return base::failed({.kind = base::ProblemKind::bad_value,
                           .sentence = "\"" + request.reason +
                                       "\" is no reason: a table that says so there means that "
                                       "nothing is struck out, or does not say why.",
                           .place = {.column = "--reason"},
                           .accepted = "why it does not count, in words: \"the thread slipped\""});
    }
    const auto trial = trial_meant(*opened, request.trial);
    if (!trial) return base::failed(trial.error());
    request.trial = *trial;
    const auto struck = notebook::strike(*opened, request, authorship_of(hand));
    if (!struck) return base::failed(with_file(struck.error(), path));
    return *struck;
  });
}

base::Result<notebook::JournalEntry> undo_in(const std::string& path,
                                             std::optional<std::int64_t> entry,
                                             const Hand& hand) {
  return naming_the_file(path, [&]() -> base::Result<notebook::JournalEntry> {
    auto opened = opened_whole_to_write(path, hand, Checked::any_size);
    if (!opened) return base::failed(opened.error());
    if (!entry) entry = opened->last_to_undo();
    if (!entry) {
      return base::failed({.kind = base::ProblemKind::missing,
                           .sentence = "There is nothing to undo.",
                           .place = {.file = path},
                           .accepted = "a notebook with a change that still holds"});
    }
    const auto undone = opened->undo(*entry, authorship_of(hand));
    if (!undone) return base::failed(with_file(undone.error(), path));
    return *undone;
  });
}

}  // namespace keenfall::workbench
