// Every run that was cut, with what was struck out, voided, noticed and departed from.
#pragma once

#include "page/html.h"
#include "verdicts/judgement.h"

#include <cstddef>

namespace keenfall::page {

// The runs of one judgement. Each row carries the run's key, "0:4", by which the script finds it in
// the pictures.
void add_run_list(Html& html, const verdicts::Judgement& judgement, std::size_t judgement_index);

}  // namespace keenfall::page
