// The kit of the open notebook as the app's page shows it, and its changes. Each: the kit as it is
// then.
//
// Fails as notebook/kit.h says, where a thread's kind of reading is not known, and where a thing
// was changed since it was looked at (changed_elsewhere.h); throws as notebook_changes.h does.
#pragma once

#include "base/result.h"
#include "notebook/kit.h"
#include "workbench/notebook_opening.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::workbench {

[[nodiscard]] base::Result<notebook::KeptKit> kit_of(const std::string& notebook);

// The kit after a change, and what is unlikely about what came in: a steel that is not in the
// table, a medium that came in with its lot. Sentences; most often none.
struct KitAfter {
  notebook::KeptKit kit;
  std::vector<std::string> remarks;
};

[[nodiscard]] base::Result<KitAfter> kit_with(const std::string& notebook,
                                              const notebook::KitThing& thing,
                                              const Hand& hand);

// One thing as somebody saw it.
struct ThingSeen {
  std::size_t shelf = 0;  // place of its kind among those of notebook::KitThing
  std::string uid;
  std::string revision;  // wire/revisions.h
};

// What a page does not show of a kind of reading stays as it was. hand.why: why it was otherwise.
[[nodiscard]] base::Result<KitAfter> kit_changed(const std::string& notebook,
                                                 const ThingSeen& seen,
                                                 notebook::KitThing thing,
                                                 const Hand& hand);

[[nodiscard]] base::Result<notebook::KeptKit> kit_without(const std::string& notebook,
                                                          const ThingSeen& seen,
                                                          const Hand& hand);

}  // namespace keenfall::workbench
