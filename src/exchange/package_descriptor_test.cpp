#include "exchange/data_package.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <array>
#include <utility>

namespace keenfall::exchange {
namespace {

using nlohmann::json;
using testing::ElementsAre;
using testing::HasSubstr;

PackageResource runs() {
  return {
      .table = {.name = "run",
                .fields = {{.name = "uid"},
                           {.name = "place", .type = FieldType::integer},
                           {.name = "angle_deg", .type = FieldType::number, .may_be_missing = true},
                           {.name = "note"},
                           {.name = "after", .may_be_missing = true}},
                .primary_key = {"uid"},
                .references = {{.field = "after", .table = "run", .other_field = "uid"},
                               {.field = "note", .table = "words", .other_field = "text"}}},
      .path = "data/run.csv",
      .missing_marker = "",
      .bytes = 12,
      .sha256_hex = std::string(64, 'a')};
}

json written(const PackageAbout& about = {.name = "bench"}, const PackageResource& run = runs()) {
  const std::array resources = {run};
  return json::parse(descriptor_of(about, resources));
}

base::Result<DescribedPackage> read(const json& package) {
  return described_package(package.dump(), "datapackage.json");
}

// One resource with these properties besides its name and path.
DescribedResource resource_with(const json& properties) {
  json resource = {{"name", "t"}, {"path", "t.csv"}};
  resource.update(properties);
  return read({{"resources", {resource}}}).value().resources.at(0);
}

std::string fault_with(const json& properties) {
  const auto fault = resource_with(properties).fault;
  return fault ? fault->sentence : "";
}

std::string refusal_of_path(const json& path) {
  const json resource = {{"name", "t"}, {"path", path}};
  const auto package = read({{"resources", {resource}}});
  return package ? "" : package.error().sentence;
}

// Property names and their meaning: specs.frictionlessdata.io, Data Package, Data Resource, Tabular
// Data Resource, Table Schema and CSV Dialect, version 1.
TEST(PackageDescriptor, NamesWhatTheStandardNames) {
  const json package = written();

  const json& resource = package.at("resources").at(0);
  EXPECT_EQ(package.at("profile"), "tabular-data-package");
  EXPECT_EQ(package.at("name"), "bench");
  EXPECT_EQ(resource.at("profile"), "tabular-data-resource");
  EXPECT_EQ(resource.at("path"), "data/run.csv");
  EXPECT_EQ(resource.at("bytes"), 12);
  EXPECT_EQ(resource.at("hash"), "sha256:" + std::string(64, 'a'));
  EXPECT_EQ(resource.at("dialect").at("lineTerminator"), "\n");
  EXPECT_EQ(resource.at("schema").at("primaryKey"), json({"uid"}));
  EXPECT_EQ(resource.at("schema").at("missingValues"), json({""}));
  EXPECT_EQ(resource.at("schema").at("fields").at(1),
            json({{"name", "place"}, {"type", "integer"}, {"constraints", {{"required", true}}}}));
  EXPECT_EQ(resource.at("schema").at("fields").at(2),
            json({{"name", "angle_deg"}, {"type", "number"}}));
}

// Table Schema, "foreignKeys": "" is the table itself.
TEST(PackageDescriptor, RefersToTheTableItselfByAnEmptyName) {
  const json keys = written().at("resources").at(0).at("schema").at("foreignKeys");

  EXPECT_EQ(keys.at(0),
            json({{"fields", "after"}, {"reference", {{"resource", ""}, {"fields", "uid"}}}}));
  EXPECT_EQ(keys.at(1).at("reference").at("resource"), "words");
}

TEST(PackageDescriptor, RequiresATextOnlyWhereAnEmptyOneIsNotTakenForMissing) {
  PackageResource marked = runs();
  marked.missing_marker = "NULL";
  const auto note = [](const json& package) {
    return package.at("resources").at(0).at("schema").at("fields").at(3);
  };

  EXPECT_FALSE(note(written()).contains("constraints"));
  EXPECT_TRUE(note(written({.name = "bench"}, marked)).contains("constraints"));
}

TEST(PackageDescriptor, ReadsBackWhatThePackageIsAbout) {
  const PackageAbout about{.name = "bench-2026",
                           .title = "Bench “notes”",
                           .description = "Two\nlines",
                           .created = "2026-11-26T12:00:00Z",
                           .own_properties = {{"schema_version", "1"}}};

  EXPECT_EQ(read(written(about))->about, about);
}

TEST(PackageDescriptor, ReadsBackItsResources) {
  const auto package = read(written());

  const DescribedResource& run = package->resources.at(0);
  EXPECT_EQ(run.name, "run");
  EXPECT_EQ(run.path, "data/run.csv");
  EXPECT_EQ(run.bytes, 12U);
  EXPECT_EQ(run.sha256_hex, std::string(64, 'a'));
  EXPECT_EQ(run.fields.at(2).type, "number");
  EXPECT_FALSE(run.fault);
}

TEST(PackageDescriptor, WritesBytesThatAreNotUtf8AsReplacementCharacters) {
  EXPECT_EQ(written({.name = "bench", .title = "caf\xE9"}).at("title"), "caf\xEF\xBF\xBD");
}

TEST(PackageDescriptor, ExpectsNamesAndPathsThatTheStandardAllows) {
  PackageResource outside = runs();
  outside.path = "../run.csv";
  PackageResource capital = runs();
  capital.table.name = "Run";

  EXPECT_THROW((void)written({.name = "My bench"}), std::logic_error);
  EXPECT_THROW((void)written({.name = ""}), std::logic_error);
  EXPECT_THROW((void)written({.name = "b", .own_properties = {{"title", "x"}}}), std::logic_error);
  EXPECT_THROW((void)written({.name = "b"}, outside), std::logic_error);
  EXPECT_THROW((void)written({.name = "b"}, capital), std::logic_error);
}

TEST(DescribedPackages, WithoutMuchStatedHaveTheDefaultsOfTheStandard) {
  const DescribedResource resource = resource_with(json::object());

  EXPECT_EQ(resource.delimiter, ',');
  EXPECT_EQ(resource.quote, '"');
  EXPECT_TRUE(resource.has_header);
  EXPECT_THAT(resource.missing_values, ElementsAre(""));
  EXPECT_FALSE(resource.bytes || resource.sha256_hex || resource.fault);
}

TEST(DescribedPackages, StateTheirDialect) {
  const DescribedResource resource = resource_with({{"dialect",
                                                     {{"delimiter", ";"},
                                                      {"quoteChar", "'"},
                                                      {"commentChar", "#"},
                                                      {"header", false},
                                                      {"skipInitialSpace", true},
                                                      {"nullSequence", "\\N"}}},
                                                    {"schema", {{"missingValues", {"", "NA"}}}}});

  EXPECT_EQ(resource.delimiter, ';');
  EXPECT_EQ(resource.quote, '\'');
  EXPECT_EQ(resource.comment, '#');
  EXPECT_FALSE(resource.has_header);
  EXPECT_TRUE(resource.skips_blanks_before_cells);
  EXPECT_THAT(resource.missing_values, ElementsAre("", "NA", "\\N"));
  EXPECT_FALSE(resource.fault);
}

TEST(DescribedPackages, MayHaveTabsByTheirFormatAndNoQuotes) {
  EXPECT_EQ(resource_with({{"format", "tsv"}}).delimiter, '\t');
  EXPECT_EQ(resource_with({{"dialect", {{"quoteChar", nullptr}}}}).quote, '\0');
}

// Version 2 of the standard: markers with a label, and markers of one field.
TEST(DescribedPackages, OfVersion2MayLabelTheirMarkers) {
  const json schema = json::parse(R"({"missingValues": [{"value": "-", "label": "not asked"}],
    "fields": [{"name": "a", "missingValues": ["?"]}]})");

  const DescribedResource resource = resource_with({{"schema", schema}});

  EXPECT_THAT(resource.missing_values, ElementsAre("-"));
  EXPECT_THAT(resource.fields.at(0).missing_values.value(), ElementsAre("?"));
}

TEST(DescribedPackages, SayWhyAResourceCannotBeRead) {
  EXPECT_EQ(fault_with({{"format", "xlsx"}}),
            "The resource “t” cannot be read: it is “xlsx”, and only CSV is read.");
  EXPECT_THAT(fault_with({{"encoding", "latin1"}}), HasSubstr("only UTF-8 is read"));
  EXPECT_THAT(fault_with({{"compression", "gz"}}), HasSubstr("it is compressed"));
  EXPECT_THAT(fault_with({{"bytes", -1}}), HasSubstr("“bytes” is not a whole number"));
  EXPECT_THAT(fault_with({{"hash", "sha256:12"}}), HasSubstr("64 hexadecimal digits"));
  EXPECT_THAT(fault_with({{"schema", "schema.json"}}), HasSubstr("its schema is stated elsewhere"));
  EXPECT_THAT(fault_with({{"schema", {{"fields", 3}}}}), HasSubstr("“fields” is not a list"));
  EXPECT_THAT(fault_with({{"schema", {{"fields", {3}}}}}), HasSubstr("has no name"));
  EXPECT_THAT(fault_with({{"schema", {{"missingValues", "NA"}}}}),
              HasSubstr("not a list of texts"));
  EXPECT_THAT(fault_with({{"path", nullptr}}), HasSubstr("it names no file"));
  EXPECT_THAT(fault_with({{"path", {"a.csv", "b.csv"}}}), HasSubstr("it is in several files"));
}

TEST(DescribedPackages, SayWhichDialectsAreNotRead) {
  const auto fault = [](const json& dialect) { return fault_with({{"dialect", dialect}}); };

  EXPECT_THAT(fault("dialect.json"), HasSubstr("its dialect is stated elsewhere"));
  EXPECT_THAT(fault({{"delimiter", "::"}}), HasSubstr("“delimiter” is not one ASCII character"));
  EXPECT_THAT(fault({{"delimiter", "\""}}), HasSubstr("its delimiter is its quote"));
  EXPECT_THAT(fault({{"doubleQuote", false}}), HasSubstr("not doubled"));
  EXPECT_THAT(fault({{"escapeChar", "\\"}}), HasSubstr("escapes others"));
  EXPECT_THAT(fault({{"header", "yes"}}), HasSubstr("“header” is neither true nor false"));
  EXPECT_THAT(fault({{"headerRows", {1, 2}}}), HasSubstr("its header is not its first line"));
  EXPECT_THAT(fault({{"nullSequence", 0}}), HasSubstr("“nullSequence” is not a text"));
}

TEST(DescribedPackages, MayNotGroupDigitsByASignThatBelongsToNumbers) {
  const auto fault = [](const json& field) {
    return fault_with({{"schema", {{"fields", json::array({field})}}}});
  };

  for (const char* mark : {"-", "+", "0", "e", "."}) {
    EXPECT_THAT(fault({{"name", "a"}, {"groupChar", mark}}), HasSubstr("cannot be told from"))
        << mark;
  }
  EXPECT_EQ(fault({{"name", "a"}, {"groupChar", "."}, {"decimalChar", ","}}), "");
}

// Data Resource, "path": no absolute path and no "..", for safety.
TEST(DescribedPackages, MayNotPointOutsideTheirFolder) {
  EXPECT_EQ(refusal_of_path("../t.csv"),
            "The path “../t.csv” of “t” may lead out of the package's folder; only files in the "
            "package's own folder are read.");
  for (const char* path : {"/etc/t.csv",
                           "data/../../t.csv",
                           "data/..",
                           "..",
                           "https://example.org/t.csv",
                           "C:\\t.csv",
                           "C:t.csv",
                           "data\\t.csv",
                           "",
                           "data/",
                           "file:t.csv",
                           "a\nb"}) {
    EXPECT_THAT(refusal_of_path(path), HasSubstr("of “t” ")) << path;
  }
  EXPECT_THAT(refusal_of_path({"t.csv", "../u.csv"}), HasSubstr("may lead out"));
  EXPECT_THAT(refusal_of_path(3), HasSubstr("is not a text"));
  for (const char* path : {"t.csv", "data/t.csv", "data/..t.csv", "data/12:30.csv", "./t.csv"}) {
    EXPECT_EQ(refusal_of_path(path), "") << path;
  }
}

TEST(DescribedPackages, ThatAreNoneAreRefused) {
  const auto refusal = [](std::string_view text) {
    return base::in_words(described_package(text, "p.json").error());
  };

  EXPECT_EQ(refusal("{\n\"resources\": [},"),
            "p.json, line 2: This is not JSON: it cannot be read on from here. Accepted: the "
            "datapackage.json of a Data Package.");
  EXPECT_THAT(refusal(""), HasSubstr("This is not JSON"));
  EXPECT_THAT(refusal("\"caf\xE9\""), HasSubstr("This is not JSON"));
  EXPECT_THAT(refusal("[1e999]"), HasSubstr("a number that is too large"));
  EXPECT_THAT(refusal("[]"), HasSubstr("it has no list “resources”"));
  EXPECT_THAT(refusal("{\"resources\": {}}"), HasSubstr("it has no list “resources”"));
  std::string large;
  large.resize(16'000'001, ' ');
  EXPECT_THAT(refusal(large), HasSubstr("larger than 16 MB"));
}

TEST(DescribedPackages, TellTheirResourcesApartByName) {
  const json named = {{"name", "t"}, {"path", "t.csv"}};
  const json nameless = {{"path", "u.csv"}};

  EXPECT_EQ(read({{"resources", {named, nameless}}}).error().sentence, "Resource 2 has no name.");
  EXPECT_EQ(read({{"resources", {named, named}}}).error().sentence,
            "Resource 2 has the name “t” of one before it; names tell resources apart.");
  EXPECT_EQ(read({{"resources", {3}}}).error().sentence, "Resource 1 has no name.");
}

TEST(DescribedPackages, MayBeNestedDeeplyWithoutHarm) {
  constexpr std::size_t kDepth = 1'000'000;
  const std::string deep = std::string(kDepth, '[') + std::string(kDepth, ']');

  const auto package = described_package(
      R"({"resources": [{"name": "t", "path": )" + deep + R"(, "x": )" + deep + "}]}", "p.json");

  EXPECT_THAT(package.error().sentence, HasSubstr("is not a text"));
}

}  // namespace
}  // namespace keenfall::exchange
