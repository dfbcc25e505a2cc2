// The kit of the open notebook as the app's page shows it, and its changes. Each: the kit as it is
// then.
//
// Fails as notebook/kit.h says, and where a thread's kind of reading is not known; throws as
// notebook_changes.h does.
#pragma once

#include "base/result.h"
#include "notebook/kit.h"
#include "workbench/notebook_opening.h"

#include <cstddef>
#include <string>

namespace keenfall::workbench {

[[nodiscard]] base::Result<notebook::KeptKit> kit_of(const std::string& notebook);

[[nodiscard]] base::Result<notebook::KeptKit> kit_with(const std::string& notebook,
                                                       const notebook::KitThing& thing,
                                                       const Hand& hand);

// What a page does not show of a kind of reading stays as it was. hand.why: why it was otherwise.
[[nodiscard]] base::Result<notebook::KeptKit> kit_changed(const std::string& notebook,
                                                          const std::string& uid,
                                                          notebook::KitThing thing,
                                                          const Hand& hand);

// shelf: place of its kind among those of notebook::KitThing.
[[nodiscard]] base::Result<notebook::KeptKit> kit_without(const std::string& notebook,
                                                          std::size_t shelf,
                                                          const std::string& uid,
                                                          const Hand& hand);

}  // namespace keenfall::workbench
