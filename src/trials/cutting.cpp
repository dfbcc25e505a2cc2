#include "trials/cutting.h"

#include "base/plain_number.h"

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

std::string in_words(const CutMethod& method) {
  std::string words = motion_in_words(method);
  const auto append = [&words](const std::string& link, const std::string& part) {
    if (!words.empty()) words += link;
    words += part;
  };
  if (method.cut_length_mm) append(" of ", base::plain_number(*method.cut_length_mm) + " mm");
  if (method.edge_used_mm) append(" on ", base::plain_number(*method.edge_used_mm) + " mm of edge");
  if (!method.board.empty()) append(" against ", method.board);
  return words;
}

}  // namespace keenfall::trials
