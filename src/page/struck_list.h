// The readings and edge lives of a judgement that are struck out or doubtful, each with its reason.
#pragma once

#include "page/html.h"
#include "telling/report.h"

#include <cstddef>

namespace keenfall::page {

// judgement_index: into the report's judgements. Adds nothing where there is none.
void add_struck_list(Html& html, const telling::Report& report, std::size_t judgement_index);

}  // namespace keenfall::page
