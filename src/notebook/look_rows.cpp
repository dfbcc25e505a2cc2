#include "notebook/look_rows.h"

#include "notebook/notebook_failure.h"
#include "notebook/row_reader.h"

#include <charconv>
#include <cstdint>
#include <map>
#include <span>
#include <system_error>
#include <utility>

namespace keenfall::notebook {

namespace {

struct JudgementRow {
  std::string uid;
  StoredJudgement judgement;
};

base::Seed seed_in(const std::string& digits) {
  base::Seed seed;
  const char* end = digits.data() + digits.size();
  const auto [stop, fault] = std::from_chars(digits.data(), end, seed.number);
  if (fault != std::errc() || stop != end) throw NotebookDamaged("a seed is no number");
  return seed;
}

JudgementRow judgement_of(RowReader& row) {
  JudgementRow found{.uid = row.text()};
  row.skip();
  StoredJudgement& judgement = found.judgement;
  judgement.inputs.sha256 = row.text();
  judgement.inputs.runs = static_cast<std::size_t>(row.whole());
  judgement.inputs.readings = static_cast<std::size_t>(row.whole());
  judgement.question = row.text();
  judgement.seed = seed_in(row.text());
  judgement.program_version = row.text();
  judgement.answer = row.text();
  return found;
}

std::optional<std::int64_t> key_of(SQLite::Database& database,
                                   const std::string& trial_uid,
                                   const StoredJudgement& judgement) {
  SQLite::Statement find(database,
                         "SELECT judgement_id FROM stored_judgement WHERE trial_uid = ? AND "
                         "inputs_sha256 = ? AND question = ? AND seed = ? AND program_version = ?");
  find.bind(1, trial_uid);
  find.bind(2, judgement.inputs.sha256);
  find.bind(3, judgement.question);
  find.bind(4, std::to_string(judgement.seed.number));
  find.bind(5, judgement.program_version);
  if (!find.executeStep()) return std::nullopt;
  return find.getColumn(0).getInt64();
}

// Of one that is here under another uid of its trial.
std::optional<std::int64_t> key_of_uid(SQLite::Database& database, const std::string& uid) {
  SQLite::Statement find(database, "SELECT judgement_id FROM stored_judgement WHERE uid = ?");
  find.bind(1, uid);
  if (!find.executeStep()) return std::nullopt;
  return find.getColumn(0).getInt64();
}

}  // namespace

std::vector<LookRow> read_looks(SQLite::Database& database, const std::string& trial_uid) {
  std::map<std::int64_t, JudgementRow> judgements;
  const Cell of_trial = trial_uid;
  const std::span<const Cell> which(&of_trial, 1);
  each_row(database, "stored_judgement", "WHERE trial_uid = ?", which, [&](const Row& cells) {
    RowReader row(cells);
    const std::int64_t key = row.whole();
    judgements.emplace(key, judgement_of(row));
  });
  std::vector<LookRow> looks;
  each_row(database,
           "look",
           "WHERE judgement_id IN (SELECT judgement_id FROM stored_judgement WHERE trial_uid = ?) "
           "ORDER BY look_id",
           which,
           [&](const Row& cells) {
             RowReader row(cells);
             row.skip();
             LookRow found{.uid = row.text()};
             const auto judgement = judgements.find(row.whole());
             if (judgement == judgements.end()) throw NotebookDamaged("a look's answer is missing");
             found.judgement_uid = judgement->second.uid;
             found.look.judgement = judgement->second.judgement;
             found.look.at_utc = row.text();
             found.look.who = row.text();
             looks.push_back(std::move(found));
           });
  return looks;
}

void write_look(SQLite::Database& database,
                RowWriters& writers,
                const std::string& trial_uid,
                const LookRow& look) {
  const StoredJudgement& judgement = look.look.judgement;
  std::optional<std::int64_t> key = key_of(database, trial_uid, judgement);
  if (!key) key = key_of_uid(database, look.judgement_uid);
  if (!key) {
    key = writers["stored_judgement"].next_key();
    writers["stored_judgement"].insert({*key,
                                        look.judgement_uid,
                                        trial_uid,
                                        judgement.inputs.sha256,
                                        as_whole(judgement.inputs.runs),
                                        as_whole(judgement.inputs.readings),
                                        judgement.question,
                                        std::to_string(judgement.seed.number),
                                        judgement.program_version,
                                        judgement.answer});
  }
  writers["look"].insert(
      {writers["look"].next_key(), look.uid, *key, look.look.at_utc, look.look.who});
}

}  // namespace keenfall::notebook
