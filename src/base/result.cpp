#include "base/result.h"

namespace keenfall::base {

namespace {

std::string place_in_words(const Place& place) {
  std::string words = place.file;
  const auto append = [&words](const std::string& part) {
    if (!words.empty()) words += ", ";
    words += part;
  };
  if (!place.cell.empty()) {
    append(place.cell);
    return words;
  }
  if (place.line) append("line " + std::to_string(*place.line));
  if (!place.column.empty()) append("column " + place.column);
  return words;
}

}  // namespace

std::string in_words(const Problem& problem) {
  std::string words = place_in_words(problem.place);
  if (!words.empty()) words += ": ";
  words += problem.sentence;
  const bool is_ended = words.empty() || words.ends_with('.') || words.ends_with('?');
  if (!is_ended) words += ".";
  if (!problem.accepted.empty()) words += " Accepted: " + problem.accepted + ".";
  return words;
}

}  // namespace keenfall::base
