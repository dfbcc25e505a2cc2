#include "exchange/good_rows.h"

#include "exchange/left_out_remarks.h"
#include "exchange/table_intake.h"

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

  [[nodiscard]] Problems problems() && { return listed(std::move(entries_), total_); }

  [[nodiscard]] LeftOut left_out(const ProblemList& named) && {
    LeftOut left_out{.problems = {}, .remarks = remarks_on_left_out(blamed_, named), .parts = {}};
    std::ranges::copy_if(
        parts_.all(), std::back_inserter(left_out.parts), [this](const TablePart& part) {
          return !is_within_another(part, parts_);
        });
    left_out.problems = std::move(*this).problems();
    return left_out;
  }

 private:
  TableParts parts_;
  BlamedParts blamed_;
  std::vector<ProblemList::Entry> entries_;
  std::size_t total_ = 0;
};

// `intake`: takes all tables.
template <class Intake>
base::ResultOrProblems<GoodRows> taken_until_good(const std::string& name,
                                                  const TableOptions& options,
                                                  const Intake& take_all) {
  LeavingOut leaving_out;
  while (true) {
    const TableParts without = leaving_out.parts();
    TableIntake intake(options, without);
    take_all(intake);
    TableIntake::Intake found = std::move(intake).finish_blaming(name);
    const bool is_good = found.problems.empty();
    const bool is_nothing_left = found.trial.runs.empty() && !without.all().empty();
    if (is_good && !is_nothing_left) {
      return GoodRows{.trial = std::move(found.trial),
                      .left_out = std::move(leaving_out).left_out(found.problems)};
    }
    if (is_good || !leaving_out.learn_from(found.problems)) {
      return tl::unexpected<Problems>(std::move(leaving_out).problems());
    }
  }
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
  if (paths.empty()) {
    return tl::unexpected<Problems>(
        Problems{{.kind = base::ProblemKind::missing, .sentence = "No table was named."}});
  }
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
  return taken_until_good(std::filesystem::path(paths.front()).stem().string(), options, take_all);
}

base::ResultOrProblems<GoodRows> take_good_rows_of_text(const std::string& text,
                                                        const std::string& file_name,
                                                        const TableOptions& options) {
  return taken_until_good(std::filesystem::path(file_name).stem().string(),
                          options,
                          [&](TableIntake& intake) { intake.take_bytes(text, file_name); });
}

}  // namespace keenfall::exchange
