#include "cli/bench_scale_text.h"

#include "base/plain_number.h"
#include "cli/text_layout.h"

#include <fmt/format.h>

#include <cstddef>

namespace keenfall::cli {

namespace {

constexpr int kSentenceIndent = 2;
constexpr int kReadingColumns = 14;
constexpr int kStabilityColumns = 10;

std::string stability_words(scale::Stability stability) {
  switch (stability) {
    case scale::Stability::stable:
      return "stable";
    case scale::Stability::unstable:
      return "unstable";
    case scale::Stability::not_said:
      return "";
  }
  return "";
}

std::string quoted(const std::string& line) { return "\"" + line + "\""; }

std::string reading_line(const scale::Reading& reading, const Look& look) {
  const std::string shown =
      reading.number ? base::with_decimals(*reading.number, reading.decimals) + " " + reading.unit
                     : std::string("overload");
  return fitted(shown, kReadingColumns, Side::right, look) + "  " +
         fitted(stability_words(reading.stability), kStabilityColumns, Side::left, look) +
         quoted(reading.line) + "\n";
}

std::string refusal_text(const base::Problem& problem, const Look& look) {
  const std::string sentence =
      "Not read: " + quoted(problem.place.found) + ": " + problem.sentence +
      (problem.accepted.empty() ? "" : " (wanted: " + problem.accepted + ")");
  return wrapped(shown_as(sentence + ".", look), {.rest = kSentenceIndent}, look);
}

std::string connection_words(const scale::ScaleState& before, const scale::ScaleState& now) {
  switch (now.connection) {
    case scale::Connection::cannot_open:
      return "";
    case scale::Connection::listening:
      return before.connection == scale::Connection::unplugged ? "The device is back." : "";
    case scale::Connection::hearing:
      return before.connection == scale::Connection::silent ? "The scale sends again." : "";
    case scale::Connection::silent:
      return "The scale sends nothing. It may be switched off, send only when its print key is "
             "pressed, or be set to another speed.";
    case scale::Connection::unplugged:
      return "The device is gone: unplugged, or its adapter lost power. It is tried again every "
             "second.";
  }
  return "";
}

std::string trouble_text(const scale::ScaleState& before, const scale::ScaleState& now) {
  const bool is_another = now.problem && now.problem != before.problem;
  const bool is_only_unplugged = now.problem && now.problem->sentence == "there is no such device";
  return is_another && !is_only_unplugged
             ? "It cannot be opened yet: " + in_words(*now.problem) + "."
             : "";
}

// A value that the scale itself calls stable needs no others.
std::string settled_words(std::size_t samples) {
  return samples == 1 ? std::string() : fmt::format(", {} values that agree", samples);
}

std::string sentence_line(const std::string& words, const Look& look) {
  return words.empty() ? "" : wrapped(shown_as(words, look), {.rest = kSentenceIndent}, look);
}

}  // namespace

std::string scale_news_text(const scale::ScaleState& before,
                            const scale::ScaleState& now,
                            const Look& look) {
  std::string text;
  if (now.connection != before.connection) {
    text += sentence_line(connection_words(before, now), look);
  }
  text += sentence_line(trouble_text(before, now), look);
  const bool is_another_line =
      now.newest && (!before.newest || now.newest->reading != before.newest->reading);
  if (is_another_line) text += reading_line(now.newest->reading, look);
  if (now.newest_refusal && now.lines_refused != before.lines_refused &&
      now.newest_refusal != before.newest_refusal) {
    text += refusal_text(*now.newest_refusal, look);
  }
  if (now.hold_trouble != before.hold_trouble) text += sentence_line(now.hold_trouble, look);
  return text;
}

std::string held_text(const scale::HeldReading& held, const Look& look) {
  const bool is_press = held.kind == scale::HoldKind::peak;
  std::string words = is_press ? "Peak of the press: " : "Settled: ";
  words += base::plain_number(held.number) + " " + held.unit;
  words += is_press ? fmt::format(", with {} value{} above half of it",
                                  held.samples,
                                  held.samples == 1 ? "" : "s")
                    : settled_words(held.samples);
  constexpr int kFigures = 2;
  if (held.peak && held.peak->rise_per_s) {
    words += ", rising by " + base::with_figures(*held.peak->rise_per_s, kFigures) + " " +
             held.unit + " a second";
  }
  words += "." + (held.note.empty() ? std::string() : " " + held.note);
  return sentence_line(words, look);
}

}  // namespace keenfall::cli
