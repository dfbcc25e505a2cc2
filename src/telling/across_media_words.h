// What is said of blades across the media they were cut in: a sentence or two with the answers, and
// a section with the rest.
#pragma once

#include "telling/section.h"
#include "verdicts/judgement.h"

#include <optional>
#include <vector>

namespace keenfall::telling {

// "The gap between the blades closes on uplifted matting: ..."; none where media are not compared.
[[nodiscard]] std::vector<Sentence> across_media_sentences(const verdicts::Judgement& judgement);

// Lasting from medium to medium, interactions, orders; absent where media are not compared.
[[nodiscard]] std::optional<Section> across_media_section(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
