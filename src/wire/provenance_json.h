// Where reference values come from, in JSON: key and mark beside the value, each source once at the
// end. Private to this folder.
#pragma once

#include "materials/trust.h"
#include "wire/json_pieces.h"

#include <string_view>
#include <vector>

namespace keenfall::wire {

// Keys of sources, each once, in the order met.
using SourcesInUse = std::vector<std::string_view>;

// "source" and "mark".
void put_provenance(Json& object, const materials::Provenance& from, SourcesInUse& sources);

// [{key, what, address}]; no address where nothing was read.
[[nodiscard]] Json sources_json(const SourcesInUse& sources);

}  // namespace keenfall::wire
