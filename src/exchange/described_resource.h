// One resource of a data package's descriptor: path, dialect and fields.
//
// In: its JSON object. Out: what is stated, with the standard's defaults; what keeps its rows from
// being read is its `fault`. Fails where its path leads out of the package's
// folder. Private to this folder (it shows the library).
#pragma once

#include "exchange/data_package.h"

#include <string>

#include <nlohmann/json.hpp>

namespace keenfall::exchange {

[[nodiscard]] base::Result<DescribedResource> described_resource(const nlohmann::json& stated,
                                                                 const std::string& name);

}  // namespace keenfall::exchange
