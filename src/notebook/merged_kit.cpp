#include "notebook/merged_kit.h"

#include "notebook/kit_shelf.h"
#include "notebook/plan_rows.h"

#include <utility>
#include <variant>

namespace keenfall::notebook {

namespace {

// A kind of reading and a thread are what they are called; nothing else can be told apart so.
struct SetApart {
  const std::string& apart;

  std::string named(const std::string& name) const { return name + " (" + apart + ")"; }

  std::optional<KitThing> operator()(trials::NamedEdge edge) const {
    edge.name = named(edge.name);
    return edge;
  }
  std::optional<KitThing> operator()(trials::MediumLot lot) const {
    lot.name = named(lot.name);
    return lot;
  }
  std::optional<KitThing> operator()(trials::KitStone stone) const {
    stone.name = named(stone.name);
    return stone;
  }
  template <class Other>
  std::optional<KitThing> operator()(const Other&) const {
    return std::nullopt;
  }
};

class Shelves {
 public:
  Shelves(SQLite::Database& here, SQLite::Database& there, const MergeRules& rules)
      : here_(here), there_(there), rules_(rules) {}

  MergedShelves merge() {
    for (std::size_t kind = 0; kind < kKitTables.size(); ++kind) {
      if (kKitTables.at(kind).since_version < kFirstVersionWithPlans) continue;
      there_.each(kind, [&](const ShelvedThing& thing) { merge_one(kind, thing); });
    }
    return std::move(merged_);
  }

 private:
  void merge_one(std::size_t kind, const ShelvedThing& thing) {
    const auto same = here_.with_uid(kind, thing.uid);
    const auto alike = same ? same : here_.called_like(thing.thing);
    if (!alike) return here_.add(thing.thing, thing.uid);
    if (alike->thing == thing.thing) return;
    if (!same && rules_.alike_names == AlikeNames::are_apart && set_apart(thing)) return;
    merged_.problems.push_back({.kind = base::ProblemKind::conflicting,
                                .sentence = "The " + words_of(alike->thing) +
                                            " of the kit is not the same in both notebooks."});
  }

  bool set_apart(const ShelvedThing& thing) {
    const auto apart = std::visit(SetApart{rules_.apart}, thing.thing);
    if (!apart || here_.called_like(*apart)) return false;
    here_.add(*apart, thing.uid);
    merged_.remarks.push_back("The other notebook's " + words_of(thing.thing) + " is called " +
                              words_of(*apart) + " here.");
    return true;
  }

  KitShelf here_;
  KitShelf there_;
  const MergeRules& rules_;
  MergedShelves merged_;
};

}  // namespace

MergedShelves merge_shelves(SQLite::Database& here,
                            SQLite::Database& there,
                            const MergeRules& rules) {
  return Shelves(here, there, rules).merge();
}

}  // namespace keenfall::notebook
