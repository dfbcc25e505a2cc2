#include "exchange/long_table.h"

#include "exchange/table_intake.h"
#include "exchange/watched_tables.h"

#include <filesystem>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

namespace {

tl::unexpected<std::vector<base::Problem>> without_tables() {
  return base::failed_by({.kind = base::ProblemKind::missing, .sentence = "No table was named."});
}

}  // namespace

base::ResultOrProblems<trials::Trial> take_tables(std::span<const std::string> paths,
                                                  const TableOptions& options) {
  return take_tables(paths, options, [](const std::string&, std::string_view) {});
}

base::ResultOrProblems<trials::Trial> take_tables(std::span<const std::string> paths,
                                                  const TableOptions& options,
                                                  const BytesSeen& seen) {
  if (paths.empty()) return without_tables();
  TableIntake intake(options);
  for (const std::string& path : paths) {
    if (const auto bytes = intake.take_file(path)) seen(path, *bytes);
  }
  return std::move(intake).finish(std::filesystem::path(paths.front()).stem().string());
}

base::ResultOrProblems<trials::Trial> take_tables_in_hand(std::span<const TableInHand> tables,
                                                          const TableOptions& options) {
  return take_tables_in_hand(tables, options, base::unwatched());
}

base::ResultOrProblems<trials::Trial> take_tables_in_hand(std::span<const TableInHand> tables,
                                                          const TableOptions& options,
                                                          const base::ProgressReport& progress) {
  if (tables.empty()) return without_tables();
  TableIntake intake(options);
  take_each(tables, progress, intake);
  return std::move(intake).finish(trial_name_after(tables.front()));
}

base::ResultOrProblems<trials::Trial> take_table_text(const std::string& text,
                                                      const std::string& file_name,
                                                      const TableOptions& options) {
  TableIntake intake(options);
  intake.take_bytes(text, file_name);
  return std::move(intake).finish(std::filesystem::path(file_name).stem().string());
}

}  // namespace keenfall::exchange
