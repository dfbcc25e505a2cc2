#include "trials/edge.h"

#include "base/plain_number.h"

namespace keenfall::trials {

std::string in_words(const EdgePreparation& edge, const materials::ToldIn& told) {
  std::string words;
  const auto append = [&words](const std::string& part) {
    if (!words.empty()) words += ", ";
    words += part;
  };
  if (edge.bevel_angle) append(base::plain_number(edge.bevel_angle->deg) + "° per side");
  if (edge.apex_angle) append(base::plain_number(edge.apex_angle->deg) + "° per side at the apex");
  if (!edge.finish.empty()) append(edge.finish);
  if (edge.thickness_behind_edge_mm) {
    append(length_words(*edge.thickness_behind_edge_mm, told) + " behind the edge");
  }
  return words;
}

}  // namespace keenfall::trials
