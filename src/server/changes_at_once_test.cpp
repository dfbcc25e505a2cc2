// Changes that are asked for at the same time: each waits for the one before.
#include "server/asked_app_test.h"

#include <set>
#include <thread>
#include <vector>

namespace keenfall::server {
namespace {

using testing::json;

class ChangesAtOnce : public testing::AskedApp {
 protected:
  ChangesAtOnce() : AskedApp(std::chrono::minutes(1)) {}
};

TEST_F(ChangesAtOnce, AreMadeOneAfterAnother) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  constexpr int kEach = 3;
  const std::vector<std::string> names = {"A", "B", "C", "D"};
  std::vector<std::vector<int>> statuses(names.size());
  std::vector<std::thread> tabs;
  for (std::size_t tab = 0; tab < names.size(); ++tab) {
    tabs.emplace_back([&, tab] {
      for (int i = 0; i < kEach; ++i) {
        const json blade = {{"name", names[tab] + std::to_string(i)}};
        statuses[tab].push_back(asked("POST", "/kit/blades", blade.dump()).status);
      }
    });
  }
  for (std::thread& tab : tabs) tab.join();

  for (const auto& of_tab : statuses) EXPECT_EQ(of_tab, std::vector<int>(kEach, 201));
  EXPECT_EQ(got("GET", "/kit", "Kit")["blades"].size(), names.size() * kEach);
}

TEST_F(ChangesAtOnce, WaitForACommandThatWrites) {
  const std::string path =
      got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}})["notebook"]["path"];
  auto being_written = std::make_optional(
      *workbench::opened_to_write(path, {.who = "M.", .machine_words = "bench-3"}));
  std::thread command([&] {
    std::this_thread::sleep_for(std::chrono::milliseconds(200));
    being_written.reset();
  });

  (void)got("POST", "/kit/blades", "Kit", {{"name", "A"}});
  command.join();
}

}  // namespace
}  // namespace keenfall::server
