#include "server/asked_app_test.h"

namespace keenfall::server {
namespace {

using testing::json;

class SheetRoutes : public testing::AskedApp {
 protected:
  void with_notebook() {
    (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  }
};

TEST_F(SheetRoutes, KeepWhatIsTypedForWhoeverLooksNext) {
  with_notebook();
  const json cells = json::array({json::array({"blade", "A"}), json::array({"0", "104 / 10"})});
  EXPECT_EQ(got("GET", "/sheets/new", "TypedSheet"), json({{"revision", 0}}));

  const json kept = got("PUT", "/sheets/new", "KeptSheet", {{"goes_on_from", 0}, {"cells", cells}});
  const json sheet = got("GET", "/sheets/new", "TypedSheet");

  EXPECT_EQ(kept["revision"], 1);
  EXPECT_EQ(sheet["revision"], 1);
  EXPECT_EQ(sheet["cells"], cells);
  EXPECT_EQ(sheet["who"], "R.");
  EXPECT_EQ(got("GET", "/sheets/of-a-trial", "TypedSheet")["revision"], 0);
  EXPECT_TRUE(got("GET", "/journal", "Journal")["entries"].empty());
}

TEST_F(SheetRoutes, RefuseToWriteOverWhatWasTypedElsewhere) {
  with_notebook();
  (void)got("PUT", "/sheets/new", "KeptSheet", {{"goes_on_from", 0}, {"cells", {{"mine"}}}});

  const json problem =
      refused(409, "PUT", "/sheets/new", {{"goes_on_from", 0}, {"cells", {{"theirs"}}}});

  EXPECT_EQ(problem["kind"], "conflicting");
  EXPECT_EQ(got("GET", "/sheets/new", "TypedSheet")["cells"], json({{"mine"}}));
}

TEST_F(SheetRoutes, ForgetWhatWasTakenInAndNothingThatWasTypedSince) {
  with_notebook();
  (void)got("PUT", "/sheets/new", "KeptSheet", {{"goes_on_from", 0}, {"cells", {{"one"}}}});
  (void)got("PUT", "/sheets/new", "KeptSheet", {{"goes_on_from", 1}, {"cells", {{"two"}}}});

  EXPECT_EQ(got("DELETE", "/sheets/new?revision=1", "KeptSheet")["revision"], 2);
  EXPECT_EQ(got("DELETE", "/sheets/new?revision=2", "KeptSheet")["revision"], 0);
  EXPECT_EQ(refused(400, "DELETE", "/sheets/new?revision=x", nullptr)["column"], "revision");
}

TEST_F(SheetRoutes, RefuseWhatIsNoSheet) {
  with_notebook();

  const auto column = [this](const json& body) {
    return refused(400, "PUT", "/sheets/new", body)["column"];
  };
  EXPECT_EQ(column({{"goes_on_from", 0}, {"cells", {{1}}}}), "cells");
  EXPECT_EQ(column({{"goes_on_from", 0}, {"cells", "A"}}), "cells");
  EXPECT_EQ(column({{"goes_on_from", -1}, {"cells", {{"A"}}}}), "goes_on_from");
  EXPECT_EQ(column({{"cells", {{"A"}}}}), "goes_on_from");
}

}  // namespace
}  // namespace keenfall::server
