#include "server/works.h"

#include "server/failure.h"
#include "server/key.h"

#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <deque>
#include <list>
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

namespace keenfall::server {

namespace {

double seconds_by_the_steady_clock() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

}  // namespace

std::optional<double> seconds_left(double seconds_so_far, double fraction_done) {
  constexpr double kSoonest = 0.5;
  constexpr double kLeast = 0.02;
  if (seconds_so_far < kSoonest || fraction_done < kLeast) return std::nullopt;
  return std::max(0.0, seconds_so_far * (1 - fraction_done) / fraction_done);
}

struct Works::One {
  std::string id;
  LongWork work;
  wire::WorkState state = wire::WorkState::waiting;
  base::Progress progress;
  bool is_to_stop = false;
  double began_at_s = 0;
  std::vector<base::Problem> problems;
  std::string failure;
  HttpResponse result;

  [[nodiscard]] bool has_ended() const {
    return state != wire::WorkState::waiting && state != wire::WorkState::running;
  }
};

struct Works::Inside {
  using WorkShared = std::shared_ptr<One>;

  Rules rules;
  mutable std::mutex mutex;  // guards all that follows, and every one of them
  std::condition_variable something_to_do;
  std::list<WorkShared> all;  // the oldest first
  std::deque<WorkShared> waiting;
  bool is_stopping = false;
  std::vector<std::thread> threads;

  explicit Inside(Rules the_rules) : rules(std::move(the_rules)) {
    if (!rules.seconds_now) rules.seconds_now = seconds_by_the_steady_clock;
    for (std::size_t i = 0; i < std::max<std::size_t>(rules.at_once, 1); ++i) {
      threads.emplace_back([this] { work_on(); });
    }
  }

  void work_on() {
    for (;;) {
      std::unique_lock lock(mutex);
      something_to_do.wait(lock, [this] { return is_stopping || !waiting.empty(); });
      if (is_stopping) return;
      const WorkShared one = waiting.front();
      waiting.pop_front();
      one->state = wire::WorkState::running;
      one->began_at_s = rules.seconds_now();
      lock.unlock();
      finish(*one);
    }
  }

  // Once it is to stop, what it still says is not taken over.
  bool report(One& one, const base::Progress& progress) {
    const std::lock_guard lock(mutex);
    if (one.is_to_stop) return false;
    one.progress.fraction_done =
        std::clamp(progress.fraction_done, one.progress.fraction_done, 1.0);
    if (!progress.stage.empty()) one.progress.stage = progress.stage;
    return true;
  }

  void finish(One& one) {
    base::ResultOrProblems<HttpResponse> made = HttpResponse();
    const auto failure = failure_of([&] {
      made = one.work(base::threads(rules.threads_each),
                      [&](const base::Progress& progress) { return report(one, progress); });
    });
    LongWork done_with;
    const std::lock_guard lock(mutex);
    std::swap(done_with, one.work);
    if (failure) {
      one.state = wire::WorkState::failed;
      one.failure = failure->sentence;
    } else if (made && !one.is_to_stop) {
      one.state = wire::WorkState::done;
      one.progress.fraction_done = 1;
      one.result = std::move(*made);
    } else {
      one.state = one.is_to_stop ? wire::WorkState::cancelled : wire::WorkState::failed;
      if (!made) one.problems = std::move(made.error());
    }
    forget_the_oldest();
  }

  void forget_the_oldest() {
    std::size_t ended = 0;
    std::size_t bytes = 0;
    for (auto at = all.rbegin(); at != all.rend();) {
      ++at;
      const auto here = at.base();
      if (!(*here)->has_ended()) continue;
      ++ended;
      bytes += (*here)->result.body.size();
      const bool is_kept = ended == 1 || (ended <= rules.kept && bytes <= rules.kept_bytes);
      if (!is_kept) at = std::make_reverse_iterator(all.erase(here));
    }
  }

  void cancel(One& one) {
    if (one.state == wire::WorkState::waiting) {
      std::erase_if(waiting, [&](const WorkShared& other) { return other.get() == &one; });
      one.state = wire::WorkState::cancelled;
      one.work = nullptr;
    } else if (one.state == wire::WorkState::running) {
      one.is_to_stop = true;
      one.progress.stage = "stopping";
    }
  }

  [[nodiscard]] WorkShared found(const std::string& id) const {
    const auto at = std::ranges::find(all, id, [](const WorkShared& one) { return one->id; });
    return at == all.end() ? nullptr : *at;
  }

  [[nodiscard]] wire::WorkTold told(const One& one) const {
    wire::WorkTold told{.id = one.id,
                        .state = one.state,
                        .words = one.progress.stage,
                        .fraction = one.progress.fraction_done,
                        .problems = one.problems,
                        .failure = one.failure};
    if (one.state == wire::WorkState::running && !one.is_to_stop) {
      told.seconds_left = seconds_left(rules.seconds_now() - one.began_at_s, told.fraction);
    }
    if (one.state == wire::WorkState::done) told.result = "/api/v1/works/" + one.id + "/result";
    return told;
  }

  void stop() {
    {
      const std::lock_guard lock(mutex);
      is_stopping = true;
      for (const WorkShared& one : all) cancel(*one);
    }
    something_to_do.notify_all();
    for (std::thread& thread : threads) {
      if (thread.joinable()) thread.join();
    }
  }
};

Works::Works() : Works(Rules{}) {}

Works::Works(const Rules& rules) : inside_(std::make_unique<Inside>(rules)) {}

Works::~Works() { stop(); }

std::string Works::start(const std::string& words, LongWork work) {
  const auto one = std::make_shared<One>();
  one->id = random_key();
  one->work = std::move(work);
  one->progress.stage = words;
  {
    const std::lock_guard lock(inside_->mutex);
    inside_->all.push_back(one);
    if (inside_->is_stopping) {
      one->state = wire::WorkState::cancelled;
    } else {
      inside_->waiting.push_back(one);
    }
  }
  inside_->something_to_do.notify_one();
  return one->id;
}

std::optional<wire::WorkTold> Works::told(const std::string& id) const {
  const std::lock_guard lock(inside_->mutex);
  const auto one = inside_->found(id);
  if (!one) return std::nullopt;
  return inside_->told(*one);
}

std::optional<wire::WorkTold> Works::cancel(const std::string& id) {
  const std::lock_guard lock(inside_->mutex);
  const auto one = inside_->found(id);
  if (!one) return std::nullopt;
  inside_->cancel(*one);
  return inside_->told(*one);
}

std::optional<HttpResponse> Works::result(const std::string& id) const {
  const std::lock_guard lock(inside_->mutex);
  const auto one = inside_->found(id);
  if (!one || one->state != wire::WorkState::done) return std::nullopt;
  return one->result;
}

void Works::stop() { inside_->stop(); }

}  // namespace keenfall::server
