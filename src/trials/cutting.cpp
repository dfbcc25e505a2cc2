#include "trials/cutting.h"

namespace keenfall::trials {

namespace {

std::string motion_in_words(const CutMethod& method) {
  switch (method.motion) {
    case Motion::push:
      return "push cut";
    case Motion::draw:
      return "draw cut";
    case Motion::slice:
      return "slice";
    case Motion::not_recorded:
      break;
  }
  return method.as_written;
}

}  // namespace

std::string in_words(const CutMethod& method, const materials::ToldIn& told) {
  std::string words = motion_in_words(method);
  const auto append = [&words](const std::string& link, const std::string& part) {
    if (!words.empty()) words += link;
    words += part;
  };
  if (method.cut_length_mm) append(" of ", length_words(*method.cut_length_mm, told));
  if (method.edge_used_mm) append(" on ", length_words(*method.edge_used_mm, told) + " of edge");
  if (!method.board.empty()) append(" against ", method.board);
  return words;
}

}  // namespace keenfall::trials
