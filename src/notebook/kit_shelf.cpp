#include "notebook/kit_shelf.h"

#include "notebook/notebook_failure.h"
#include "notebook/part_cells.h"
#include "notebook/random_uid.h"
#include "notebook/trial_reader.h"

#include <span>
#include <utility>
#include <vector>

namespace keenfall::notebook {

namespace {

std::string medium_words(const trials::Medium& medium) {
  return medium.name + (medium.condition.empty() ? "" : ", " + medium.condition);
}

struct NameWords {
  std::string operator()(const trials::Blade& blade) const { return blade.name; }
  std::string operator()(const trials::NamedEdge& edge) const { return edge.name; }
  std::string operator()(const trials::Medium& medium) const { return medium_words(medium); }
  std::string operator()(const trials::MediumLot& lot) const {
    return lot.name + " of " + medium_words(lot.medium);
  }
  std::string operator()(const trials::Thread& thread) const {
    return thread.name + (thread.lot.empty() ? "" : ", lot " + thread.lot);
  }
  std::string operator()(const trials::ReadingKind& kind) const { return kind.name; }
  std::string operator()(const trials::KitStone& stone) const { return stone.name; }
};

// Of two of one kind.
struct IsCalledLike {
  const KitThing& other;

  bool operator()(const trials::Medium& medium) const {
    return std::get<trials::Medium>(other) == medium;
  }
  bool operator()(const trials::MediumLot& lot) const {
    const auto& other_lot = std::get<trials::MediumLot>(other);
    return other_lot.medium == lot.medium && other_lot.name == lot.name;
  }
  bool operator()(const trials::Thread& thread) const {
    return std::get<trials::Thread>(other) == thread;
  }
  template <class Named>
  bool operator()(const Named& thing) const {
    return std::get<Named>(other).name == thing.name;
  }
};

// The cells behind a thing's uid.
struct AddCells {
  Row& row;
  KitRows& kit;

  void operator()(const trials::Blade& blade) const {
    row.insert(row.end(), {blade.name, blade.steel});
    add_hardness(row, blade.hardness);
  }
  void operator()(const trials::NamedEdge& edge) const {
    row.emplace_back(edge.name);
    add_edge(row, edge.edge);
    row.emplace_back(edge.note);
  }
  void operator()(const trials::Medium& medium) const {
    row.insert(row.end(), {medium.name, medium.condition});
  }
  void operator()(const trials::MediumLot& lot) const {
    row.insert(row.end(),
               {kit.medium(lot.medium, ""), lot.name, cell_or_null(lot.length_m), lot.note});
  }
  void operator()(const trials::Thread& thread) const {
    row.insert(row.end(), {thread.kind, thread.name, thread.lot});
  }
  void operator()(const trials::ReadingKind& kind) const { add_kind(row, kind); }
  void operator()(const trials::KitStone& stone) const {
    row.insert(row.end(), {stone.name, stone.abrasive, stone.grit, stone.note});
  }
};

trials::NamedEdge read_named_edge(RowReader& row) {
  trials::NamedEdge edge{.name = row.text()};
  edge.edge = read_edge(row);
  edge.note = row.text();
  return edge;
}

trials::Medium read_medium(RowReader& row) {
  trials::Medium medium{.name = row.text()};
  medium.condition = row.text();
  return medium;
}

trials::Thread read_thread(RowReader& row) {
  trials::Thread thread{.kind = row.text()};
  thread.name = row.text();
  thread.lot = row.text();
  return thread;
}

trials::KitStone read_stone(RowReader& row) {
  trials::KitStone stone{.name = row.text()};
  stone.abrasive = row.text();
  stone.grit = row.text();
  stone.note = row.text();
  return stone;
}

enum Kind : std::size_t { blade, edge, medium, lot, thread, reading_kind, stone };

}  // namespace

std::string words_of(const KitThing& thing) {
  return std::string(kKitTables.at(thing.index()).words) + " " + std::visit(NameWords(), thing);
}

KitShelf::KitShelf(SQLite::Database& database)
    : database_(database),
      writers_(database),
      new_uid_(random_uid),
      rows_(database, writers_, new_uid_) {}

trials::Medium KitShelf::medium_with(std::int64_t medium_id) {
  std::optional<trials::Medium> found;
  const Cell which = medium_id;
  each_row(database_, "medium", "WHERE medium_id = ?", std::span(&which, 1), [&](const Row& cells) {
    RowReader row(cells);
    row.skip(2);
    found = read_medium(row);
  });
  if (!found) throw NotebookDamaged("a lot's medium is missing");
  return *found;
}

std::vector<trials::Specimen> KitShelf::specimens_of(std::int64_t blade_id) {
  std::vector<trials::Specimen> specimens;
  const Cell which = blade_id;
  each_row(database_,
           "specimen",
           "WHERE blade_id = ? ORDER BY specimen_id",
           std::span(&which, 1),
           [&](const Row& row) { specimens.push_back(specimen_of(row).specimen); });
  return specimens;
}

ShelvedThing KitShelf::thing_in(std::size_t kind, const Row& cells) {
  RowReader row(cells);
  ShelvedThing shelved{.id = row.whole(), .uid = row.text()};
  switch (static_cast<Kind>(kind)) {
    case Kind::blade: {
      trials::Blade found = blade_of(cells).blade;
      found.specimens = specimens_of(shelved.id);
      shelved.thing = std::move(found);
      break;
    }
    case Kind::edge:
      shelved.thing = read_named_edge(row);
      break;
    case Kind::medium:
      shelved.thing = read_medium(row);
      break;
    case Kind::lot: {
      trials::MediumLot found{.medium = medium_with(row.whole())};
      found.name = row.text();
      found.length_m = row.real_if_any();
      found.note = row.text();
      shelved.thing = std::move(found);
      break;
    }
    case Kind::thread:
      shelved.thing = read_thread(row);
      break;
    case Kind::reading_kind:
      shelved.thing = read_kind(row);
      break;
    case Kind::stone:
      shelved.thing = read_stone(row);
      break;
  }
  return shelved;
}

void KitShelf::each(std::size_t kind, const std::function<void(const ShelvedThing&)>& use) {
  const std::string table = kKitTables.at(kind).table;
  each_row(database_, table, "ORDER BY " + table + "_id", {}, [&](const Row& row) {
    use(thing_in(kind, row));
  });
}

std::optional<ShelvedThing> KitShelf::with_uid(std::size_t kind, const std::string& uid) {
  std::optional<ShelvedThing> found;
  const Cell which = uid;
  each_row(database_,
           kKitTables.at(kind).table,
           "WHERE uid = ?",
           std::span(&which, 1),
           [&](const Row& row) { found = thing_in(kind, row); });
  return found;
}

std::optional<ShelvedThing> KitShelf::called_like(const KitThing& thing) {
  std::optional<ShelvedThing> found;
  each(thing.index(), [&](const ShelvedThing& other) {
    const bool is_alike = std::visit(IsCalledLike{other.thing}, thing);
    if (is_alike) found = other;
  });
  return found;
}

Row KitShelf::row_of(std::int64_t id, const std::string& uid, const KitThing& thing) {
  Row row{id, uid};
  std::visit(AddCells{row, rows_}, thing);
  return row;
}

void KitShelf::put_specimens(std::int64_t blade_id, const KitThing& thing) {
  const auto* put = std::get_if<trials::Blade>(&thing);
  if (put == nullptr) return;
  for (const trials::Specimen& specimen : put->specimens) {
    const auto there = rows_.specimen_called(blade_id, specimen.name);
    RowWriter& writer = writers_["specimen"];
    Row row{there ? there->specimen_id : writer.next_key(), blade_id, specimen.name};
    add_hardness(row, specimen.hardness);
    if (!there) {
      writer.insert(row);
    } else if (there->specimen != specimen) {
      writer.update(row);
    }
  }
}

void KitShelf::add(const KitThing& thing, const std::string& uid) {
  RowWriter& writer = writers_[kKitTables.at(thing.index()).table];
  const std::int64_t id = writer.next_key();
  writer.insert(row_of(id, uid.empty() ? new_uid_() : uid, thing));
  put_specimens(id, thing);
}

void KitShelf::change(const ShelvedThing& to) {
  writers_[kKitTables.at(to.thing.index()).table].update(row_of(to.id, to.uid, to.thing));
  put_specimens(to.id, to.thing);
}

void KitShelf::remove(const ShelvedThing& there) {
  if (there.thing.index() == Kind::blade) {
    for (const trials::Specimen& specimen : specimens_of(there.id)) {
      remove_specimen(there.id, specimen.name);
    }
  }
  writers_[kKitTables.at(there.thing.index()).table].remove({there.id});
}

void KitShelf::remove_specimen(std::int64_t blade_id, const std::string& name) {
  if (const auto found = rows_.specimen_called(blade_id, name)) {
    writers_["specimen"].remove({found->specimen_id});
  }
}

}  // namespace keenfall::notebook
