// The parts of a report's page, each as what stands under its heading; nothing where there is
// nothing to say. docs/report.md lists them.
#pragma once

#include "page/html.h"
#include "page/judged.h"
#include "telling/report.h"

#include <string>
#include <vector>

namespace keenfall::page {

void add_answer(Html& html, const telling::Report& report, const std::vector<Judged>& all);
void add_pictures(Html& html, const telling::Report& report, const std::vector<Judged>& all);
void add_else(Html& html, const telling::Report& report, const std::vector<Judged>& all);
void add_runs(Html& html, const telling::Report& report, const std::vector<Judged>& all);
void add_limits(Html& html, const telling::Report& report, const std::vector<Judged>& all);
void add_done(Html& html, const telling::Report& report, const std::vector<Judged>& all);
void add_calculated(Html& html, const telling::Report& report, const std::vector<Judged>& all);

// csv: the trial's table.
void add_data(Html& html, const telling::Report& report, const std::string& csv);

}  // namespace keenfall::page
