#include "wire/tables_json.h"

#include "wire/base64.h"
#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace keenfall::wire {
namespace {

using nlohmann::json;

// What of it is not as its schema in api.json says.
std::string faults_of(const std::string& text, const std::string& schema) {
  return testing::faults_against_api(json::parse(text), schema);
}

TablesRead read_of(const std::string& text) {
  const exchange::TableInHand table{.name = "t.csv", .bytes = text};
  return {.survey = exchange::survey_tables({&table, 1}, {}), .trial_name = "t"};
}

std::string first_sentence(const std::string& body) {
  const auto read = take_tables_from(body);
  return read ? "" : read.error().front().sentence;
}

TEST(TablesJson, ATableThatWasReadIsAsDescribed) {
  TablesRead read =
      read_of("Sample,medium,run,cuts,Reading (gf),heft\nA,sisal,1,0,104,x\nA,sisal,1,15,1o7,x\n");
  read.arms = {"A on sisal"};
  read.into = IntoTrial{
      .trial = "t", .taken = {.runs_added = 1, .remarks = {"Beside."}}, .contradictions = {}};

  const std::string text = tables_read_to_json(read);

  EXPECT_EQ(faults_of(text, "TableRead"), "");
  const json answer = json::parse(text);
  EXPECT_EQ(answer["shape"], "long");
  EXPECT_EQ(answer["columns"][0]["to_be_chosen"], true);
  EXPECT_EQ(answer["problems"][0]["row"], 2);
  EXPECT_EQ(answer["problems"][0]["column"], 4);
  EXPECT_EQ(answer["taken"]["readings"], 1);
  EXPECT_EQ(answer["into"]["runs_added"], 1);
  EXPECT_EQ(answer["into"]["remarks"][0], "Beside.");
}

TEST(TablesJson, AnAnswerThatIsNotAsDescribedWouldBeFound) {
  EXPECT_NE(
      faults_of(R"({"grids": [], "problems": [], "columns": [{}], "remarks": []})", "TableRead"),
      "");
}

TEST(TablesJson, ATableThatCannotBeReadIsAsDescribed) {
  for (const std::string& bytes : {std::string(),
                                   std::string("\xFF\xFE"),
                                   std::string("a\0b", 3),
                                   std::string("blade\n"),
                                   std::string("<script>alert(1)</script>,b\n\"\n")}) {
    const std::string text = tables_read_to_json(read_of(bytes));

    EXPECT_EQ(faults_of(text, "TableRead"), "");
    EXPECT_FALSE(json::parse(text).contains("taken"));
  }
}

TEST(TablesJson, AWideTableAndALineARunAreAsDescribed) {
  for (const char* text : {"blade;A;B\nmedium;sisal;sisal\nrun;1;1\n0;104;99\n15;131;1o7\n",
                           "blade,medium,run,0,15 cuts\nA,sisal,1,104,131\nB,sisal,1,99,1o7\n"}) {
    EXPECT_EQ(faults_of(tables_read_to_json(read_of(text)), "TableRead"), "");
  }
}

TEST(TablesJson, WhatContradictsIsNotToldAsComingIn) {
  TablesRead read = read_of("blade,medium,run,cuts,reading\nA,sisal,1,0,104\n");
  read.into = IntoTrial{.trial = "t", .taken = {}, .contradictions = {{.sentence = "No."}}};

  const json answer = json::parse(tables_read_to_json(read));

  EXPECT_FALSE(answer.contains("taken"));
  EXPECT_EQ(answer["into"]["contradictions"][0]["sentence"], "No.");
}

TEST(TablesJson, WhatWasTakenIsAsDescribed) {
  TablesTaken taken{.trial = std::string(32, 'a'),
                    .trial_name = "t",
                    .taken = {.entry = notebook::JournalEntry{.entry = 3, .what = "take t"}},
                    .last_entry = 3,
                    .remarks = {"Read."},
                    .left_out = {"Left out."},
                    .problems = {{.sentence = "No."}}};

  const std::string text = tables_taken_to_json(taken);
  taken.taken.entry.reset();
  const std::string known = tables_taken_to_json(taken);

  EXPECT_EQ(faults_of(text, "TakenTable"), "");
  EXPECT_EQ(json::parse(text)["changed"]["what"], "take t");
  EXPECT_EQ(faults_of(known, "TakenTable"), "");
  EXPECT_FALSE(json::parse(known).contains("changed"));
}

TEST(TablesJson, ARequestIsReadWithAllItsChoices) {
  const std::string body = R"({"sources": [{"name": "a.csv", "text": "blade,medium\n"},
      {"name": "b.xlsx", "base64": "UEsDBA=="}, {"name": "c", "cells": [["blade"], ["A"]]}],
      "choices": {"columns": [{"ours": "cuts", "theirs": "strokes"}], "shape": "wide",
                  "decimal": "comma", "sheets": ["Trial 2"], "kind": "cord_draw"},
      "trial": "00", "keep_good": true})";

  const auto asked = take_tables_from(body);

  ASSERT_TRUE(asked);
  EXPECT_EQ(faults_of(body, "TakeTable"), "");
  ASSERT_EQ(asked->read.tables.size(), 3U);
  EXPECT_EQ(asked->read.tables[0].bytes, "blade,medium\n");
  EXPECT_EQ(asked->read.tables[1].bytes, "PK\x03\x04");
  EXPECT_EQ(asked->read.tables[2], exchange::typed_table("c", {{"blade"}, {"A"}}));
  EXPECT_EQ(asked->read.options.columns.front().theirs, "strokes");
  EXPECT_EQ(asked->read.options.shape, exchange::TableShape::wide);
  EXPECT_EQ(asked->read.options.decimal_mark, exchange::DecimalMark::comma);
  EXPECT_EQ(asked->read.options.sheets.front(), "Trial 2");
  EXPECT_EQ(asked->read.options.default_kind, "cord_draw");
  EXPECT_EQ(asked->read.trial, "00");
  EXPECT_TRUE(asked->keeps_good);
}

TEST(TablesJson, ARequestThatCannotBeUsedSaysWhichFieldAndWhatWouldDo) {
  EXPECT_EQ(first_sentence("["), "What was sent is not JSON.");
  EXPECT_EQ(first_sentence("[]"), "What was sent is JSON, but not an object.");
  EXPECT_EQ(first_sentence("{}"), "“sources” cannot be used.");
  EXPECT_EQ(first_sentence(R"({"sources": 5})"), "“sources” cannot be used.");
  EXPECT_EQ(first_sentence(R"({"sources": [1]})"), "“sources” cannot be used.");
  EXPECT_EQ(first_sentence(R"({"sources": [{"name": "a"}]})"), "“sources[0].text” cannot be used.");
  EXPECT_EQ(first_sentence(R"({"sources": [{"name": " ", "text": ""}]})"),
            "“sources[0].name” cannot be used.");
  EXPECT_EQ(first_sentence(R"({"sources": [{"name": "a", "text": "", "base64": ""}]})"),
            "“sources[0].text” cannot be used.");
  EXPECT_EQ(first_sentence(R"({"sources": [{"name": "a", "base64": "a"}]})"),
            "“sources[0].base64” cannot be used.");
  EXPECT_EQ(first_sentence(R"({"sources": [{"name": "a", "cells": [["a", 1]]}]})"),
            "“sources[0].cells” cannot be used.");
  EXPECT_EQ(first_sentence(R"({"sources": [{"name": "a", "text": ""}], "extra": 1})"),
            "“extra” is no field of this request.");
  EXPECT_EQ(
      first_sentence(R"({"sources": [{"name": "a", "text": ""}], "choices": {"shape": "long "}})"),
      "“choices.shape” cannot be used.");
  EXPECT_EQ(first_sentence(R"({"sources": [{"name": "a", "text": ""}], "trial": "0",
                               "trial_name": "b"})"),
            "“trial_name” cannot be used.");
}

TEST(TablesJson, ReadingDoesNotKnowWhatOnlyTakingHas) {
  const auto read =
      read_tables_from(R"({"sources": [{"name": "a", "text": ""}], "keep_good": true})");

  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().front().place.column, "keep_good");
}

TEST(TablesJson, DeepNestingAndManyFieldsAreRefusedAndNothingMore) {
  EXPECT_FALSE(read_tables_from(std::string(1'000'000, '[')));
  std::string many = "{\"a0\": 1";
  for (int i = 1; i < 20'000; ++i) many += ",\"a" + std::to_string(i) + "\": 1";

  const auto read = read_tables_from(many + "}");

  ASSERT_FALSE(read);
  EXPECT_LE(read.error().size(), 11U);
}

// RFC 4648, section 10.
TEST(Base64, IsReadAsItsStandardShows) {
  EXPECT_EQ(bytes_from_base64(""), "");
  EXPECT_EQ(bytes_from_base64("Zg=="), "f");
  EXPECT_EQ(bytes_from_base64("Zm8="), "fo");
  EXPECT_EQ(bytes_from_base64("Zm9v"), "foo");
  EXPECT_EQ(bytes_from_base64("Zm9vYmFy"), "foobar");
}

TEST(Base64, WhatIsNotOfItIsRefused) {
  for (const char* text :
       {"Zg=", "Zg", "Z", "Z===", "====", "Zh==", "Zm9=", "Zm 9", "Zm9v\n", "Zm-_"}) {
    EXPECT_EQ(bytes_from_base64(text), std::nullopt) << text;
  }
}

}  // namespace
}  // namespace keenfall::wire
