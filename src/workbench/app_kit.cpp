#include "workbench/app_kit.h"

#include "materials/spelling.h"
#include "materials/steels.h"
#include "wire/revisions.h"
#include "workbench/changed_elsewhere.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace keenfall::workbench {

namespace {

using Outcome = base::Result<KitAfter>;

// A thread of a kind that nobody reads would never be offered.
std::optional<base::Problem> unknown_kind(const notebook::KeptKit& kit,
                                          const notebook::KitThing& thing) {
  const auto* thread = std::get_if<trials::Thread>(&thing);
  if (thread == nullptr || trials::find_reading_kind(thread->kind) != nullptr) return std::nullopt;
  const auto is_of_that_kind = [&](const notebook::InKit<trials::ReadingKind>& own) {
    return own.thing.name == thread->kind;
  };
  if (std::ranges::any_of(kit.kinds, is_of_that_kind)) return std::nullopt;
  return base::Problem{
      .kind = base::ProblemKind::unknown_name,
      .sentence = "No kind of reading is called “" + thread->kind + "”.",
      .place = {.column = "kind", .found = thread->kind},
      .accepted = "one that is known, such as thread_push, or one of your own in the kit"};
}

std::optional<base::Problem> is_gone(const std::string& uid) {
  return base::Problem{.kind = base::ProblemKind::unknown_name,
                       .sentence = "The kit has no such thing there, or not any more.",
                       .place = {.found = uid},
                       .accepted = "something that the kit lists"};
}

template <class Thing>
std::optional<notebook::KitThing> thing_with(const std::vector<notebook::InKit<Thing>>& things,
                                             const std::string& uid) {
  const auto found = std::ranges::find(things, uid, &notebook::InKit<Thing>::uid);
  if (found == things.end()) return std::nullopt;
  return found->thing;
}

// Why it cannot be changed to that, or taken away, as it was seen; nothing: it is so still, or is
// that already.
std::optional<base::Problem> problem_of_seen(const notebook::KeptKit& kit,
                                             const ThingSeen& seen,
                                             const notebook::KitThing* to = nullptr) {
  const std::array<std::optional<notebook::KitThing>, std::variant_size_v<notebook::KitThing>>
      found{thing_with(kit.blades, seen.uid),
            thing_with(kit.edges, seen.uid),
            thing_with(kit.media, seen.uid),
            thing_with(kit.lots, seen.uid),
            thing_with(kit.threads, seen.uid),
            thing_with(kit.kinds, seen.uid),
            thing_with(kit.stones, seen.uid)};
  const auto& now = found.at(seen.shelf);
  if (!now) return is_gone(seen.uid);
  const std::string revision = wire::revision_of(*now);
  const bool is_that = to != nullptr && wire::revision_of(*to) == revision;
  if (revision != seen.revision && !is_that) return changed_elsewhere(*now);
  return std::nullopt;
}

notebook::KitThing with_what_pages_leave_out(const notebook::KeptKit& kit,
                                             const std::string& uid,
                                             notebook::KitThing thing) {
  auto* kind = std::get_if<trials::ReadingKind>(&thing);
  if (kind == nullptr) return thing;
  const auto before = std::ranges::find(kit.kinds, uid, &notebook::InKit<trials::ReadingKind>::uid);
  if (before == kit.kinds.end()) return thing;
  trials::ReadingKind whole = before->thing;
  whole.name = kind->name;
  whole.words = kind->words;
  whole.unit = kind->unit;
  whole.keener_when = kind->keener_when;
  return whole;
}

// "; nearest: sisal rope or manila rope": empty where none is near.
std::string nearest_of(const std::vector<std::string>& names) {
  std::string words;
  for (const std::string& name : names) words += (words.empty() ? "; nearest: " : " or ") + name;
  return words;
}

std::vector<std::string> remarks_on(const notebook::KeptKit& before,
                                    const notebook::KitThing& thing) {
  if (const auto* blade = std::get_if<trials::Blade>(&thing)) {
    if (blade->steel.empty() || materials::find_steel(blade->steel)) return {};
    return {"The steel " + blade->steel + " is not in the table" +
            nearest_of(materials::nearest_steels(blade->steel)) + "."};
  }
  const auto* lot = std::get_if<trials::MediumLot>(&thing);
  if (lot == nullptr) return {};
  std::vector<std::string_view> known;
  for (const auto& medium : before.media) known.emplace_back(medium.thing.name);
  if (std::ranges::count(known, lot->medium.name) > 0) return {};
  return {"The medium " + lot->medium.name + " was not in the kit and came into it with its lot" +
          nearest_of(materials::nearest_names(lot->medium.name, known)) + "."};
}

// change: the first problem, or nothing. remark_on: what came in, if anything did.
Outcome kit_after(const std::string& path,
                  const Hand& hand,
                  const notebook::KitThing* remark_on,
                  const std::function<std::optional<base::Problem>(notebook::Notebook&)>& change) {
  return naming_the_file(path, [&]() -> Outcome {
    auto opened = opened_whole_to_write(path, hand, Checked::if_small);
    if (!opened) return base::failed(opened.error());
    std::vector<std::string> remarks;
    if (remark_on != nullptr) remarks = remarks_on(notebook::kept_kit(*opened), *remark_on);
    if (const auto problem = change(*opened)) return base::failed(*problem);
    return KitAfter{.kit = notebook::kept_kit(*opened), .remarks = std::move(remarks)};
  });
}

template <class Done>
std::optional<base::Problem> problem_in(const base::Result<Done>& done) {
  if (done) return std::nullopt;
  return done.error();
}

}  // namespace

base::Result<notebook::KeptKit> kit_of(const std::string& notebook) {
  return naming_the_file(notebook, [&]() -> base::Result<notebook::KeptKit> {
    const auto opened = opened_to_read(notebook);
    if (!opened) return base::failed(opened.error());
    return notebook::kept_kit(*opened);
  });
}

base::Result<KitAfter> kit_with(const std::string& notebook,
                                const notebook::KitThing& thing,
                                const Hand& hand) {
  return kit_after(notebook, hand, &thing, [&](notebook::Notebook& opened) {
    if (auto problem = unknown_kind(notebook::kept_kit(opened), thing)) return problem;
    return problem_in(notebook::add_to_kit(opened, thing, authorship_of(hand)));
  });
}

base::Result<KitAfter> kit_changed(const std::string& notebook,
                                   const ThingSeen& seen,
                                   notebook::KitThing thing,
                                   const Hand& hand) {
  return kit_after(notebook, hand, &thing, [&](notebook::Notebook& opened) {
    const notebook::KeptKit kit = notebook::kept_kit(opened);
    if (auto problem = problem_of_seen(kit, seen, &thing)) return problem;
    if (auto problem = unknown_kind(kit, thing)) return problem;
    return problem_in(
        notebook::change_in_kit(opened,
                                seen.uid,
                                with_what_pages_leave_out(kit, seen.uid, std::move(thing)),
                                authorship_of(hand)));
  });
}

base::Result<notebook::KeptKit> kit_without(const std::string& notebook,
                                            const ThingSeen& seen,
                                            const Hand& hand) {
  auto after = kit_after(notebook, hand, nullptr, [&](notebook::Notebook& opened) {
    if (auto problem = problem_of_seen(notebook::kept_kit(opened), seen)) return problem;
    return problem_in(notebook::take_from_kit(opened, seen.uid, authorship_of(hand)));
  });
  if (!after) return base::failed(std::move(after.error()));
  return std::move(after->kit);
}

}  // namespace keenfall::workbench
