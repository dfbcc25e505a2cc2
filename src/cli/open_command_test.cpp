#include "cli/open_command.h"

#include "server/raw_client_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <charconv>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <vector>

#include <sys/stat.h>
#include <unistd.h>

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

TEST(OpenCommand, SaysInAWindowOfItsOwnWhatTheWindowIsFor) {
  const Opened happened = opened({"--own-window"});

  EXPECT_THAT(happened.said, MatchesRegex("Keenfall is open at [^\n]+ until Ctrl-C.\n\n(.|\n)*"));
  EXPECT_THAT(happened.said, HasSubstr("Leave this window open\nwhile you work."));
  EXPECT_THAT(happened.said, HasSubstr("Closing it stops Keenfall"));
}

// What the pages get where they ask it to stop, with these lines of a header.
server::testing::RawAnswer asked_to_stop(const std::string& said, const std::string& lines) {
  const std::uint16_t port = port_in(said);
  return server::testing::answer_to(
      port,
      server::testing::request_of("POST /api/v1/stop", port, lines + "Content-Length: 0\r\n"));
}

TEST(OpenCommand, IsStoppedByWhoeverHasTheKeyAndByNobodyElse) {
  std::string said;
  int stops = 0;
  Surroundings around;
  around.utc_now = [] { return std::string("2026-11-27T12:00:00Z"); };
  around.write_at_once = [&](const std::string& text) { said += text; };
  around.ask_for_stop = [&] { ++stops; };
  around.wait_for_stop = [&] {
    const std::size_t key_at = said.find("#key=") + 5;
    const std::string key = said.substr(key_at, said.find(' ', key_at) - key_at);
    EXPECT_EQ(asked_to_stop(said, "").status, 401);
    EXPECT_EQ(asked_to_stop(said, "X-Keenfall-Key: " + key + "x\r\n").status, 401);
    EXPECT_EQ(
        asked_to_stop(said, "X-Keenfall-Key: " + key + "\r\nOrigin: http://elsewhere\r\n").status,
        403);
    EXPECT_EQ(stops, 0);

    const auto answer = asked_to_stop(said, "X-Keenfall-Key: " + key + "\r\n");

    EXPECT_EQ(answer.status, 200);
    EXPECT_THAT(answer.body, HasSubstr("No notebook was open."));
    EXPECT_EQ(stops, 1);
  };

  EXPECT_EQ(open_command({}, around).out, "Stopped.\n");
}

// A start while another one is open, in a runtime folder of this user's own.
class ASecondStart : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ = ::testing::TempDir() + "keenfall_second_" + std::to_string(getpid());
    std::filesystem::remove_all(folder_);
    ASSERT_EQ(mkdir(folder_.c_str(), S_IRWXU), 0);
    for (const char* name : {"a.keen", "b.keen"}) std::ofstream(folder_ + "/" + name) << "here";
    around_.runtime_folder = folder_;
    around_.utc_now = [] { return std::string("2026-11-27T12:00:00Z"); };
    around_.write_at_once = [&](const std::string& text) { said_.push_back(text); };
    around_.show_on_desktop = [&](const std::string& address) {
      shown_.push_back(address);
      return true;
    };
    around_.use_cases.notebook.place =
        [&](const std::string& path) -> base::Result<workbench::NotebookPlace> {
      return workbench::NotebookPlace{.path = folder_ + "/" + path};
    };
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  // Whether the second began to serve as well.
  bool serves(const std::vector<std::string>& first, const std::vector<std::string>& second) {
    int served = 0;
    around_.wait_for_stop = [&] {
      if (++served == 1) outcome_ = open_command(second, around_);
    };
    (void)open_command(first, around_);
    return served == 2;
  }

  std::string folder_;
  Surroundings around_;
  std::vector<std::string> said_;
  std::vector<std::string> shown_;
  Outcome outcome_;  // of the second
};

TEST_F(ASecondStart, ShowsTheOneThatIsOpen) {
  EXPECT_FALSE(serves({"a.keen"}, {}));

  ASSERT_EQ(shown_.size(), 2U);
  EXPECT_EQ(shown_[0], shown_[1]);
  EXPECT_EQ(outcome_.code, ExitCode::answered);
  EXPECT_EQ(outcome_.out,
            "Keenfall is open already, at " + shown_[0] +
                "\nYour browser shows it. It is stopped at the foot of its pages, or where it was "
                "started.\n");
}

TEST_F(ASecondStart, SaysWhereItIsOpenWhereThereIsNoDesktop) {
  around_.show_on_desktop = nullptr;

  EXPECT_FALSE(serves({"a.keen"}, {"a.keen"}));

  EXPECT_EQ(outcome_.code, ExitCode::answered);
  EXPECT_THAT(outcome_.out,
              MatchesRegex("Keenfall is open already, at http://[^ ]+\nIt is stopped "
                           "at the foot of its pages, or where it was started.\n"));
}

TEST_F(ASecondStart, ShowsTheOneThatHasTheNotebookMeantOpen) {
  std::filesystem::create_symlink(folder_ + "/a.keen", folder_ + "/also-a.keen");

  EXPECT_FALSE(serves({"a.keen"}, {"a.keen"}));
  EXPECT_FALSE(serves({"a.keen"}, {"also-a.keen", "--own-window"}));
}

TEST_F(ASecondStart, ServesAnotherNotebookBesideIt) {
  EXPECT_TRUE(serves({"a.keen"}, {"b.keen"}));
  EXPECT_TRUE(serves({}, {"a.keen"}));

  EXPECT_NE(shown_[0], shown_[1]);
}

TEST_F(ASecondStart, ServesWhereItIsAskedTo) {
  EXPECT_TRUE(serves({"a.keen"}, {"--no-open"}));
  EXPECT_TRUE(serves({"a.keen", "--no-open"}, {"a.keen", "--demo"}));
}

TEST_F(ASecondStart, IsTheFirstAgainOnceTheFirstIsStopped) {
  EXPECT_FALSE(serves({}, {}));

  int served = 0;
  around_.wait_for_stop = [&] { ++served; };
  (void)open_command({}, around_);
  EXPECT_EQ(served, 1);
}

TEST_F(ASecondStart, ServesWhereOthersMayEnterTheFolder) {
  ASSERT_EQ(chmod(folder_.c_str(), S_IRWXU | S_IRWXO), 0);

  EXPECT_TRUE(serves({"a.keen"}, {"a.keen"}));
}

TEST(OpenCommand, LetsDevicesInOnlyWhereItIsAskedTo) {
  EXPECT_THAT(opened({}).said, ::testing::Not(HasSubstr("device")));

  const Opened happened = opened({"--bench", "--bench-name=bench.example"});

  EXPECT_THAT(happened.said, HasSubstr("A device at the bench is let in at http://bench.example:"));
  EXPECT_THAT(happened.said, HasSubstr("/bench with the code "));
  EXPECT_THAT(happened.said, HasSubstr("is not encrypted"));
}

TEST(OpenCommand, SaysWhichOptionOfTheBenchNeedsAnother) {
  for (const char* option : {"--bench-port=17035",
                             "--bench-name=bench.example",
                             "--bench-certificate=a.pem",
                             "--bench-key=a.pem"}) {
    const Opened happened = opened({option});
    EXPECT_EQ(happened.outcome.code, ExitCode::wrong_usage) << option;
    EXPECT_THAT(happened.outcome.err, HasSubstr(" says nothing without --bench."));
  }
  const Opened half = opened({"--bench", "--bench-certificate=a.pem"});
  EXPECT_EQ(half.outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(half.outcome.err, HasSubstr("says nothing without --bench-key."));
}

TEST(OpenCommand, OpensNothingWhereTheCertificateCannotBeUsed) {
  const Opened happened =
      opened({"--bench", "--bench-certificate=/no/such.pem", "--bench-key=/no/such.pem"});

  EXPECT_EQ(happened.outcome.code, ExitCode::file_trouble);
  EXPECT_THAT(happened.outcome.err, HasSubstr("/no/such.pem"));
  EXPECT_THAT(happened.outcome.err, HasSubstr("nothing was opened"));
  EXPECT_FALSE(happened.was_waited_for);
}

}  // namespace
}  // namespace keenfall::cli
