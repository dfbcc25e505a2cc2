#include "server/works.h"

#include "workbench/notebook_trouble.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <future>
#include <optional>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

namespace keenfall::server {
namespace {

using ::testing::ElementsAre;
using wire::WorkState;

// Work that goes on until it is let go or told to stop.
class HeldWork {
 public:
  [[nodiscard]] LongWork work() {
    return [this](const base::Executor&,
                  const base::ProgressReport& report) -> base::ResultOrProblems<HttpResponse> {
      began_.set_value();
      while (!is_let_go_) {
        if (!report({.fraction_done = 0.25, .stage = "fitting the curves"})) {
          return base::failed_by(
              {.kind = base::ProblemKind::interrupted, .sentence = "It was stopped."});
        }
        std::this_thread::yield();
      }
      return HttpResponse{.content_type = "text/plain", .body = "made"};
    };
  }
  void wait_until_it_began() { began_.get_future().wait(); }
  void let_go() { is_let_go_ = true; }

 private:
  std::promise<void> began_;
  std::atomic<bool> is_let_go_{false};
};

// Asks after it until it is in that state.
wire::WorkTold once(const Works& works, const std::string& id, WorkState state) {
  for (;;) {
    auto told = works.told(id);
    if (!told) throw std::runtime_error("there is no such work");
    if (told->state == state) return *told;
    std::this_thread::yield();
  }
}

LongWork giving(const std::string& body) {
  return [body](const base::Executor&,
                const base::ProgressReport&) -> base::ResultOrProblems<HttpResponse> {
    return HttpResponse{.body = body};
  };
}

TEST(Works, AreDoneAndHaveAResult) {
  Works works;

  const std::string id = works.start("judging", giving("made"));
  const auto told = once(works, id, WorkState::done);

  EXPECT_EQ(told.fraction, 1);
  EXPECT_EQ(told.result, "/api/v1/works/" + id + "/result");
  EXPECT_EQ(works.result(id)->body, "made");
}

TEST(Works, ToldWhileTheyRunSayWhatTheyDoAndHowFarTheyAre) {
  std::atomic<double> now_s{100};
  HeldWork held;
  Works works({.seconds_now = [&] { return now_s.load(); }});
  const std::string id = works.start("judging", held.work());
  held.wait_until_it_began();
  now_s = 110;
  while (works.told(id)->fraction == 0) std::this_thread::yield();

  const auto told = works.told(id);

  EXPECT_EQ(told->state, WorkState::running);
  EXPECT_EQ(told->words, "fitting the curves");
  EXPECT_EQ(told->fraction, 0.25);
  EXPECT_DOUBLE_EQ(told->seconds_left.value(), 30);  // a quarter took 10 s
  EXPECT_FALSE(works.result(id));
  held.let_go();
}

TEST(Works, RunTwoAtOnceAndTheOthersInTurn) {
  std::vector<HeldWork> held(2);
  Works works;
  std::vector<std::string> ids;
  for (HeldWork& one : held) ids.push_back(works.start("held", one.work()));
  for (HeldWork& one : held) one.wait_until_it_began();

  const std::string third = works.start("in line", giving("third"));
  const auto told = works.told(third);

  EXPECT_EQ(told->state, WorkState::waiting);
  EXPECT_EQ(told->words, "in line");
  held[0].let_go();
  EXPECT_EQ(once(works, third, WorkState::done).fraction, 1);
  held[1].let_go();
}

TEST(Works, CanBeStoppedWhileTheyRun) {
  HeldWork held;
  Works works;
  const std::string id = works.start("held", held.work());
  held.wait_until_it_began();

  EXPECT_EQ(works.cancel(id)->words, "stopping");

  const auto told = once(works, id, WorkState::cancelled);
  EXPECT_EQ(told.problems.front().sentence, "It was stopped.");
  EXPECT_FALSE(works.result(id));
}

TEST(Works, AreStoppedEvenWhereTheyLearnOfItTooLate) {
  std::promise<void> began;
  std::promise<void> let_go;
  Works works;
  const std::string id =
      works.start("judging",
                  [&](const base::Executor&,
                      const base::ProgressReport&) -> base::ResultOrProblems<HttpResponse> {
                    began.set_value();
                    let_go.get_future().wait();
                    return HttpResponse{.body = "made"};
                  });
  began.get_future().wait();
  EXPECT_EQ(works.cancel(id)->words, "stopping");
  let_go.set_value();

  works.stop();

  EXPECT_EQ(works.told(id)->state, WorkState::cancelled);
  EXPECT_FALSE(works.result(id));
}

TEST(Works, CanBeStoppedBeforeTheyRun) {
  HeldWork held;
  Works works({.at_once = 1});
  works.start("held", held.work());
  held.wait_until_it_began();
  bool is_begun = false;
  const std::string id =
      works.start("in line",
                  [&](const base::Executor&,
                      const base::ProgressReport&) -> base::ResultOrProblems<HttpResponse> {
                    is_begun = true;
                    return HttpResponse{};
                  });

  EXPECT_EQ(works.cancel(id)->state, WorkState::cancelled);
  held.let_go();
  works.stop();

  EXPECT_FALSE(is_begun);
}

TEST(Works, StayAsTheyEndedWhenTheyAreStoppedLater) {
  Works works;
  const std::string id = works.start("judging", giving("made"));
  once(works, id, WorkState::done);

  EXPECT_EQ(works.cancel(id)->state, WorkState::done);
  EXPECT_EQ(works.result(id)->body, "made");
}

TEST(Works, SayWhyTheyFailed) {
  Works works;
  const std::string refused =
      works.start("judging",
                  [](const base::Executor&,
                     const base::ProgressReport&) -> base::ResultOrProblems<HttpResponse> {
                    return base::failed_by({.sentence = "There is nothing to judge."});
                  });
  const std::string thrown =
      works.start("judging",
                  [](const base::Executor&,
                     const base::ProgressReport&) -> base::ResultOrProblems<HttpResponse> {
                    throw workbench::NotebookTrouble("a.keen: The disk is full.");
                  });

  EXPECT_EQ(once(works, refused, WorkState::failed).problems.front().sentence,
            "There is nothing to judge.");
  EXPECT_EQ(once(works, thrown, WorkState::failed).failure, "a.keen: The disk is full.");
}

TEST(Works, AreForgottenWhenNewerOnesEnded) {
  Works works({.kept = 2});
  std::vector<std::string> ids;
  for (const char* body : {"1", "2", "3"}) {
    ids.push_back(works.start("judging", giving(body)));
    once(works, ids.back(), WorkState::done);
  }

  EXPECT_FALSE(works.told(ids[0]));
  EXPECT_EQ(works.result(ids[1])->body, "2");
  EXPECT_EQ(works.result(ids[2])->body, "3");
}

TEST(Works, KeepTheNewestResultHoweverLargeAndNoOtherBesideIt) {
  Works works({.kept_bytes = 10});
  const std::string first = works.start("judging", giving("first"));
  once(works, first, WorkState::done);
  const std::string large = works.start("judging", giving(std::string(100, 'x')));
  once(works, large, WorkState::done);

  EXPECT_FALSE(works.told(first));
  EXPECT_EQ(works.result(large)->body.size(), 100U);
}

TEST(Works, OfAnUnknownIdAreNone) {
  Works works;

  EXPECT_FALSE(works.told("nothing"));
  EXPECT_FALSE(works.cancel("nothing"));
  EXPECT_FALSE(works.result("nothing"));
}

TEST(Works, ThatAreStoppedAllTogetherBeginNothingMore) {
  HeldWork held;
  Works works;
  const std::string running = works.start("held", held.work());
  held.wait_until_it_began();

  works.stop();
  const std::string later = works.start("judging", giving("made"));

  EXPECT_EQ(works.told(running)->state, WorkState::cancelled);
  EXPECT_EQ(works.told(later)->state, WorkState::cancelled);
}

TEST(Works, AreAskedAfterByManyWhileTheyRun) {
  Works works({.at_once = 2, .kept = 80});
  std::vector<std::thread> people;
  std::atomic<int> seen_done{0};
  for (int person = 0; person < 4; ++person) {
    people.emplace_back([&] {
      for (int i = 0; i < 20; ++i) {
        const std::string id = works.start("judging", giving("made"));
        once(works, id, WorkState::done);
        ++seen_done;
        (void)works.cancel(id);
      }
    });
  }
  for (std::thread& person : people) person.join();

  EXPECT_EQ(seen_done, 80);
}

TEST(TheTimeLeft, IsWhatTheRestTakesAtTheSamePace) {
  EXPECT_DOUBLE_EQ(seconds_left(10, 0.5).value(), 10);
  EXPECT_DOUBLE_EQ(seconds_left(10, 0.8).value(), 2.5);
  EXPECT_DOUBLE_EQ(seconds_left(10, 1).value(), 0);
}

TEST(TheTimeLeft, IsNotGuessedAtTheBeginning) {
  EXPECT_FALSE(seconds_left(0.2, 0.5));
  EXPECT_FALSE(seconds_left(10, 0.01));
  EXPECT_FALSE(seconds_left(10, 0));
}

}  // namespace
}  // namespace keenfall::server
