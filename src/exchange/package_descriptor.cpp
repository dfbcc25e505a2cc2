#include "exchange/data_package.h"
#include "exchange/package_names.h"

#include "base/require.h"

#include <algorithm>

#include <nlohmann/json.hpp>

namespace keenfall::exchange {

namespace {

using WrittenJson = nlohmann::ordered_json;

const char* type_word(FieldType type) {
  switch (type) {
    case FieldType::integer:
      return "integer";
    case FieldType::number:
      return "number";
    case FieldType::string:
      return "string";
  }
  return "";
}

// "required" is checked after markers have become missing (Table Schema, "missingValues"): with ""
// for a marker, another program would refuse an empty text in a field that is never missing. Keys
// hold no empty text then.
bool is_required_to_others(const PackageResource& resource, const PackageField& field) {
  if (field.may_be_missing) return false;
  const auto& key = resource.table.primary_key;
  return field.type != FieldType::string || !resource.missing_marker.empty() ||
         std::ranges::find(key, field.name) != key.end();
}

WrittenJson schema_json(const PackageResource& resource) {
  WrittenJson schema = {{"fields", WrittenJson::array()}};
  for (const PackageField& field : resource.table.fields) {
    WrittenJson written = {{"name", field.name}, {"type", type_word(field.type)}};
    if (is_required_to_others(resource, field)) written["constraints"] = {{"required", true}};
    schema["fields"].push_back(std::move(written));
  }
  schema["missingValues"] = WrittenJson::array({resource.missing_marker});
  if (!resource.table.primary_key.empty()) schema["primaryKey"] = resource.table.primary_key;
  for (const PackageReference& reference : resource.table.references) {
    const bool is_own = reference.table == resource.table.name;
    const WrittenJson other = {{"resource", is_own ? "" : reference.table},
                               {"fields", reference.other_field}};
    schema["foreignKeys"].push_back({{"fields", reference.field}, {"reference", other}});
  }
  return schema;
}

WrittenJson resource_json(const PackageResource& resource) {
  base::require(is_package_name(resource.table.name), "a table has a name as the standard allows");
  base::require(!path_fault(resource.path), "a path stays in the package's folder");
  return {{"name", resource.table.name},
          {"path", resource.path},
          {"profile", "tabular-data-resource"},
          {"format", "csv"},
          {"mediatype", "text/csv"},
          {"encoding", "utf-8"},
          {"bytes", resource.bytes},
          {"hash", "sha256:" + resource.sha256_hex},
          {"dialect",
           {{"delimiter", ","},
            {"lineTerminator", "\n"},
            {"quoteChar", "\""},
            {"doubleQuote", true},
            {"skipInitialSpace", false},
            {"header", true}}},
          {"schema", schema_json(resource)}};
}

}  // namespace

std::string descriptor_of(const PackageAbout& about, std::span<const PackageResource> resources) {
  base::require(is_package_name(about.name), "a package has a name as the standard allows");
  WrittenJson package = {{"profile", "tabular-data-package"}, {"name", about.name}};
  if (!about.title.empty()) package["title"] = about.title;
  if (!about.description.empty()) package["description"] = about.description;
  if (!about.created.empty()) package["created"] = about.created;
  for (const auto& [name, value] : about.own_properties) {
    base::require(!is_standard_property(name), "an own property has a name of its own");
    package[name] = value;
  }
  package["resources"] = WrittenJson::array();
  for (const PackageResource& resource : resources) {
    package["resources"].push_back(resource_json(resource));
  }
  constexpr int kIndent = 2;
  return package.dump(kIndent, ' ', false, WrittenJson::error_handler_t::replace) + "\n";
}

}  // namespace keenfall::exchange
