// The steels, media and finishes that the apex simulator knows, and those of a person's own files.
//
// Files are CSV tables as exchange/named_numbers.h reads them, a row a thing, columns named after
// the constants with their units (steel_columns and so on). A name of a file goes before a known
// one. Of a file's steels every property counts as declared by whoever wrote it, with the range
// that stands beside it ("matrix_hv_lo", "matrix_hv_hi") or none.
#pragma once

#include "base/result.h"
#include "exchange/named_numbers.h"
#include "materials/microstructure.h"
#include "wear/media_presets.h"

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::workbench {

struct NamedFinish {
  std::string name;
  wear::EdgeFinish finish;

  bool operator==(const NamedFinish&) const = default;
};

// Paths; empty: none.
struct CatalogueFiles {
  std::string steels;
  std::string media;
  std::string finishes;
};

// In the order of the files, then those known by themselves.
struct ApexCatalogue {
  std::vector<materials::Microstructure> steels;
  std::vector<wear::AbrasiveMedium> media;
  std::vector<NamedFinish> finishes;
  std::size_t own_steels = 0;  // how many come from the file
  std::size_t own_media = 0;
  std::size_t own_finishes = 0;
  std::vector<std::string> in_place_of_known;  // of the files: "steel C75S"
};

[[nodiscard]] base::ResultOrProblems<ApexCatalogue> apex_catalogue(const CatalogueFiles& files);

// By name, in small or capital letters; known steels by any designation. Refused: unknown names,
// with the nearest ones, or else all that are known; where no file names steels, as the table of
// steels does.
[[nodiscard]] base::Result<materials::Microstructure> find_steel(const ApexCatalogue& catalogue,
                                                                 std::string_view name);
[[nodiscard]] base::Result<wear::AbrasiveMedium> find_medium(const ApexCatalogue& catalogue,
                                                             std::string_view name);
[[nodiscard]] base::Result<NamedFinish> find_finish(const ApexCatalogue& catalogue,
                                                    std::string_view name);

// Of each kind of file, without "name".
[[nodiscard]] const std::vector<exchange::NumberColumn>& steel_columns();
[[nodiscard]] const std::vector<exchange::NumberColumn>& medium_columns();
[[nodiscard]] const std::vector<exchange::NumberColumn>& finish_columns();

}  // namespace keenfall::workbench
