// The stones that are known by themselves, and those of a person's own file.
//
// The file is a CSV table as exchange/named_numbers.h reads it: a row a stone, columns named after
// the constants with their units (stone_columns). Only a name and abrasive_hv must be there. A
// number may have a range beside it ("groove_width_um_lo", "groove_width_um_hi"); one without
// counts as exact, and what is not said at all is a guess with a wide range. A name of the file
// goes before a known one. Fails with every wrong cell at once.
#pragma once

#include "base/result.h"
#include "exchange/named_numbers.h"
#include "sharpening/stones.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::workbench {

struct StoneCatalogue {
  std::vector<sharpening::Stone> stones;       // those of the file first
  std::size_t own = 0;                         // how many come from the file
  std::vector<std::string> in_place_of_known;  // of the file: "stone diamond"
};

// Without "name".
[[nodiscard]] const std::vector<exchange::NumberColumn>& stone_columns();

// `path` empty: no file.
[[nodiscard]] base::ResultOrProblems<StoneCatalogue> stone_catalogue(const std::string& path);

// By name; known stones by any name of their abrasive. Refused: unknown names, with those known.
[[nodiscard]] base::Result<sharpening::Stone> find_stone(const StoneCatalogue& catalogue,
                                                         std::string_view name);

}  // namespace keenfall::workbench
