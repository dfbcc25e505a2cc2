// What is said of blades across the media they were cut in: a sentence or two with the answers, and
// a section with the rest.
#pragma once

#include "cli/look.h"
#include "verdicts/judgement.h"

#include <string>

namespace keenfall::cli {

// "The gap between the blades closes on uplifted matting: ..."; empty where media are not compared.
[[nodiscard]] std::string across_media_sentences(const verdicts::Judgement& judgement,
                                                 const Look& look);

// Lasting from medium to medium, interactions, orders; empty where media are not compared.
[[nodiscard]] std::string across_media_section(const verdicts::Judgement& judgement,
                                               const Look& look);

}  // namespace keenfall::cli
