#include "page/judged.h"

#include <string>
#include <utility>

namespace keenfall::page {

std::vector<Judged> judged_of(const telling::Report& report) {
  const bool several = report.judgements.size() > 1;
  std::vector<Judged> all;
  for (std::size_t i = 0; i < report.judgements.size(); ++i) {
    const verdicts::Judgement& judgement = report.judgements[i].judgement;
    all.push_back({.judgement = judgement,
                   .index = i,
                   .told = telling::told(judgement),
                   .heading = several ? "h4" : "h3"});
  }
  return all;
}

void add_each(Html& html,
              const std::vector<Judged>& all,
              const std::function<void(Html&, const Judged&)>& add) {
  for (const Judged& judged : all) {
    Html own;
    add(own, judged);
    const std::string text = std::move(own).taken();
    if (text.empty()) continue;
    if (all.size() > 1) html.element("h3", judged.told.title, {{"class", "kind"}});
    html.own(text);
  }
}

}  // namespace keenfall::page
