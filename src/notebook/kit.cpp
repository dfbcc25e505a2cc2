#include "notebook/kit.h"

#include "notebook/kit_rules.h"
#include "notebook/kit_shelf.h"
#include "notebook/kit_use.h"
#include "notebook/notebook_file.h"
#include "notebook/schema.h"

#include <algorithm>
#include <utility>

namespace keenfall::notebook {

namespace {

using MaybeWrong = std::optional<base::Problem>;

base::Problem refused_kit(const std::string& sentence, const std::string& accepted) {
  return {.kind = base::ProblemKind::conflicting, .sentence = sentence, .accepted = accepted};
}

std::string with_and(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
    text += names[i];
  }
  return (names.size() == 1 ? "the trial " : "the trials ") + text;
}

std::string rest_on(const std::vector<std::string>& trials) {
  return with_and(trials) + (trials.size() == 1 ? " rests on it" : " rest on it");
}

// Every kind is looked through: a uid is of one thing only.
std::optional<ShelvedThing> thing_with(KitShelf& shelf, const std::string& uid) {
  for (std::size_t kind = 0; kind < kKitTables.size(); ++kind) {
    if (auto found = shelf.with_uid(kind, uid)) return found;
  }
  return std::nullopt;
}

base::Problem is_gone() {
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "The kit has no such thing any more.",
          .accepted = "something that is in the kit"};
}

base::Problem is_there_already(const KitThing& thing) {
  const std::string words = words_of(thing);
  return refused_kit(
      "The kit has " + std::string(words.starts_with("edge") ? "an " : "a ") + words + " already.",
      "another name");
}

MaybeWrong problem_of_specimens(SQLite::Database& database,
                                KitShelf& shelf,
                                std::int64_t blade_id,
                                const trials::Blade& before,
                                const trials::Blade& now) {
  for (const trials::Specimen& specimen : before.specimens) {
    if (std::ranges::count(now.specimens, specimen.name, &trials::Specimen::name) > 0) continue;
    const auto trials = trials_using_specimen(database, blade_id, specimen.name);
    if (!trials.empty()) {
      return refused_kit("The specimen " + specimen.name + " of the blade " + before.name +
                             " stays in the kit: " + rest_on(trials) + ".",
                         "the blade with that specimen");
    }
    shelf.remove_specimen(blade_id, specimen.name);
  }
  return std::nullopt;
}

bool is_other_hardness(const std::optional<trials::Hardness>& before,
                       const std::optional<trials::Hardness>& now) {
  return before && before != now;
}

// Of what was recorded otherwise; filling in what was not needs no reason.
bool is_correction(const trials::Blade& before, const trials::Blade& now) {
  const bool is_other_piece = std::ranges::any_of(now.specimens, [&](const auto& piece) {
    const auto was = std::ranges::find(before.specimens, piece.name, &trials::Specimen::name);
    return was != before.specimens.end() && is_other_hardness(was->hardness, piece.hardness);
  });
  return is_other_piece || (!before.steel.empty() && before.steel != now.steel) ||
         is_other_hardness(before.hardness, now.hardness);
}

MaybeWrong problem_of_blade(SQLite::Database& database,
                            KitShelf& shelf,
                            const ShelvedThing& before,
                            const KitThing& now,
                            const std::string& why) {
  const auto* blade_before = std::get_if<trials::Blade>(&before.thing);
  if (blade_before == nullptr) return std::nullopt;
  const auto& blade_now = std::get<trials::Blade>(now);
  if (why.empty() && is_correction(*blade_before, blade_now)) {
    const auto trials = trials_naming(database, before);
    if (!trials.empty()) {
      return base::Problem{.kind = base::ProblemKind::missing,
                           .sentence = "What the blade " + blade_before->name +
                                       " is can be corrected with a reason: " + rest_on(trials) +
                                       ".",
                           .place = {.column = "why"},
                           .accepted = "why it was wrong, in a few words"};
    }
  }
  return problem_of_specimens(database, shelf, before.id, *blade_before, blade_now);
}

MaybeWrong change_thing(SQLite::Database& database,
                        const std::string& uid,
                        const KitThing& thing,
                        const std::string& why) {
  KitShelf shelf(database);
  const auto before = thing_with(shelf, uid);
  if (!before || before->thing.index() != thing.index()) return is_gone();
  if (before->thing == thing) return std::nullopt;
  if (auto problem = problem_of(thing)) return problem;
  if (words_of(before->thing) != words_of(thing)) {
    const auto trials = trials_naming(database, *before);
    if (!trials.empty()) {
      return refused_kit(
          "The " + words_of(before->thing) + " keeps its name: " + rest_on(trials) + ".",
          "another thing under the new name");
    }
  }
  const auto alike = shelf.called_like(thing);
  if (alike && alike->uid != uid) return is_there_already(thing);
  if (auto problem = problem_of_blade(database, shelf, *before, thing, why)) return problem;
  shelf.change({.id = before->id, .uid = uid, .thing = thing});
  return std::nullopt;
}

std::optional<std::string> lots_of(KitShelf& shelf, const ShelvedThing& medium) {
  std::string lots;
  constexpr std::size_t kLots = 3;
  shelf.each(kLots, [&](const ShelvedThing& shelved) {
    const auto& lot = std::get<trials::MediumLot>(shelved.thing);
    const auto* one = std::get_if<trials::Medium>(&medium.thing);
    if (one != nullptr && lot.medium == *one) lots += (lots.empty() ? "" : ", ") + lot.name;
  });
  if (lots.empty()) return std::nullopt;
  return lots;
}

MaybeWrong remove_thing(SQLite::Database& database, const std::string& uid) {
  KitShelf shelf(database);
  const auto there = thing_with(shelf, uid);
  if (!there) return is_gone();
  const std::string stays = "The " + words_of(there->thing) + " stays in the kit: ";
  const auto trials = trials_using(database, *there, kSchemaVersion);
  if (!trials.empty()) {
    return refused_kit(stays + rest_on(trials) + ".", "something that no trial rests on");
  }
  if (const auto lots = lots_of(shelf, *there)) {
    return refused_kit(stays + "it has lots there, " + *lots + ".", "taking away its lots first");
  }
  shelf.remove(*there);
  return std::nullopt;
}

// What the journal says of a change; the old steel can be read there too.
std::string words_of_change(const std::optional<ShelvedThing>& before, const KitThing& now) {
  if (!before) return "change the " + words_of(now);
  std::string text = "change the " + words_of(before->thing);
  if (words_of(before->thing) != words_of(now)) text += ", now the " + words_of(now);
  const auto* blade_before = std::get_if<trials::Blade>(&before->thing);
  const auto* blade_now = std::get_if<trials::Blade>(&now);
  if (blade_before != nullptr && blade_now != nullptr && !blade_before->steel.empty() &&
      blade_before->steel != blade_now->steel) {
    text += ", of " +
            (blade_now->steel.empty() ? std::string("no recorded steel") : blade_now->steel) +
            " and not " + blade_before->steel;
  }
  return text;
}

std::optional<ShelvedThing> thing_before(NotebookFile& file, const std::string& uid) {
  return carrying_over([&] {
    KitShelf shelf(file.database);
    return thing_with(shelf, uid);
  });
}

template <class Thing>
void add_kind_to(std::vector<InKit<Thing>>& things,
                 NotebookFile& file,
                 KitShelf& shelf,
                 std::size_t kind) {
  if (file.version < kKitTables.at(kind).since_version) return;
  shelf.each(kind, [&](const ShelvedThing& shelved) {
    things.push_back({.uid = shelved.uid,
                      .thing = std::get<Thing>(shelved.thing),
                      .used_in = trials_using(file.database, shelved, file.version)});
  });
}

template <class Thing>
std::vector<Thing> bare(const std::vector<InKit<Thing>>& things) {
  std::vector<Thing> without;
  for (const InKit<Thing>& kept : things) without.push_back(kept.thing);
  return without;
}

}  // namespace

KeptKit kept_kit(const Notebook& notebook) {
  NotebookFile& file = notebook.file();
  return seen_at_once(file.database, [&] {
    KitShelf shelf(file.database);
    KeptKit kit;
    std::size_t kind = 0;  // as kKitTables
    add_kind_to(kit.blades, file, shelf, kind++);
    add_kind_to(kit.edges, file, shelf, kind++);
    add_kind_to(kit.media, file, shelf, kind++);
    add_kind_to(kit.lots, file, shelf, kind++);
    add_kind_to(kit.threads, file, shelf, kind++);
    add_kind_to(kit.kinds, file, shelf, kind++);
    add_kind_to(kit.stones, file, shelf, kind++);
    return kit;
  });
}

trials::Kit things_of(const KeptKit& kit) {
  return {.blades = bare(kit.blades),
          .edges = bare(kit.edges),
          .media = bare(kit.media),
          .lots = bare(kit.lots),
          .threads = bare(kit.threads),
          .kinds = bare(kit.kinds),
          .stones = bare(kit.stones)};
}

base::Result<JournalEntry> add_to_kit(Notebook& notebook,
                                      const KitThing& thing,
                                      const Authorship& by) {
  return change(notebook.file(),
                {.what = "put the " + words_of(thing) + " into the kit"},
                by,
                [&](SQLite::Database& database) -> MaybeWrong {
                  if (auto problem = problem_of(thing)) return problem;
                  KitShelf shelf(database);
                  if (shelf.called_like(thing)) return is_there_already(thing);
                  shelf.add(thing, "");
                  return std::nullopt;
                });
}

base::Result<std::optional<JournalEntry>> change_in_kit(Notebook& notebook,
                                                        const std::string& uid,
                                                        const KitThing& thing,
                                                        const Authorship& by) {
  NotebookFile& file = notebook.file();
  return change_if_any(
      file,
      {.what = words_of_change(thing_before(file, uid), thing)},
      by,
      [&](SQLite::Database& database) { return change_thing(database, uid, thing, by.why); });
}

base::Result<JournalEntry> take_from_kit(Notebook& notebook,
                                         const std::string& uid,
                                         const Authorship& by) {
  NotebookFile& file = notebook.file();
  const auto before = thing_before(file, uid);
  return change(file,
                {.what = before ? "take the " + words_of(before->thing) + " out of the kit" : ""},
                by,
                [&](SQLite::Database& database) { return remove_thing(database, uid); });
}

}  // namespace keenfall::notebook
