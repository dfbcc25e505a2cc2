// What was cut with, what was cut, and how: blades, edges, media with their lots, who cut and when.
// Lengths in the unit that is told; readings say what they were recorded in.
#pragma once

#include "materials/told_in.h"
#include "page/html.h"
#include "trials/trial.h"

namespace keenfall::page {

void add_how_done(Html& html, const trials::Trial& trial, const materials::ToldIn& told);

}  // namespace keenfall::page
