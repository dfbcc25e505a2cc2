// A notebook's life through the program: made, filled, judged, struck in, undone, checked, copied.
#include "tables_on_disk.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace keenfall::journeys {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

// A new notebook's path, in place of any that was there.
std::string a_notebook(const std::string& name) {
  std::string path = scratch(name).string();
  std::filesystem::remove(path);
  EXPECT_EQ(keenfall({"new", path}).exit_code, 0);
  return path;
}

nlohmann::json judged(const std::string& path) {
  auto document = nlohmann::json::parse(keenfall({"judge", path, "--json"}).out);
  document["fit"].erase("cpu_seconds");
  return document;
}

TEST(ANotebook, IsJudgedToTheSameNumbersAsItsTable) {
  const std::string table = a_table("spring.csv", readings_of(2));
  const std::string notebook = a_notebook("same.keen");

  const Said taken = keenfall({"take", notebook, table});

  EXPECT_EQ(taken.exit_code, 0) << taken.err;
  EXPECT_THAT(taken.out, HasSubstr("6 runs and 36 readings into spring, entry 1."));
  EXPECT_EQ(judged(notebook), judged(table));
}

TEST(ANotebook, SaysNothingNewOfATableTakenTwice) {
  const std::string table = a_table("twice.csv", readings_of(2));
  const std::string notebook = a_notebook("twice.keen");
  keenfall({"take", notebook, table});

  const Said again = keenfall({"take", notebook, table});

  EXPECT_EQ(again.exit_code, 0) << again.err;
  EXPECT_THAT(again.out, HasSubstr("Nothing new: twice holds these tables already (6 runs)."));
}

TEST(ANotebook, TakesMoreReadingsOfRunsItHas) {
  const std::string table = a_table("grown.csv", "blade,medium,run,cuts,reading\nA,felt,1,0,100\n");
  const std::string notebook = a_notebook("grown.keen");
  keenfall({"take", notebook, table});
  a_table("grown.csv", "blade,medium,run,cuts,reading\nA,felt,1,0,100\nA,felt,1,9,150\n");

  EXPECT_THAT(keenfall({"take", notebook, table}).out,
              HasSubstr("No new run and 1 reading into grown, entry 2. There already, and with "
                        "more to\nthem now: 1 run."));
}

TEST(ANotebook, JudgesWithoutWhatIsStruckUntilThatIsUndone) {
  const std::string notebook = a_notebook("struck.keen");
  keenfall({"take", notebook, a_table("struck.csv", readings_of(2))});
  const auto before = judged(notebook);

  const Said struck = keenfall({"strike",
                                notebook,
                                "--run=2",
                                "--blade=A",
                                "--cuts=40",
                                "--reason",
                                "thread slipped",
                                "--who=R."});
  const auto without = judged(notebook);
  const Said undone = keenfall({"undo", notebook, "--why", "it had not"});

  EXPECT_EQ(struck.exit_code, 0) << struck.err;
  EXPECT_THAT(struck.out, HasSubstr("1 reading of run 2 of A on rope struck out, entry 3."));
  EXPECT_EQ(without["runs"][1]["readings_struck"], 1);
  EXPECT_NE(without["comparisons"], before["comparisons"]);
  EXPECT_EQ(undone.exit_code, 0) << undone.err;
  const auto after = judged(notebook);
  EXPECT_EQ(after["comparisons"], before["comparisons"]);
  EXPECT_EQ(after["runs"], before["runs"]);
  EXPECT_THAT(
      keenfall({"log", notebook}).out,
      AllOf(
          HasSubstr(
              ", R.\n  strike at 40 in run 2 of A on rope, trial struck\n  why: thread slipped\n  "
              "undone by entry 5"),
          HasSubstr("why: it had not\n  undoes entry 3")));
}

TEST(ANotebook, CountsEachJudgingAsALookThatIsShownAndCannotBeTakenBack) {
  const std::string notebook = a_notebook("looks.keen");
  keenfall({"take", notebook, a_table("looks.csv", readings_of(2))});

  const Said first = keenfall({"judge", notebook, "--who=R.", "--worth-it=2"});
  const Said second = keenfall({"judge", notebook, "--quiet"});

  EXPECT_THAT(first.out, HasSubstr("\nCounted as look 1 at this trial, with its answer.\n"));
  EXPECT_THAT(second.out, Not(HasSubstr("Counted")));
  EXPECT_THAT(second.err, HasSubstr("Counted as look 2 at this trial"));
  EXPECT_THAT(keenfall({"show", notebook, "looks"}).out,
              AllOf(HasSubstr("Look 1, "), HasSubstr(", R.: 6 runs, "), HasSubstr("--worth-it=2")));
  EXPECT_THAT(keenfall({"undo", notebook, "2"}).err,
              HasSubstr("(look at looks) cannot be undone: what was seen was seen"));
}

TEST(ANotebook, VoidsARunWhereNoCutsAreNamedAndShowsIt) {
  const std::string notebook = a_notebook("void.keen");
  keenfall({"take", notebook, a_table("void.csv", readings_of(2))});

  const Said said = keenfall({"strike", notebook, "--run=1", "--blade=C", "--reason=burr left"});

  EXPECT_THAT(said.out,
              HasSubstr("No cuts were named, so the whole run 1 of C on rope is voided, entry 2."));
  EXPECT_THAT(keenfall({"show", notebook, "void"}).out,
              HasSubstr("Run 1 of C on rope is voided: burr left"));
  EXPECT_THAT(keenfall({"show", notebook}).out, HasSubstr("void      6        36"));
}

TEST(ANotebook, StrikesHowLongAnEdgeLasted) {
  const std::string notebook = a_notebook("lasted.keen");
  keenfall({"take",
            notebook,
            a_table("lasted.csv",
                    "blade,medium,run,lasted,failed_by\nA,rope,1,40,50\nA,rope,2,60,70\n")});

  const Said said = keenfall({"strike", notebook, "--run=2", "--lasted=60", "--reason=wet"});
  const Said both =
      keenfall({"strike", notebook, "--run=1", "--lasted=40", "--cuts=0", "--reason=wet"});

  EXPECT_THAT(said.out, HasSubstr("1 edge life of run 2 of A on rope struck out, entry 2."));
  EXPECT_THAT(both.err,
              HasSubstr("--cuts strikes readings out, --lasted how long the edge lasted"));
  EXPECT_EQ(both.exit_code, 2);
}

TEST(ANotebook, IsNamedAsAShellTakesItWhereItsNameHasASpace) {
  const std::string notebook = a_notebook("my bench.keen");

  EXPECT_THAT(keenfall({"show", notebook}).out, HasSubstr("'" + notebook + "' readings.csv"));
}

TEST(ANotebook, IsShownAndSaidToBeDamagedWhereItIs) {
  const std::string notebook = a_notebook("damaged.keen");
  keenfall({"take", notebook, a_table("damaged.csv", readings_of(2))});
  std::ifstream in(notebook, std::ios::binary);
  std::string bytes((std::istreambuf_iterator<char>(in)), {});
  in.close();
  bytes.replace(bytes.rfind("rope"), 4, "rose");
  std::ofstream(notebook, std::ios::binary) << bytes;

  const Said said = keenfall({"show", notebook});

  EXPECT_THAT(said.out, HasSubstr("damaged     6        36"));
  EXPECT_THAT(said.err, HasSubstr("so what is shown may be wrong"));
  EXPECT_EQ(said.exit_code, 4);
}

TEST(ANotebook, IsAsItWasWrittenAndSoIsItsBackup) {
  const std::string notebook = a_notebook("whole.keen");
  keenfall({"take", notebook, a_table("whole.csv", readings_of(2))});
  const std::string copy = scratch("whole_copy.keen").string();
  std::filesystem::remove(copy);

  EXPECT_EQ(keenfall({"backup", notebook, copy}).exit_code, 0);
  EXPECT_EQ(keenfall({"backup", notebook, copy}).exit_code, 4);  // something is there now
  for (const std::string& path : {notebook, copy}) {
    const Said said = keenfall({"check", path});
    EXPECT_EQ(said.exit_code, 0) << said.err;
    EXPECT_THAT(said.out, HasSubstr("is as it was written."));
  }
}

TEST(ADamagedNotebook, IsNotJudgedAndCheckSaysWhatIsWrong) {
  const std::string notebook = a_notebook("damaged.keen");
  keenfall({"take", notebook, a_table("damaged.csv", readings_of(2))});
  std::string bytes = content_of(notebook);
  for (auto at = bytes.find("rope"); at != std::string::npos; at = bytes.find("rope", at)) {
    bytes.replace(at, 4, "rape");
  }
  std::ofstream(notebook, std::ios::binary) << bytes;

  const Said refused = keenfall({"judge", notebook});
  const Said checked = keenfall({"check", notebook});

  EXPECT_EQ(refused.exit_code, 4);
  EXPECT_THAT(refused.out, IsEmpty());
  EXPECT_THAT(refused.err, AllOf(HasSubstr(notebook), HasSubstr("keenfall check")));
  EXPECT_EQ(checked.exit_code, 4);
  EXPECT_THAT(checked.err, HasSubstr("the checksum does not fit"));
}

TEST(ANotebook, AsksWhichOfItsTrialsIsMeant) {
  const std::string notebook = a_notebook("several.keen");
  const std::string table = a_table("several.csv", readings_of(2));
  keenfall({"take", notebook, table, "--trial=one"});
  keenfall({"take", notebook, table, "--trial=two"});

  const Said said = keenfall({"judge", notebook});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("one, two"));
  EXPECT_EQ(keenfall({"judge", notebook, "--trial=two", "--quiet"}).exit_code, 0);
}

TEST(ANotebook, TakesNothingOfATableWithAProblem) {
  const std::string notebook = a_notebook("refused.keen");

  const Said said =
      keenfall({"take", notebook, a_table("refused.csv", readings_of(2) + "A,rope,4,0,ten\n")});

  EXPECT_EQ(said.exit_code, 3);
  EXPECT_THAT(said.err, AllOf(HasSubstr("line 38"), HasSubstr("1 problem; nothing was taken.")));
  EXPECT_THAT(keenfall({"show", notebook}).out, HasSubstr("holds no trial yet"));
}

TEST(ANotebook, TakesTheGoodRowsOfATableAndTheOthersWhenTheyAreMended) {
  const std::string head = "blade,medium,run,cuts,reading\n";
  const std::string notebook = a_notebook("good.keen");
  const std::string table = a_table(
      "good.csv", head + "A,felt,1,0,100\nA,felt,1,9,1SO\nA,felt,1,20,170\nA,felt,2,0,-1\n");

  const Said in_part = keenfall({"take", notebook, table, "--keep-good", "--kind=thread_push"});

  EXPECT_EQ(in_part.exit_code, 3);
  EXPECT_THAT(in_part.out,
              HasSubstr("1 run and 2 readings into good, entry 1. Taken in part: 2 rows"));
  EXPECT_THAT(keenfall({"log", notebook}).out, HasSubstr("take good.csv into good, in part"));
  EXPECT_THAT(in_part.err,
              AllOf(HasSubstr("line 3, column reading"),
                    HasSubstr("line 5, column reading: A reading cannot be negative"),
                    HasSubstr("2 problems; 2 rows left out"),
                    HasSubstr("take it again with --trial=good.")));
  EXPECT_THAT(
      keenfall({"show", notebook, "good"}).out,
      HasSubstr("Left out when good.csv was taken: line 5: A reading cannot be negative, as"));

  a_table("good.csv", head + "A,felt,1,0,100\nA,felt,1,9,150\nA,felt,1,20,170\nA,felt,2,0,101\n");
  const Said mended = keenfall({"take", notebook, table, "--kind=thread_push"});

  EXPECT_EQ(mended.exit_code, 0) << mended.err;
  EXPECT_THAT(mended.out, HasSubstr("1 run and 2 readings into good, entry 2."));
  EXPECT_THAT(keenfall({"show", notebook}).out, HasSubstr("good      2         4"));
}

TEST(ANotebook, TakesAllOfAGoodTableWhereOnlyGoodRowsAreAskedFor) {
  const std::string notebook = a_notebook("all_good.keen");

  const Said said =
      keenfall({"take", notebook, a_table("all_good.csv", readings_of(2)), "--keep-good"});

  EXPECT_EQ(said.exit_code, 0) << said.err;
  EXPECT_THAT(said.out, HasSubstr("6 runs and 36 readings into all_good, entry 1."));
}

TEST(ANotebook, TakesNothingWhereNoRowIsGoodOrTheTableIsBadAsAWhole) {
  const std::string notebook = a_notebook("none_good.keen");
  const std::string bad = a_table("bad.csv", "blade,medium,run,cuts,reading\nA,felt,1,0,-1\n");
  const std::string no_table = a_table("no_table.csv", "blade,medium,run,cuts\nA,felt,1,0\n");

  for (const std::string& table : {bad, no_table}) {
    const Said said = keenfall({"take", notebook, table, "--keep-good"});
    EXPECT_EQ(said.exit_code, 3);
    EXPECT_THAT(said.err, HasSubstr("1 problem; nothing was taken."));
  }
  EXPECT_THAT(keenfall({"show", notebook}).out, HasSubstr("holds no trial yet"));
}

TEST(Judging, NeverRestsOnATableReadInPart) {
  const Said said = keenfall({"judge", a_table("half.csv", readings_of(2)), "--keep-good"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.out, IsEmpty());
  EXPECT_THAT(said.err, HasSubstr("--keep-good is for taking tables into a notebook"));
}

TEST(ANotebook, IsAskedForInTheRightWay) {
  const std::string notebook = a_notebook("asked.keen");

  EXPECT_EQ(keenfall({"new", notebook}).exit_code, 4);
  EXPECT_EQ(keenfall({"new"}).exit_code, 2);
  EXPECT_EQ(keenfall({"take", notebook}).exit_code, 2);
  EXPECT_EQ(keenfall({"show", scratch("nowhere.keen").string()}).exit_code, 4);
  EXPECT_EQ(keenfall({"undo", notebook, "first"}).exit_code, 2);
  EXPECT_EQ(keenfall({"undo", notebook}).exit_code, 3);
  EXPECT_EQ(keenfall({"strike", notebook, "--run=1"}).exit_code, 2);
  EXPECT_EQ(keenfall({"strike", notebook, "--run=1", "--reason=x", "--cuts=many"}).exit_code, 2);
  EXPECT_EQ(keenfall({"log", notebook, "--kind=glint"}).exit_code, 2);
}

TEST(ANotebook, IsHandedOutInThreeFormsAndTakenBackFromAPackage) {
  const std::string notebook = a_notebook("out.keen");
  keenfall({"take", notebook, a_table("out.csv", readings_of(2))});
  keenfall({"strike", notebook, "--run=2", "--blade=A", "--cuts=40", "--reason", "slipped"});
  for (const char* made : {"out_of_it.csv", "out_of_it.json", "out_package", "fresh.keen"}) {
    std::filesystem::remove_all(scratch(made));
  }

  const Said table = keenfall({"export", notebook, scratch("out_of_it.csv").string()});
  const Said document = keenfall({"export", notebook, scratch("out_of_it.json").string()});
  const Said package = keenfall({"export", notebook, scratch("out_package").string()});
  const std::string fresh = a_notebook("fresh.keen");
  const Said back = keenfall({"take", fresh, scratch("out_package").string()});

  EXPECT_THAT(table.out, HasSubstr("is the trial out as a table"));
  EXPECT_THAT(document.out, HasSubstr("as one JSON document"));
  EXPECT_THAT(package.out, HasSubstr("is the whole notebook as a data"));
  EXPECT_EQ(back.exit_code, 0) << back.err;
  EXPECT_THAT(back.out, HasSubstr("1 new trial, 6 runs and 36 readings from"));
  auto of_fresh = judged(fresh);
  auto of_table = judged(scratch("out_of_it.csv").string());
  EXPECT_EQ(of_fresh["comparisons"], judged(notebook)["comparisons"]);
  EXPECT_EQ(of_table["comparisons"], of_fresh["comparisons"]);
  EXPECT_EQ(of_table["runs"], of_fresh["runs"]);
  EXPECT_EQ(keenfall({"export", notebook, scratch("out_package").string()}).exit_code, 4);
}

TEST(ANotebook, IsMergedWithACopyThatWentOnElsewhere) {
  const std::string here = a_notebook("here.keen");
  keenfall({"take", here, a_table("both.csv", readings_of(1))});
  const std::string there = scratch("there.keen").string();
  std::filesystem::remove(there);
  keenfall({"backup", here, there});
  keenfall({"take", there, "--trial=both", a_table("more.csv", readings_of(2))});

  const Said merged = keenfall({"merge", here, there, "--why=from the other bench"});
  const Said again = keenfall({"merge", here, there});

  EXPECT_EQ(merged.exit_code, 0) << merged.err;
  EXPECT_THAT(merged.out, HasSubstr("3 runs and 18 readings from"));
  EXPECT_THAT(again.out, HasSubstr("Nothing new: all of"));
  EXPECT_THAT(keenfall({"log", here}).out,
              AllOf(HasSubstr("merge there.keen"), HasSubstr("why: from the other bench")));
}

TEST(ANotebook, ListsWhatIsInConflictUntilItIsSaidWhatIsMeant) {
  const std::string here = a_notebook("mine.keen");
  const std::string there = a_notebook("yours.keen");
  keenfall({"take", here, "--trial=spring", a_table("mine.csv", readings_of(1))});
  keenfall({"take", there, "--trial=spring", a_table("yours.csv", readings_of(2))});

  const Said asked = keenfall({"merge", here, there});
  const Said apart = keenfall({"merge", here, there, "--apart=T."});

  EXPECT_EQ(asked.exit_code, 3);
  EXPECT_THAT(asked.err,
              AllOf(HasSubstr("a trial called spring"),
                    HasSubstr("a blade called A"),
                    HasSubstr("nothing was merged.")));
  EXPECT_EQ(apart.exit_code, 0) << apart.err;
  EXPECT_THAT(keenfall({"show", here}).out, HasSubstr("spring (T.)"));
  EXPECT_EQ(keenfall({"merge", here, there, "--same", "--apart=T."}).exit_code, 2);
}

// A copy of a stored notebook, in which "next felt" is planned and sealed, and not cut yet.
std::string a_planned_notebook(const std::string& name) {
  std::string path = scratch(name).string();
  std::filesystem::copy_file(KEENFALL_SOURCE_DIR "/tests/notebooks/schema_3.keen",
                             path,
                             std::filesystem::copy_options::overwrite_existing);
  return path;
}

TEST(APlannedTrial, IsShownWithItsClaimItsPlanAndWhenThatWasSealed) {
  const std::string notebook = a_planned_notebook("planned.keen");

  const Said shown = keenfall({"show", notebook, "next felt"});

  EXPECT_EQ(shown.exit_code, 0) << shown.err;
  EXPECT_THAT(shown.out,
              AllOf(HasSubstr("Asked and planned, sealed at 2026-11-27T07:00:00Z, SHA-256"),
                    HasSubstr("  Claim: A outlasts B in new matting"),
                    HasSubstr("  Runs of each arm: 2"),
                    HasSubstr("It has no runs yet.")));
}

TEST(APlannedTrial, IsNeitherJudgedNorToldNorExportedBeforeItIsCut) {
  const std::string notebook = a_planned_notebook("uncut.keen");
  const std::string trial = "--trial=next felt";
  const std::string table = scratch("uncut.csv").string();

  for (const Said& said : {keenfall({"judge", notebook, trial}),
                           keenfall({"tell", notebook, trial, "--format=json"}),
                           keenfall({"export", notebook, table, trial})}) {
    EXPECT_EQ(said.exit_code, 3);
    EXPECT_THAT(said.err, HasSubstr("The trial next felt has no runs yet"));
    EXPECT_THAT(said.err, HasSubstr("keenfall take"));
  }
  EXPECT_FALSE(std::filesystem::exists(table));
}

TEST(APlannedTrial, SaysInItsAnswerWhatWasDoneOtherwise) {
  const std::string notebook = a_planned_notebook("done.keen");
  const std::string table = a_table("done.csv",
                                    "blade,medium,run,cuts (strokes),reading\n"
                                    "A,new matting,1,0,100\nA,new matting,1,5,140\n"
                                    "A,new matting,1,12.5,190\nB,felt,1,0,101\n"
                                    "B,felt,1,10,205\nC,felt,1,0,99\nC,felt,1,10,180\n");

  const Said taken = keenfall({"take", notebook, table, "--trial=next felt"});
  const Said judged = keenfall({"judge", notebook, "--trial=next felt", "--quiet"});

  EXPECT_EQ(taken.exit_code, 0) << taken.err;
  EXPECT_THAT(judged.err,
              AllOf(HasSubstr("Claim and plan were sealed at"),
                    HasSubstr("otherwise than planned:"),
                    HasSubstr("Not planned: C on felt, 1 run.")));
  EXPECT_THAT(keenfall({"show", notebook, "next felt"}).out,
              HasSubstr("Not planned: C on felt, 1 run."));
}

}  // namespace
}  // namespace keenfall::journeys
