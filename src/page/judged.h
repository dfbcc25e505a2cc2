// What every part of a report's page needs of one judgement, and how its headings go.
#pragma once

#include "page/html.h"
#include "telling/report.h"
#include "telling/told.h"

#include <cstddef>
#include <functional>
#include <string_view>
#include <vector>

namespace keenfall::page {

struct Judged {
  const verdicts::Judgement& judgement;
  std::size_t index = 0;  // into the report's judgements
  telling::Told told;
  std::string_view heading = "h3";  // within a part: "h4" below the name of the kind of reading
};

[[nodiscard]] std::vector<Judged> judged_of(const telling::Report& report);

// What `add` puts into the page of each judgement; where there are several, under a heading that
// says whose it is. Of a judgement of which nothing is put there is none.
void add_each(Html& html,
              const std::vector<Judged>& all,
              const std::function<void(Html&, const Judged&)>& add);

}  // namespace keenfall::page
