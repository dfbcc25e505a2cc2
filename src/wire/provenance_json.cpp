#include "wire/provenance_json.h"

#include "base/require.h"

#include <algorithm>
#include <string>

namespace keenfall::wire {

void put_provenance(Json& object, const materials::Provenance& from, SourcesInUse& sources) {
  object["source"] = from.source_key;
  object["mark"] = in_words(from.mark);
  if (std::ranges::find(sources, from.source_key) == sources.end()) {
    sources.push_back(from.source_key);
  }
}

Json sources_json(const SourcesInUse& sources) {
  Json list = Json::array();
  for (const std::string_view key : sources) {
    const materials::Source* source = materials::find_source(key);
    base::require(source != nullptr, "every row names a known source");
    Json object = {{"key", source->key}, {"what", source->what}};
    put_text(object, "address", std::string(source->address));
    list.push_back(object);
  }
  return list;
}

}  // namespace keenfall::wire
