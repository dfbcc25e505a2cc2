#include "cli/open_command.h"

#include "server/raw_client_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <charconv>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::cli {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::MatchesRegex;

// What happened outside while it was open.
struct Opened {
  Outcome outcome;
  std::string said;                 // at once
  std::vector<std::string> shown;   // on the desktop
  std::vector<std::string> made;    // with the demo's trial
  server::testing::RawAnswer page;  // asked for while it was open
  bool was_waited_for = false;
};

std::uint16_t port_in(const std::string& said) {
  const std::string before = "127.0.0.1:";
  const std::size_t at = said.find(before) + before.size();
  std::uint16_t port = 0;
  std::from_chars(said.data() + at, said.data() + said.size(), port);
  return port;
}

Opened opened(const std::vector<std::string>& words, bool has_desktop = true) {
  Opened happened;
  Surroundings around{.program_version = "0.1.0", .working_folder = "/bench"};
  around.utc_now = [] { return std::string("2026-11-27T12:00:00Z"); };
  around.write_at_once = [&](const std::string& text) { happened.said += text; };
  around.wait_for_stop = [&] {
    happened.was_waited_for = true;
    const std::uint16_t port = port_in(happened.said);
    happened.page = server::testing::answer_to(port, server::testing::request_of("GET /", port));
  };
  if (has_desktop) {
    around.show_on_desktop = [&](const std::string& address) {
      happened.shown.push_back(address);
      return false;
    };
  }
  around.use_cases.notebook.place =
      [](const std::string& path) -> base::Result<workbench::NotebookPlace> {
    if (path == "there.keen") return workbench::NotebookPlace{.path = "/bench/there.keen"};
    return base::failed({.kind = base::ProblemKind::unreadable,
                         .sentence = "There is no such notebook.",
                         .place = {.file = path},
                         .accepted = "keenfall new makes one"});
  };
  around.use_cases.notebook.to_open = [&](const workbench::OpenRequest& request,
                                          const workbench::Hand&) -> base::Result<std::string> {
    if (request.open.how != wire::OpenHow::demo) throw std::logic_error("only the demo is made");
    happened.made.push_back(request.open.path + " in " + request.folder);
    return "/bench/matting-bench.keen";
  };
  happened.outcome = open_command(words, around);
  return happened;
}

TEST(OpenCommand, ServesUntilItIsStopped) {
  const Opened happened = opened({});

  EXPECT_EQ(happened.page.status, 200);
  EXPECT_EQ(happened.outcome.code, ExitCode::answered);
  EXPECT_EQ(happened.outcome.out, "Stopped.\n");
  const std::uint16_t port = port_in(happened.said);
  EXPECT_FALSE(server::testing::RawClient(port).is_connected());
}

TEST(OpenCommand, SaysItsAddressInOneLineAndShowsItOnTheDesktop) {
  const Opened happened = opened({});

  EXPECT_THAT(happened.said,
              MatchesRegex("Keenfall is open at http://127.0.0.1:[0-9]+/#key=[A-Za-z0-9_-]+ until "
                           "Ctrl-C.\n"));
  ASSERT_EQ(happened.shown.size(), 1U);
  EXPECT_THAT(happened.said, HasSubstr(" " + happened.shown.front() + " "));
}

TEST(OpenCommand, ShowsNothingWhereItIsNotToOrCannot) {
  EXPECT_THAT(opened({"--no-open"}).shown, IsEmpty());
  EXPECT_TRUE(opened({}, false).was_waited_for);
}

TEST(OpenCommand, SaysWhereThereIsNoNotebookAndHowToMakeOne) {
  const Opened happened = opened({"nowhere.keen"});

  EXPECT_EQ(happened.outcome.code, ExitCode::file_trouble);
  EXPECT_THAT(happened.outcome.err, HasSubstr("nowhere.keen: There is no such notebook."));
  EXPECT_THAT(happened.outcome.err, HasSubstr("keenfall new makes one"));
  EXPECT_THAT(happened.outcome.err, HasSubstr("nothing was opened"));
  EXPECT_FALSE(happened.was_waited_for);
}

TEST(OpenCommand, MakesTheDemosNotebookWhereItIsNotThere) {
  const Opened named = opened({"--demo", "nowhere.keen"});
  const Opened unnamed = opened({"--demo"});

  EXPECT_THAT(named.made, ElementsAre("nowhere.keen in /bench"));
  EXPECT_THAT(unnamed.made, ElementsAre(" in /bench"));
  EXPECT_TRUE(named.was_waited_for && unnamed.was_waited_for);
  EXPECT_THAT(opened({}).made, IsEmpty());
}

TEST(OpenCommand, OpensTheDemosNotebookThatIsThereAsItIs) {
  const Opened happened = opened({"--demo", "there.keen"});

  EXPECT_THAT(happened.made, IsEmpty());
  EXPECT_TRUE(happened.was_waited_for);
}

TEST(OpenCommand, TakesOneNotebookAndAPortThatThereIs) {
  EXPECT_EQ(opened({"a.keen", "b.keen"}).outcome.code, ExitCode::wrong_usage);
  for (const char* port : {"0", "65536", "-1", "x", "80.5"}) {
    const Opened happened = opened({std::string("--port=") + port});
    EXPECT_EQ(happened.outcome.code, ExitCode::wrong_usage) << port;
    EXPECT_THAT(happened.outcome.err, HasSubstr("--port"));
    EXPECT_FALSE(happened.was_waited_for);
  }
}

TEST(OpenCommand, SaysWhereAPortIsTaken) {
  std::string port;
  Surroundings around;
  Outcome second;
  around.utc_now = [] { return std::string("2026-11-27T12:00:00Z"); };
  around.write_at_once = [&](const std::string& text) { port = std::to_string(port_in(text)); };
  around.wait_for_stop = [&] { second = open_command(std::vector{"--port=" + port}, around); };

  (void)open_command({}, around);

  EXPECT_EQ(second.code, ExitCode::file_trouble);
  EXPECT_THAT(second.err, HasSubstr("Port " + port + " of this machine cannot be listened at"));
}

}  // namespace
}  // namespace keenfall::cli
