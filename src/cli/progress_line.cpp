#include "cli/progress_line.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace keenfall::cli {

namespace {

constexpr double kSilentSeconds = 1.0;
constexpr double kSecondsBetweenLines = 0.2;
constexpr double kEnoughToGoBy = 0.03;

std::string duration_words(double seconds) {
  constexpr double kSecondsPerMinute = 60;
  if (seconds < kSecondsPerMinute)
    return fmt::format("{:.0f} s", std::max(1.0, std::ceil(seconds)));
  return fmt::format("{:.0f} min", std::ceil(seconds / kSecondsPerMinute));
}

}  // namespace

std::string progress_words(const base::Progress& progress, double elapsed_s) {
  constexpr double kPercent = 100;
  const double done = std::clamp(progress.fraction_done, 0.0, 1.0);
  std::string words = fmt::format("{}: {:.0f} %", progress.stage, std::floor(kPercent * done));
  if (done >= kEnoughToGoBy) {
    words += ", about " + duration_words(elapsed_s * (1 - done) / done) + " left";
  }
  return words;
}

ProgressLine::ProgressLine(std::function<void(const std::string&)> write,
                           std::function<double()> seconds_now)
    : write_(std::move(write)), seconds_now_(std::move(seconds_now)), begun_s_(seconds_now_()) {}

void ProgressLine::show(const base::Progress& progress) {
  if (!write_) return;
  const std::scoped_lock lock(guard_);
  const double now_s = seconds_now_();
  if (now_s - begun_s_ < kSilentSeconds || now_s - shown_s_ < kSecondsBetweenLines) return;
  std::string words = progress_words(progress, now_s - begun_s_);
  const std::size_t length = words.size();
  if (length < shown_length_) words.append(shown_length_ - length, ' ');
  write_("\r" + words);
  shown_length_ = length;
  shown_s_ = now_s;
}

void ProgressLine::erase() {
  const std::scoped_lock lock(guard_);
  if (shown_length_ > 0) write_("\r" + std::string(shown_length_, ' ') + "\r");
  shown_length_ = 0;
}

}  // namespace keenfall::cli
