#include "notebook/kit_rows.h"

#include "notebook/part_cells.h"

#include <array>
#include <utility>

namespace keenfall::notebook {

namespace {

base::Problem contradiction(const std::string& thing,
                            const std::string& what,
                            const std::string& there) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "The notebook has a " + thing + " already, of another " + what +
                      (there.empty() ? "" : " (" + there + ")") + ".",
          .accepted = "the same " + what +
                      "; another name; or, where the one here is wrong, first keenfall undo of the "
                      "entry that brought it (keenfall log lists them)"};
}

// Fills `kept` from `told`; false where they say different things.
template <class T>
bool fill(std::optional<T>& kept, const std::optional<T>& told) {
  if (!kept) kept = told;
  return !told || kept == told;
}

}  // namespace

KitRow KitRows::blade(const trials::Blade& told, const std::string& uid) {
  std::optional<BladeRow> there;
  const Cell name = told.name;
  each_row(database_, "blade", "WHERE name = ?", std::span(&name, 1), [&](const Row& row) {
    there = blade_of(row);
  });
  if (!there) {
    const std::int64_t id = writers_["blade"].next_key();
    Row row{id, uid.empty() ? new_uid_() : uid, told.name, told.steel};
    add_hardness(row, told.hardness);
    writers_["blade"].insert(row);
    return {.id = id};
  }
  trials::Blade joined = there->blade;
  if (joined.steel.empty()) joined.steel = told.steel;
  const std::string thing = "blade " + told.name;
  if (!told.steel.empty() && told.steel != joined.steel) {
    return {.id = there->blade_id, .problem = contradiction(thing, "steel", joined.steel)};
  }
  if (!fill(joined.hardness, told.hardness)) {
    return {.id = there->blade_id, .problem = contradiction(thing, "hardness", "")};
  }
  if (joined != there->blade) {
    Row row{there->blade_id, there->uid, joined.name, joined.steel};
    add_hardness(row, joined.hardness);
    writers_["blade"].update(row);
  }
  return {.id = there->blade_id};
}

std::optional<SpecimenRow> KitRows::specimen_called(std::int64_t blade_id,
                                                    const std::string& name) {
  std::optional<SpecimenRow> there;
  const std::array<Cell, 2> which{blade_id, name};
  each_row(database_, "specimen", "WHERE blade_id = ? AND name = ?", which, [&](const Row& row) {
    there = specimen_of(row);
  });
  return there;
}

KitRow KitRows::specimen(const std::string& blade,
                         std::int64_t blade_id,
                         const trials::Specimen& told) {
  const auto there = specimen_called(blade_id, told.name);
  const std::int64_t id = there ? there->specimen_id : writers_["specimen"].next_key();
  std::optional<trials::Hardness> hardness;
  if (there) hardness = there->specimen.hardness;
  if (!fill(hardness, told.hardness)) {
    return {.id = id,
            .problem = contradiction("specimen " + told.name + " of " + blade, "hardness", "")};
  }
  Row row{id, blade_id, told.name};
  add_hardness(row, hardness);
  if (!there) {
    writers_["specimen"].insert(row);
  } else if (hardness != there->specimen.hardness) {
    writers_["specimen"].update(row);
  }
  return {.id = id};
}

std::int64_t KitRows::medium(const trials::Medium& medium, const std::string& uid) {
  SQLite::Statement find(database_,
                         "SELECT medium_id FROM medium WHERE name = ? AND condition = ?");
  find.bind(1, medium.name);
  find.bind(2, medium.condition);
  if (find.executeStep()) return find.getColumn(0).getInt64();
  SQLite::Statement known(database_, "SELECT 1 FROM medium WHERE uid = ?");
  known.bind(1, uid);
  const bool is_free = !uid.empty() && !known.executeStep();  // else it is called otherwise here
  const std::int64_t id = writers_["medium"].next_key();
  writers_["medium"].insert({id, is_free ? uid : new_uid_(), medium.name, medium.condition});
  return id;
}

}  // namespace keenfall::notebook
