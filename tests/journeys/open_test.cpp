// `keenfall open`, from its first line to its end.
#include "served_program.h"
#include "tables_on_disk.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <thread>
#include <vector>

#include <signal.h>  // NOLINT(modernize-deprecated-headers): kill is POSIX

namespace keenfall::journeys {
namespace {

using server::testing::RawAnswer;
using server::testing::RawClient;
using server::testing::request_of;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using namespace std::chrono_literals;

std::string empty_notebook(const std::string& name) {
  std::string path = scratch(name).string();
  std::filesystem::remove(path);
  EXPECT_EQ(keenfall({"new", path}).exit_code, 0);
  return path;
}

// The addresses, in the kernel's hexadecimal, at which the process listens (proc(5)).
std::multiset<std::string> listening_addresses(pid_t process) {
  constexpr const char* kListening = "0A";
  std::set<std::string> sockets;
  const std::string descriptors = "/proc/" + std::to_string(process) + "/fd";
  for (const auto& entry : std::filesystem::directory_iterator(descriptors)) {
    std::error_code gone;
    sockets.insert(std::filesystem::read_symlink(entry.path(), gone).string());
  }
  std::multiset<std::string> addresses;
  for (const char* table : {"/proc/net/tcp", "/proc/net/tcp6"}) {
    std::ifstream lines(table);
    std::string line;
    std::getline(lines, line);
    while (std::getline(lines, line)) {
      std::istringstream words(line);
      std::vector<std::string> cells(10);
      for (std::string& cell : cells) words >> cell;
      const bool is_its = sockets.contains("socket:[" + cells[9] + "]");
      if (is_its && cells[3] == kListening)
        addresses.insert(cells[1].substr(0, cells[1].find(':')));
    }
  }
  return addresses;
}

TEST(KeenfallOpen, ServesItsPagesAndSaysWhichNotebookIsOpen) {
  const std::string notebook = empty_notebook("opened.keen");
  const ServedProgram program({notebook, "--no-open"});

  const RawAnswer page = program.asked("GET /");
  const auto app = nlohmann::json::parse(program.asked("GET /api/v1/app").body);

  EXPECT_EQ(page.status, 200);
  EXPECT_THAT(page.body, HasSubstr("<title>Keenfall</title>"));
  EXPECT_EQ(app["notebook"]["name"], "opened.keen");
  EXPECT_EQ(app["notebook"]["path"], notebook);
}

TEST(KeenfallOpen, AnswersItsApiToNobodyWithoutTheKey) {
  const ServedProgram program({"--no-open"});

  const RawAnswer answer =
      server::testing::answer_to(program.port(), request_of("GET /api/v1/app", program.port()));

  EXPECT_EQ(answer.status, 401);
}

TEST(KeenfallOpen, ListensAtTheLoopbackAddressAndAtNoOther) {
  const ServedProgram program({});

  EXPECT_THAT(listening_addresses(program.process()), ElementsAre("0100007F"));  // 127.0.0.1
}

TEST(KeenfallOpen, ServesTwiceAtOnceUnderTwoPortsAndTwoKeys) {
  const ServedProgram one({});
  const ServedProgram other({});

  EXPECT_NE(one.port(), other.port());
  EXPECT_NE(one.key(), other.key());
  EXPECT_EQ(one.asked("GET /api/v1/app").status, 200);
  EXPECT_EQ(other.asked("GET /api/v1/app").status, 200);
}

TEST(KeenfallOpen, LeavesTheNotebookToCommandsBesideIt) {
  const std::string notebook = empty_notebook("beside.keen");
  const ServedProgram program({notebook});

  const Said taken = keenfall({"take", notebook, a_table("beside.csv", readings_of(2))});

  EXPECT_EQ(taken.exit_code, 0) << taken.err;
}

class ASignal : public ::testing::TestWithParam<int> {};

TEST_P(ASignal, EndsItCleanlyWhileNobodyAsks) {
  ServedProgram program({});

  const auto ended = program.ended_by(GetParam());

  EXPECT_EQ(ended.exit_code, 0);
  EXPECT_EQ(ended.out, "Stopped.\n");
  EXPECT_LT(ended.took, 2s);
}

TEST_P(ASignal, EndsItCleanlyWhileConnectionsAreIdleAndRequestsHalfSent) {
  ServedProgram program({});
  std::vector<RawClient> clients;
  for (int i = 0; i < 50; ++i) {
    clients.emplace_back(program.port());
    if (i % 2 == 0) clients.back().say("GET /api/v1/app HTTP/1.1\r\nHo");
  }
  EXPECT_EQ(program.asked("GET /").status, 200);

  const auto ended = program.ended_by(GetParam());

  EXPECT_EQ(ended.exit_code, 0);
  EXPECT_LT(ended.took, 2s);
}

INSTANTIATE_TEST_SUITE_P(KeenfallOpens, ASignal, ::testing::Values(SIGINT, SIGTERM, SIGHUP));

// A table of so many runs, as a page sends it.
std::string table_to_take(int runs) {
  std::string text = "blade,medium,run,cuts,reading,kind\n";
  for (int run = 0; run < runs; ++run) {
    for (int cuts = 0; cuts < 8; ++cuts) {
      text += "A,sisal," + std::to_string(run) + "," + std::to_string(cuts * 10) + "," +
              std::to_string(100 + cuts * 12) + " g,thread_push\n";
    }
  }
  return nlohmann::json{{"sources", {{{"name", "large.csv"}, {"text", text}}}}}.dump();
}

// Those who end programs do not ask once: a system that shuts down, a window that is closed.
TEST(KeenfallOpen, EndsInTimeWhileItIsBusyHoweverOftenItIsAsked) {
  const std::string notebook = empty_notebook("busy.keen");
  const std::string body = table_to_take(20'000);
  ServedProgram program({notebook});
  RawClient client(program.port());
  client.say(request_of("POST /api/v1/tables/take",
                        program.port(),
                        "X-Keenfall-Key: " + program.key() +
                            "\r\nContent-Length: " + std::to_string(body.size()) + "\r\n",
                        body));
  std::this_thread::sleep_for(300ms);  // it has begun

  kill(program.process(), SIGTERM);
  std::this_thread::sleep_for(50ms);
  const auto ended = program.ended_by(SIGTERM);

  EXPECT_EQ(ended.exit_code, 0);
  EXPECT_THAT(ended.out, ::testing::StartsWith("Stopped."));
  EXPECT_LT(ended.took, 5s);
}

TEST(KeenfallOpen, EndsOnceItIsStoppedFromItsPagesAndAnswersThem) {
  const std::string notebook = empty_notebook("stopped.keen");
  ServedProgram program({notebook});

  const RawAnswer answer = program.asked("POST /api/v1/stop");
  const auto ended = program.ended();

  EXPECT_EQ(answer.status, 200);
  EXPECT_THAT(answer.body, HasSubstr(notebook));
  EXPECT_EQ(ended.exit_code, 0);
  EXPECT_EQ(ended.out, "Stopped.\n");
  EXPECT_LT(ended.took, 2s);
}

TEST(KeenfallOpen, IsNotStoppedWithoutTheKey) {
  const ServedProgram program({});

  const RawAnswer answer = server::testing::answer_to(
      program.port(), request_of("POST /api/v1/stop", program.port(), "Content-Length: 0\r\n"));

  EXPECT_EQ(answer.status, 401);
  EXPECT_EQ(program.asked("GET /api/v1/app").status, 200);
}

// As a login makes it: for one user alone, and emptied.
std::string runtime_folder(const std::string& name) {
  std::filesystem::path folder = scratch(name);
  std::filesystem::remove_all(folder);
  std::filesystem::create_directory(folder);
  std::filesystem::permissions(folder, std::filesystem::perms::owner_all);
  return folder.string();
}

TEST(KeenfallOpen, SaysWhereTheNotebookIsOpenAlreadyAndEnds) {
  const std::string notebook = empty_notebook("open-already.keen");
  const std::string folder = runtime_folder("signs");
  const ServedProgram program({notebook}, folder);

  const Said second =
      run({.program = KEENFALL_PROGRAM,
           .words = {"open", notebook},
           .environment = {{"XDG_RUNTIME_DIR", folder}, {"DISPLAY", ""}, {"WAYLAND_DISPLAY", ""}}});

  EXPECT_EQ(second.exit_code, 0) << second.err;
  EXPECT_THAT(second.out,
              HasSubstr("http://127.0.0.1:" + std::to_string(program.port()) +
                        "/#key=" + program.key() + "\n"));
}

TEST(KeenfallOpen, DoesNotBelieveInOneThatWasKilled) {
  const std::string notebook = empty_notebook("killed.keen");
  const std::string folder = runtime_folder("signs-left");
  ServedProgram first({notebook}, folder);
  (void)first.ended_by(SIGKILL);
  ASSERT_FALSE(std::filesystem::is_empty(folder + "/keenfall"));

  const ServedProgram second({notebook}, folder);

  EXPECT_EQ(second.asked("GET /api/v1/app").status, 200);
}

TEST(KeenfallOpen, SaysHowToMakeANotebookThatIsNotThere) {
  const Said said = keenfall({"open", scratch("nowhere.keen").string(), "--no-open"});

  EXPECT_EQ(said.exit_code, 4);
  EXPECT_THAT(said.err, HasSubstr("keenfall new makes one"));
}

// A window whose program has ended is gone: what went wrong would be with it.
TEST(KeenfallOpen, KeepsAWindowOfItsOwnUntilWhatIsWrongHasBeenRead) {
  const std::string damaged = scratch("damaged.keen").string();
  std::ofstream(damaged) << "no notebook";

  const Said said = run({.program = KEENFALL_PROGRAM,
                         .words = {"open", damaged, "--own-window"},
                         .on_a_terminal = true,
                         .interrupt_at = "Press Enter to close this window."});

  EXPECT_EQ(said.exit_code, 4);
  EXPECT_THAT(said.out, HasSubstr("damaged.keen"));
}

}  // namespace
}  // namespace keenfall::journeys
