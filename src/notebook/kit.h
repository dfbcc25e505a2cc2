// The kit in a notebook: blades, edges, media and their lots, threads, kinds of reading of one's
// own, stones. Put in, changed, taken away; each is a change with who, when, what and why.
//
// What a trial rests on is not taken away, and keeps its name: that is refused with a sentence that
// names the trials. What a blade is may be corrected, with the reason: the journal keeps both. Out
// of tables blades and media come into the kit by themselves.
#pragma once

#include "base/result.h"
#include "notebook/notebook.h"
#include "trials/kit.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace keenfall::notebook {

template <class Thing>
struct InKit {
  std::string uid;  // by which it is known again, also in another notebook
  Thing thing;
  std::vector<std::string> used_in;  // names of trials that were cut or are planned with it
};

// Each kind of thing in the order in which it came in.
struct KeptKit {
  std::vector<InKit<trials::Blade>> blades;
  std::vector<InKit<trials::NamedEdge>> edges;
  std::vector<InKit<trials::Medium>> media;
  std::vector<InKit<trials::MediumLot>> lots;
  std::vector<InKit<trials::Thread>> threads;
  std::vector<InKit<trials::ReadingKind>> kinds;
  std::vector<InKit<trials::KitStone>> stones;
};

// Throws NotebookDamaged where a row is not as it was written.
[[nodiscard]] KeptKit kept_kit(const Notebook& notebook);
// The same without what it is known by.
[[nodiscard]] trials::Kit things_of(const KeptKit& kit);

using KitThing = std::variant<trials::Blade,
                              trials::NamedEdge,
                              trials::Medium,
                              trials::MediumLot,
                              trials::Thread,
                              trials::ReadingKind,
                              trials::KitStone>;

// Refused where there is one of that name. A lot's medium comes into the kit with it.
[[nodiscard]] base::Result<JournalEntry> add_to_kit(Notebook& notebook,
                                                    const KitThing& thing,
                                                    const Authorship& by);

// What has that uid is as `thing` says now, which is of the same kind. Absent: it was so already.
[[nodiscard]] base::Result<std::optional<JournalEntry>> change_in_kit(Notebook& notebook,
                                                                      const std::string& uid,
                                                                      const KitThing& thing,
                                                                      const Authorship& by);

[[nodiscard]] base::Result<JournalEntry> take_from_kit(Notebook& notebook,
                                                       const std::string& uid,
                                                       const Authorship& by);

}  // namespace keenfall::notebook
