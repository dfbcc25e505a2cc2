#include "notebook/typed_sheets.h"

#include "notebook/notebook_file.h"
#include "notebook/row_reader.h"
#include "notebook/rows.h"

#include <span>

namespace keenfall::notebook {

namespace {

// The first version of the schema that has the table.
constexpr std::int64_t kVersionOfSheets = 4;

std::optional<TypedSheet> sheet_in(SQLite::Database& database, const std::string& trial_uid) {
  std::optional<TypedSheet> found;
  const Cell which = trial_uid;
  each_row(
      database, "typed_sheet", "WHERE trial_uid = ?", std::span(&which, 1), [&](const Row& cells) {
        RowReader row(cells);
        found.emplace();
        found->trial_uid = row.text();
        found->revision = row.whole();
        found->cells = row.text();
        found->at_utc = row.text();
        found->who = row.text();
      });
  return found;
}

Row row_of(const TypedSheet& sheet) {
  return {sheet.trial_uid, sheet.revision, sheet.cells, sheet.at_utc, sheet.who};
}

base::Problem changed_elsewhere(const TypedSheet& kept) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "At " + kept.at_utc + " " + kept.who +
                      (kept.cells.empty() ? " took this sheet in elsewhere."
                                          : " changed this sheet elsewhere."),
          .accepted = "looking at that one first, or saving in its place"};
}

void write(SQLite::Database& database, const TypedSheet& sheet) {
  RowWriter writer(database, "typed_sheet");
  if (!writer.update(row_of(sheet))) writer.insert(row_of(sheet));
}

}  // namespace

std::optional<TypedSheet> typed_sheet(const Notebook& notebook, const std::string& trial_uid) {
  NotebookFile& file = notebook.file();
  if (file.version < kVersionOfSheets) return std::nullopt;
  return carrying_over([&] { return sheet_in(file.database, trial_uid); });
}

base::Result<std::int64_t> keep_sheet(Notebook& notebook, const TypedSheet& sheet) {
  SQLite::Database& database = notebook.file().database;
  return carrying_over([&]() -> base::Result<std::int64_t> {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    const auto kept = sheet_in(database, sheet.trial_uid);
    if (kept && kept->revision != sheet.revision) return base::failed(changed_elsewhere(*kept));
    TypedSheet next = sheet;
    next.revision = kept ? kept->revision + 1 : 1;
    write(database, next);
    transaction.commit();
    return next.revision;
  });
}

void forget_sheet(Notebook& notebook, const Forgetting& forgetting) {
  SQLite::Database& database = notebook.file().database;
  carrying_over([&] {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    const auto kept = sheet_in(database, forgetting.trial_uid);
    if (kept && kept->revision == forgetting.revision && !kept->cells.empty()) {
      write(database,
            {.trial_uid = forgetting.trial_uid,
             .revision = kept->revision + 1,
             .cells = {},
             .at_utc = forgetting.at_utc,
             .who = forgetting.who});
    }
    transaction.commit();
  });
}

}  // namespace keenfall::notebook
