#include "server/asked_app_test.h"

namespace keenfall::server {
namespace {

using testing::json;

class StoppingRoute : public testing::AskedApp {};

TEST_F(StoppingRoute, AsksForTheEndOnceAndSaysWhereAllOfItIs) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});

  const json stopped = got("POST", "/stop", "Stopped");

  EXPECT_EQ(asked_to_stop_, 1);
  EXPECT_EQ(stopped["sentence"],
            "What you have taken in is in the notebook " + (folder_ / "bench.keen").string() + ".");
}

TEST_F(StoppingRoute, SaysThatNoNotebookWasOpen) {
  EXPECT_EQ(got("POST", "/stop", "Stopped")["sentence"], "No notebook was open.");
}

TEST_F(StoppingRoute, TakesAWishAndNotALook) {
  EXPECT_EQ(asked("GET", "/stop").status, 405);

  EXPECT_EQ(asked_to_stop_, 0);
}

}  // namespace
}  // namespace keenfall::server
