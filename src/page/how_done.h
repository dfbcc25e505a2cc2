// What was cut with, what was cut, and how: blades, edges, media with their lots, who cut and when.
#pragma once

#include "page/html.h"
#include "trials/trial.h"

namespace keenfall::page {

void add_how_done(Html& html, const trials::Trial& trial);

}  // namespace keenfall::page
