// Long work: begun by a request, asked after by others, and stopped by one, while requests go on.
//
// Work waits in line and is done by threads of its own, a few at once. It is told with words and a
// fraction as its progress reports say. What ended is kept until newer work takes its place.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "server/http_message.h"
#include "wire/work_json.h"

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>

namespace keenfall::server {

// Returns the answer that GET .../result will give. It is to report its progress often, since that
// is where it learns that it shall stop; it then fails with a problem of the kind `interrupted`.
// What it still makes after it was asked to stop is not kept.
using LongWork = std::function<base::ResultOrProblems<HttpResponse>(const base::Executor&,
                                                                    const base::ProgressReport&)>;

// How long it will still take if it goes on as it went; nothing while that is guesswork (the first
// half second, the first fiftieth).
[[nodiscard]] std::optional<double> seconds_left(double seconds_so_far, double fraction_done);

class Works {
 public:
  struct Rules {
    std::size_t at_once = 2;
    std::size_t kept = 50;                                    // of those that ended
    std::size_t kept_bytes = std::size_t{128} * 1024 * 1024;  // of their results together
    unsigned threads_each = 1;                                // that one work may use
    std::function<double()> seconds_now = {};                 // empty: by the steady clock
  };

  Works();
  explicit Works(const Rules& rules);
  Works(const Works&) = delete;
  Works& operator=(const Works&) = delete;
  Works(Works&&) = delete;
  Works& operator=(Works&&) = delete;
  ~Works();  // stops

  // words: what is to be done, "judging the trial". Returns its id, which nobody can guess.
  std::string start(const std::string& words, LongWork work);

  // Nothing where there is no such work, or not any more.
  [[nodiscard]] std::optional<wire::WorkTold> told(const std::string& id) const;
  // What ended stays as it ended.
  std::optional<wire::WorkTold> cancel(const std::string& id);
  // Nothing unless it is done.
  [[nodiscard]] std::optional<HttpResponse> result(const std::string& id) const;

  // Cancels all, and returns when nothing is worked on any more. Nothing is begun afterwards.
  void stop();

 private:
  struct One;
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace keenfall::server
