// The kit as JSON (docs/wire/api.json: Kit), and what a page wants in it, read from requests.
#pragma once

#include "base/result.h"
#include "materials/told_in.h"
#include "notebook/kit.h"

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::wire {

// Each kind of thing under its own name, in the order of notebook::KitThing.
inline constexpr std::array<std::string_view, 7> kKitShelves{
    "blades", "edges", "media", "lots", "threads", "kinds", "stones"};

// In one line. Kinds of reading that are known without a notebook stand before one's own. Words in
// what is told; numbers as they are kept.
// remarks: on what was just changed, in sentences; left out where there are none.
[[nodiscard]] std::string kit_to_json(const notebook::KeptKit& kit,
                                      const materials::ToldIn& told = {},
                                      const std::vector<std::string>& remarks = {});

struct KitChange {
  notebook::KitThing thing;
  std::string revision;  // of the thing that it is a change of (revisions.h)
  std::string why;       // may be empty
};

// shelf: place in kKitShelves. Types and what no edge can be are looked at here; what else a thing
// of the kit must be, notebook/kit.h says. What only answers say is taken back and not heeded.
[[nodiscard]] base::ResultOrProblems<notebook::KitThing> kit_thing_from(std::size_t shelf,
                                                                        const std::string& body);
// {"thing": ..., "why": ...}; the thing says which revision it was.
[[nodiscard]] base::ResultOrProblems<KitChange> kit_change_from(std::size_t shelf,
                                                                const std::string& body);

}  // namespace keenfall::wire
