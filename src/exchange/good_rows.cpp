#include "exchange/good_rows.h"

#include "exchange/left_out_remarks.h"
#include "exchange/problems_found.h"
#include "exchange/table_intake.h"
#include "exchange/watched_tables.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <iterator>
#include <utility>

namespace keenfall::exchange {

namespace {

using Problems = std::vector<base::Problem>;

struct Table {
  std::string name;
  std::string bytes;
};

// What was blamed, one reading after another.
class LeavingOut {
 public:
  [[nodiscard]] const TableParts& parts() const { return parts_; }

  // False: nothing more can be left out that would mend it.
  bool learn_from(const ProblemList& problems) {
    entries_.insert(entries_.end(), problems.entries().begin(), problems.entries().end());
    total_ += problems.total();
    bool is_new = false;
    for (const auto& [part, blame] : problems.blamed().parts()) {
      is_new = parts_.add(part) || is_new;
    }
    blamed_.add_all_of(problems.blamed());
    return is_new && !problems.concerns_table();
  }

  // All that were found are moved there.
  void hand_over(ProblemsFound& found) && {
    found.entries = std::move(entries_);
    found.total = total_;
  }

  [[nodiscard]] LeftOut left_out(const ProblemList& named) const {
    LeftOut left_out{.problems = {}, .remarks = remarks_on_left_out(blamed_, named), .parts = {}};
    std::ranges::copy_if(
        parts_.all(), std::back_inserter(left_out.parts), [this](const TablePart& part) {
          return !is_within_another(part, parts_);
        });
    return left_out;
  }

 private:
  TableParts parts_;
  BlamedParts blamed_;
  std::vector<ProblemList::Entry> entries_;
  std::size_t total_ = 0;
};

// `take_all`: takes all tables.
template <class TakeAll>
ProblemsFound found_until_good(const std::string& name,
                               const TableOptions& options,
                               TakeAll take_all) {
  LeavingOut leaving_out;
  ProblemsFound found;
  while (true) {
    const TableParts without = leaving_out.parts();
    TableIntake intake(options, without);
    take_all(intake);
    const bool is_stopped = intake.is_stopped();
    TableIntake::Intake taken = std::move(intake).finish_blaming(name);
    if (found.seen.empty()) found.seen = std::move(taken.seen);
    const bool is_good = taken.problems.empty();
    const bool is_nothing_left = taken.trial.runs.empty() && !without.all().empty();
    if (is_good && !is_nothing_left) {
      found.good = GoodRows{.trial = std::move(taken.trial),
                            .left_out = leaving_out.left_out(taken.problems)};
      found.noticed = taken.problems.noticed();
      break;
    }
    if (is_good || !leaving_out.learn_from(taken.problems) || is_stopped) break;
  }
  std::move(leaving_out).hand_over(found);
  return found;
}

// Takes all tables, again and again. What is bad is mostly found the first time, so that is most of
// the work.
class TakingInHand {
 public:
  TakingInHand(std::span<const TableInHand> tables, const base::ProgressReport& progress)
      : tables_(tables), progress_(progress) {}

  void operator()(TableIntake& intake) {
    const double before = 1 - left_;
    const double share = 0.9 * left_;
    left_ -= share;
    const base::ProgressReport watch = [&](base::Progress told) {
      told.fraction_done = before + share * told.fraction_done;
      return progress_(told);
    };
    take_each(tables_, watch, intake);
  }

 private:
  std::span<const TableInHand> tables_;
  const base::ProgressReport& progress_;
  double left_ = 1;
};

// With its problems as a person reads them.
base::ResultOrProblems<GoodRows> as_rows(ProblemsFound found) {
  Problems problems = listed(std::move(found.entries), found.total);
  if (!found.good) return tl::unexpected<Problems>(std::move(problems));
  found.good->left_out.problems = std::move(problems);
  return std::move(*found.good);
}

Problems no_table_named() {
  return {{.kind = base::ProblemKind::missing, .sentence = "No table was named."}};
}

std::string words_for(std::size_t count, const std::string& one) {
  return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

}  // namespace

std::string in_words(const LeftOut& left_out) {
  std::size_t rows = 0;
  std::size_t columns = 0;
  for (const TablePart& part : left_out.parts) {
    rows += part.column == 0 ? 1 : 0;
    columns += part.line == 0 ? 1 : 0;
  }
  const std::array<std::pair<std::size_t, std::string>, 3> counts = {
      {{rows, "row"}, {columns, "column"}, {left_out.parts.size() - rows - columns, "cell"}}};
  std::vector<std::string> said;
  for (const auto& [count, one] : counts) {
    if (count > 0) said.push_back(words_for(count, one));
  }
  std::string words;
  for (std::size_t i = 0; i < said.size(); ++i) {
    if (i > 0) words += i + 1 == said.size() ? " and " : ", ";
    words += said[i];
  }
  return words;
}

base::ResultOrProblems<GoodRows> take_good_rows(std::span<const std::string> paths,
                                                const TableOptions& options,
                                                const BytesSeen& seen) {
  if (paths.empty()) return tl::unexpected<Problems>(no_table_named());
  std::vector<Table> tables;
  const auto take_all = [&](TableIntake& intake) {
    if (!tables.empty()) {
      for (const Table& table : tables) intake.take_bytes(table.bytes, table.name);
      return;
    }
    for (const std::string& path : paths) {
      auto bytes = intake.take_file(path);
      if (!bytes) continue;  // a problem with the file as a whole
      seen(path, *bytes);
      tables.push_back({.name = path, .bytes = std::move(*bytes)});
    }
  };
  return as_rows(
      found_until_good(std::filesystem::path(paths.front()).stem().string(), options, take_all));
}

base::ResultOrProblems<GoodRows> take_good_rows_in_hand(std::span<const TableInHand> tables,
                                                        const TableOptions& options) {
  return take_good_rows_in_hand(tables, options, base::unwatched());
}

base::ResultOrProblems<GoodRows> take_good_rows_in_hand(std::span<const TableInHand> tables,
                                                        const TableOptions& options,
                                                        const base::ProgressReport& progress) {
  if (tables.empty()) return tl::unexpected<Problems>(no_table_named());
  return as_rows(
      found_until_good(trial_name_after(tables.front()), options, TakingInHand(tables, progress)));
}

ProblemsFound problems_found(std::span<const TableInHand> tables,
                             const TableOptions& options,
                             std::size_t most_listed,
                             const base::ProgressReport& progress) {
  const std::string name = tables.empty() ? "" : trial_name_after(tables.front());
  TakingInHand take_all(tables, progress);
  return found_until_good(name, options, [&](TableIntake& intake) {
    intake.list_each_problem(most_listed);
    take_all(intake);
  });
}

base::ResultOrProblems<GoodRows> take_good_rows_of_text(const std::string& text,
                                                        const std::string& file_name,
                                                        const TableOptions& options) {
  return as_rows(found_until_good(
      std::filesystem::path(file_name).stem().string(), options, [&](TableIntake& intake) {
        intake.take_bytes(text, file_name);
      }));
}

}  // namespace keenfall::exchange
