// For tests: what of a JSON document is not as its schema in docs/wire says.
#pragma once

#include <nlohmann/json.hpp>

#include <fstream>
#include <string>

// The validator's headers are not written for our warnings.
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

namespace keenfall::wire::testing {

inline nlohmann::json schema_named(const std::string& name) {
  std::ifstream file(KEENFALL_SOURCE_DIR "/docs/wire/" + name);
  return nlohmann::json::parse(file);
}

// Empty when the document has the shape, else what is wrong. The schema's meaning is that of JSON
// Schema draft 07, as an independent validator reads it; it may refer to another of docs/wire.
inline std::string faults_against(const nlohmann::json& schema_document,
                                  const nlohmann::json& document) {
  valijson::Schema schema;
  valijson::SchemaParser parser;
  parser.populateSchema(
      valijson::adapters::NlohmannJsonAdapter(schema_document),
      schema,
      [](const std::string& other) { return new nlohmann::json(schema_named(other)); },
      [](const nlohmann::json* other) { delete other; });
  valijson::Validator validator;
  valijson::ValidationResults results;
  std::string faults;
  if (!validator.validate(schema, valijson::adapters::NlohmannJsonAdapter(document), &results)) {
    valijson::ValidationResults::Error error;
    while (results.popError(error)) {
      for (const std::string& step : error.context) faults += step;
      faults += ": " + error.description + "\n";
    }
    faults += "refused";
  }
  return faults;
}

inline std::string faults_against_schema(const nlohmann::json& document,
                                         const std::string& schema_name) {
  return faults_against(schema_named(schema_name), document);
}

// The same of a schema of the app's API, such as "Problems".
inline std::string faults_against_api(const nlohmann::json& document, const std::string& name) {
  nlohmann::json schema;
  schema["allOf"][0]["$ref"] = "#/components/schemas/" + name;
  schema["components"] = schema_named("api.json")["components"];
  return faults_against(schema, document);
}

}  // namespace keenfall::wire::testing
