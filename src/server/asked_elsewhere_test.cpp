// A question or a plan that two write at once: the second is told, and nothing is written over.
#include "server/asked_app_test.h"

namespace keenfall::server {
namespace {

using testing::json;

json a_draft(const std::string& claim, const std::string& revision = {}) {
  json draft = {{"claims", {{{"words", claim}, {"worth_it_margin", 1.25}}}},
                {"plan", testing::a_plan({0, 10, 20})}};
  if (!revision.empty()) draft["revision"] = revision;
  return draft;
}

class AskedElsewhere : public testing::AskedApp {
 protected:
  AskedElsewhere() {
    (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
    uid_ = got(
        "POST", "/trials", "Trial", {{"name", "Rope"}, {"asked", a_draft("B outlasts A")}})["uid"];
  }
  std::string revision() { return got("GET", "/trials/" + uid_, "Trial")["asked"]["revision"]; }
  json written(const std::string& claim, const std::string& revision) {
    return got("PUT", "/trials/" + uid_ + "/asked", "Trial", a_draft(claim, revision))["asked"];
  }
  json refused_to_write(int status, const json& draft) {
    return refused(status, "PUT", "/trials/" + uid_ + "/asked", draft);
  }

  std::string uid_;
};

TEST_F(AskedElsewhere, IsNotWrittenOverUnseen) {
  const std::string seen = revision();
  const json theirs = written("B lasts twice as long", seen);

  const json problem = refused_to_write(409, a_draft("A outlasts B", seen));

  EXPECT_EQ(problem["kind"], "conflicting");
  EXPECT_EQ(problem["column"], "revision");
  EXPECT_EQ(
      problem["sentence"],
      "What is asked and planned in Rope was changed elsewhere meanwhile. It is now: “B lasts "
      "twice as long”; A and B in sisal rope, 2 runs of each.");
  EXPECT_EQ(revision(), theirs["revision"]);
}

TEST_F(AskedElsewhere, IsWrittenOverByWhoeverSawIt) {
  const std::string seen = revision();
  const json theirs = written("B lasts twice as long", seen);

  const json mine = written("A outlasts B", theirs["revision"]);

  EXPECT_EQ(mine["claims"][0]["words"], "A outlasts B");
}

TEST_F(AskedElsewhere, TakesTheSameAgainAndWhatIsThatAlready) {
  const std::string seen = revision();
  const json once = written("B lasts twice as long", seen);

  EXPECT_EQ(written("B lasts twice as long", seen), once);
}

TEST_F(AskedElsewhere, IsSealedOnlyAsItWasSeen) {
  const std::string seen = revision();
  const json theirs = written("B lasts twice as long", seen);
  const std::string seal = "/trials/" + uid_ + "/seal";

  EXPECT_EQ(refused(409, "POST", seal, {{"revision", seen}})["column"], "revision");
  EXPECT_TRUE(got("POST", seal, "Trial", {{"revision", theirs["revision"]}})["asked"].contains(
      "sealed_at_utc"));
}

TEST_F(AskedElsewhere, IsSaidToBeSealedWhereItIs) {
  const std::string seen = revision();
  (void)written("B lasts twice as long", seen);
  (void)got("POST", "/trials/" + uid_ + "/seal", "Trial");

  const json problem = refused_to_write(409, a_draft("A outlasts B", seen));

  EXPECT_FALSE(problem.contains("column"));
  EXPECT_NE(problem["sentence"].get<std::string>().find("was sealed"), std::string::npos);
}

TEST_F(AskedElsewhere, HasToBeSaidAsItWasSeen) {
  EXPECT_EQ(refused_to_write(400, a_draft("A outlasts B"))["column"], "revision");
  EXPECT_EQ(refused_to_write(409, a_draft("A outlasts B", "none"))["column"], "revision");
}

}  // namespace
}  // namespace keenfall::server
