#include "server/asked_app_test.h"

#include "workbench/notebook_changes.h"

#include <fstream>

namespace keenfall::server {
namespace {

using testing::json;

class NotebookRoutes : public testing::AskedApp {
 protected:
  void take(const std::string& rows, const std::string& trial) {
    const auto table = folder_ / "rows.csv";
    std::ofstream(table) << "blade,medium,run,cuts,reading\n" << rows;
    const auto taken = workbench::take_into(
        {.notebook = *open_.notebook(), .tables = {table.string()}, .trial = trial}, open_.hand());
    ASSERT_TRUE(taken) << taken.error().front().sentence;
  }
  static inline const std::string kRows =
      "A,rubber,1,0,100\nA,rubber,1,10,150\nB,rubber,1,0,101\nB,rubber,1,10,201\n";
};

TEST_F(NotebookRoutes, SayThatNoneIsOpenAndWhatToDo) {
  const json app = got("GET", "/app", "App");
  const json home = refused(400, "GET", "/home", nullptr);

  EXPECT_FALSE(app.contains("notebook"));
  EXPECT_FALSE(app["cautions"].empty());
  EXPECT_EQ(home["sentence"], "No notebook is open.");
  EXPECT_EQ(home["accepted"], "opening one, or making a new one, on the first page");
}

TEST_F(NotebookRoutes, MakeANewOneInTheFolderAndOpenIt) {
  const json app = got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});

  EXPECT_EQ(app["notebook"]["path"], (folder_ / "bench.keen").string());
  EXPECT_EQ(app["notebook"]["may_write"], true);
  EXPECT_EQ(got("GET", "/notebooks", "Notebooks")["notebooks"][0]["name"], "bench.keen");
  EXPECT_TRUE(got("GET", "/home", "Home")["trials"].empty());
  EXPECT_FALSE(got("GET", "/home", "Home").contains("undoes"));
}

TEST_F(NotebookRoutes, RefuseToMakeOneOverAnother) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench.keen"}});

  const json again = refused(409, "POST", "/notebooks", {{"how", "make"}, {"path", "bench.keen"}});

  EXPECT_NE(again["sentence"].get<std::string>().find("already"), std::string::npos) << again;
}

TEST_F(NotebookRoutes, RefuseToMakeOneOfANameThatIsNone) {
  for (const char* how : {"make", "demo"}) {
    for (const char* name : {".", "..", ".keen", "x/ ", "../..", "x/", "x/.keen", "/"}) {
      const json problem = refused(400, "POST", "/notebooks", {{"how", how}, {"path", name}});
      EXPECT_EQ(problem["sentence"], "A notebook needs a name of its own.") << name;
      EXPECT_EQ(problem["column"], "path") << name;
    }
    for (const char* name : {"a\nb", "a\x07", "a\u202E"}) {
      const json problem = refused(400, "POST", "/notebooks", {{"how", how}, {"path", name}});
      EXPECT_NE(problem["sentence"].get<std::string>().find("cannot be seen"), std::string::npos);
    }
  }
  EXPECT_EQ(refused(400, "POST", "/notebooks", {{"how", "make"}, {"path", "rope/card"}}),
            (json{{"kind", "bad_value"},
                  {"sentence",
                   "The “/” in the name leads into a folder, and there is no folder “rope” here."},
                  {"column", "path"},
                  {"accepted", "a name without “/”, such as card"}}));
  const json long_one =
      refused(400, "POST", "/notebooks", {{"how", "make"}, {"path", std::string(201, 'n')}});
  EXPECT_EQ(long_one["sentence"], "The name is longer than a file's may be.");
  EXPECT_EQ(long_one["column"], "path");
  const std::string with_nul("a\0b", 3);
  (void)refused(400, "POST", "/notebooks", {{"how", "make"}, {"path", with_nul}});
  (void)refused(400, "POST", "/notebooks", {{"how", "open"}, {"path", with_nul}});

  EXPECT_TRUE(std::filesystem::is_empty(folder_));
}

TEST_F(NotebookRoutes, NumberTheDemoWhereOneIsThere) {
  const json first = got("POST", "/notebooks", "App", {{"how", "demo"}});
  const json second = got("POST", "/notebooks", "App", {{"how", "demo"}});

  EXPECT_EQ(first["notebook"]["name"], "matting-bench.keen");
  EXPECT_EQ(second["notebook"]["name"], "matting-bench-2.keen");
}

TEST_F(NotebookRoutes, RefuseWhatIsNoNotebook) {
  std::ofstream(folder_ / "notes.keen") << "not a notebook";

  const json found = refused(409, "POST", "/notebooks", {{"how", "open"}, {"path", "notes.keen"}});
  const json none = refused(409, "POST", "/notebooks", {{"how", "open"}, {"path", "gone.keen"}});

  EXPECT_EQ(found["kind"], "unreadable");
  EXPECT_EQ(none["kind"], "unreadable");
}

TEST_F(NotebookRoutes, NameEveryFieldThatCannotBeUsed) {
  const HttpResponse answer =
      asked("POST", "/notebooks", R"({"how": "burn", "paht": "x", "path": 7})");
  const json problems = json::parse(answer.body)["problems"];

  EXPECT_EQ(answer.status, 400);
  ASSERT_EQ(problems.size(), 3U) << problems;
  EXPECT_EQ(problems[0]["column"], "how");
  EXPECT_EQ(problems[0]["accepted"], "make, open, demo");
  EXPECT_EQ(problems[1]["column"], "path");
  EXPECT_EQ(problems[2]["sentence"], "Nothing here is called “paht”.");
}

TEST_F(NotebookRoutes, RefuseABodyThatIsNotJson) {
  const HttpResponse answer = asked("POST", "/notebooks", "{how: make");

  EXPECT_EQ(answer.status, 409);
  EXPECT_EQ(json::parse(answer.body)["problems"][0]["sentence"], "What was sent is not JSON.");
}

TEST_F(NotebookRoutes, ShowEachTrialWithWhereItStandsTheNewestFirst) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  take(kRows, "spring");
  take("C,felt,1,0,100\n", "autumn");

  const json home = got("GET", "/home", "Home");

  EXPECT_EQ(home["trials"][0]["name"], "autumn");
  EXPECT_EQ(home["trials"][1]["readings"], 4);
  EXPECT_EQ(home["trials"][1]["next"]["step"], "judge");
  EXPECT_EQ(home["trials"][1]["steps"][0]["words"],
            "Not written down; the trial can be judged all the same.");
  EXPECT_EQ(home["undoes"]["entry"], 2);
}

// A command beside the open app.
TEST_F(NotebookRoutes, SeeAChangeByAnotherAtTheNextRequest) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  take(kRows, "spring");
  const std::string uid = got("GET", "/home", "Home")["trials"][0]["uid"];
  EXPECT_EQ(got("GET", "/trials/" + uid, "Trial")["recorded"]["runs"].size(), 2U);

  take(kRows + "B,rubber,2,0,99\n", "spring");

  EXPECT_EQ(got("GET", "/trials/" + uid, "Trial")["recorded"]["runs"].size(), 3U);
  EXPECT_EQ(got("GET", "/home", "Home")["last_entry"], 2);
}

TEST_F(NotebookRoutes, SayWhereANotebookMayNotBeWritten) {
  if (geteuid() == 0) GTEST_SKIP() << "root may write everywhere";
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  std::filesystem::permissions(folder_ / "bench.keen", std::filesystem::perms::owner_read);

  const json app = got("GET", "/app", "App");

  EXPECT_EQ(app["notebook"]["may_write"], false);
  EXPECT_EQ(app["notebook"]["why_not"],
            "You have no right to write to bench.keen or to its folder.");
  std::filesystem::permissions(folder_ / "bench.keen", std::filesystem::perms::owner_all);
}

TEST_F(NotebookRoutes, SayWhyANotebookThatIsGoneCannotBeRead) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  std::filesystem::remove(folder_ / "bench.keen");

  const json app = got("GET", "/app", "App");

  EXPECT_EQ(app["notebook"]["may_write"], false);
  EXPECT_NE(app["notebook"]["why_not"], "");
  EXPECT_EQ(refused(409, "GET", "/home", nullptr)["kind"], "unreadable");
}

TEST_F(NotebookRoutes, TurnTheJournalPageByPageAndUndo) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  take(kRows, "spring");
  take("C,felt,1,0,100\n", "autumn");

  const json first = got("GET", "/journal?limit=1", "Journal");
  const json second = got("GET", "/journal?before=2", "Journal");
  const json chosen = got("POST", "/journal/1/undo", "Changed", {{"why", "the wrong table"}});
  const json last = undone();

  EXPECT_EQ(first["entries"][0]["entry"], 2);
  EXPECT_EQ(first["next_before"], 2);
  EXPECT_EQ(second["entries"].size(), 1U);
  EXPECT_FALSE(second.contains("next_before"));
  EXPECT_EQ(chosen["what"], "undo: take rows.csv into spring");
  EXPECT_EQ(last["what"], "undo: take rows.csv into autumn");
  const json journal = got("GET", "/journal", "Journal")["entries"];
  EXPECT_EQ(journal[1]["why"], "the wrong table");
  EXPECT_EQ(journal[3]["holds"], false);
  EXPECT_EQ(journal[3]["undone_by"], 3);
}

// A page that was read before has another change to offer than the newest.
TEST_F(NotebookRoutes, UndoWhatWasShownAndNothingThatCameSince) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  take(kRows, "spring");
  const json shown = got("GET", "/home", "Home")["undoes"];
  take("C,felt,1,0,100\n", "autumn");
  const std::string undo = "/journal/" + shown["entry"].dump() + "/undo";

  EXPECT_EQ(got("POST", undo, "Changed", json::object())["what"],
            "undo: " + shown["what"].get<std::string>());
  (void)refused(409, "POST", undo, json::object());
  EXPECT_EQ(got("GET", "/home", "Home")["trials"][0]["name"], "autumn");
  EXPECT_EQ(asked("POST", "/undo", "{}").status, 404);
}

TEST_F(NotebookRoutes, RefuseToUndoWhatIsNotThere) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});

  EXPECT_EQ(refused(409, "POST", "/journal/7/undo", json::object())["sentence"],
            "There is no entry 7 in the journal.");
  (void)refused(404, "POST", "/journal/none/undo", json::object());
  EXPECT_EQ(refused(400, "GET", "/journal?limit=0", nullptr)["column"], "limit");
}

TEST_F(NotebookRoutes, FindWordsWhateverTheirCase) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  take(kRows, "Rubber in spring");

  const json found = got("GET", "/search?text=RUBBER", "Found")["found"];
  const json none = got("GET", "/search?text= ", "Found")["found"];

  EXPECT_EQ(found[0]["kind"], "trial");
  EXPECT_EQ(found[0]["words"], "Rubber in spring");
  EXPECT_TRUE(found[0]["path"].get<std::string>().ends_with("/judge"));
  EXPECT_FALSE(found[0].contains("trial"));
  EXPECT_EQ(found[1]["kind"], "medium");
  EXPECT_EQ(found[1]["trial"], "Rubber in spring");
  EXPECT_EQ(found.back()["path"], "/journal");
  EXPECT_TRUE(none.empty());
}

TEST_F(NotebookRoutes, FindAllTheWordsInAnyOrder) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  take(kRows, "Rubber in spring");

  const json found = got("GET", "/search?text=spring rubber", "Found")["found"];

  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found[0]["words"], "Rubber in spring");
  EXPECT_TRUE(got("GET", "/search?text=spring steel", "Found")["found"].empty());
}

TEST_F(NotebookRoutes, GiveScriptBackAsText) {
  const std::string script = "<script>alert(1)</script>";
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  take("A,\"" + script + "\",1,0,100\nA,\"" + script + "\",1,10,150\n", script);
  const json home = got("GET", "/home", "Home");
  const std::string uid = home["trials"][0]["uid"];

  (void)got("POST",
            "/trials/" + uid + "/strikes",
            "Changed",
            {{"run", 0}, {"cuts", 10}, {"reason", script}});
  const json trial = got("GET", "/trials/" + uid, "Trial");
  (void)undone({{"why", script}});

  EXPECT_EQ(home["trials"][0]["name"], script);
  EXPECT_EQ(trial["recorded"]["runs"][0]["medium"], script);
  EXPECT_EQ(trial["recorded"]["runs"][0]["readings"][1]["struck"], script);
  EXPECT_EQ(got("GET", "/journal", "Journal")["entries"][0]["why"], script);
  EXPECT_EQ(got("GET", "/search?text=" + script, "Found")["found"][0]["words"], script);
}

}  // namespace
}  // namespace keenfall::server
