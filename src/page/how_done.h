// What was cut with, what was cut, and how: blades, edges, media with their lots, who cut and when.
// Lengths in the unit that is told; readings say what they were recorded in.
#pragma once

#include "materials/told_in.h"
#include "page/html.h"
#include "trials/trial.h"

namespace keenfall::page {

// `is_planned`: what departs from a plan stands elsewhere; only what runs say of it is said here.
void add_how_done(Html& html,
                  const trials::Trial& trial,
                  const materials::ToldIn& told,
                  bool is_planned);

}  // namespace keenfall::page
