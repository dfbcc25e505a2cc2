// What is told, as JSON objects. Private to this folder (it shows the library).
#pragma once

#include "telling/told.h"
#include "wire/json_pieces.h"

namespace keenfall::wire {

[[nodiscard]] Json sentence_json(const telling::Sentence& sentence);
[[nodiscard]] Json sentences_json(const std::vector<telling::Sentence>& sentences);
[[nodiscard]] Json told_json(const telling::Told& told);

}  // namespace keenfall::wire
