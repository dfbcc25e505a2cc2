// The kit's rows: blades, their specimens and media, found by name or made. Private to the folder.
//
// What is there already is joined with what is said of it now: what was not recorded is filled in,
// what says otherwise is a problem.
#pragma once

#include "base/result.h"
#include "notebook/row_writers.h"
#include "notebook/trial_reader.h"
#include "trials/trial.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

namespace keenfall::notebook {

// A new random identity.
using NewUid = std::function<std::string()>;

// The key of the row, and what contradicts what is there; then the row was left as it is.
struct KitRow {
  std::int64_t id = 0;
  std::optional<base::Problem> problem;
};

class KitRows {
 public:
  // Keeps references to all three.
  KitRows(SQLite::Database& database, RowWriters& writers, const NewUid& new_uid)
      : database_(database), writers_(writers), new_uid_(new_uid) {}

  // `uid`: of one that has to be made; empty: a new one.
  KitRow blade(const trials::Blade& told, const std::string& uid);
  KitRow specimen(const std::string& blade, std::int64_t blade_id, const trials::Specimen& told);
  [[nodiscard]] std::optional<SpecimenRow> specimen_called(std::int64_t blade_id,
                                                           const std::string& name);
  std::int64_t medium(const trials::Medium& medium, const std::string& uid);

 private:
  SQLite::Database& database_;
  RowWriters& writers_;
  const NewUid& new_uid_;
};

}  // namespace keenfall::notebook
