#include "materials/card_depth.h"

#include "base/plain_number.h"

#include <algorithm>
#include <string>

namespace keenfall::materials {

namespace {

constexpr double kLowestHrc = 56;
constexpr double kHighestHrc = 68;
constexpr double kLowestDeg = 20;
constexpr double kHighestDeg = 50;

// In mm per volume-%.
constexpr CarbideContent kArticle{.chromium_percent = 11.2,
                                  .chromium_vanadium_percent = 14.6,
                                  .mc_percent = 26.2,
                                  .m6c_percent = 9.5,
                                  .vanadium_nitride_percent = 20.9,
                                  .chromium_nitride_percent = 19.4,
                                  .cementite_percent = 5.0};
constexpr CarbideContent kBook{.chromium_percent = 11.4,
                               .chromium_vanadium_percent = 13.1,
                               .mc_percent = 25.1,
                               .m6c_percent = 14.1,
                               .vanadium_nitride_percent = 14.7,
                               .chromium_nitride_percent = 18.4,
                               .cementite_percent = 5};

double from_carbides(const CarbideContent& percent, const CarbideContent& mm_per_percent) {
  double mm = 0;
  for (const auto kind : {&CarbideContent::chromium_percent,
                          &CarbideContent::chromium_vanadium_percent,
                          &CarbideContent::mc_percent,
                          &CarbideContent::m6c_percent,
                          &CarbideContent::vanadium_nitride_percent,
                          &CarbideContent::chromium_nitride_percent,
                          &CarbideContent::cementite_percent}) {
    mm += percent.*kind * mm_per_percent.*kind;
  }
  return mm;
}

base::Result<double> refused(const std::string& sentence, const std::string& accepted) {
  return base::failed(
      {.kind = base::ProblemKind::unsuitable_data, .sentence = sentence, .accepted = accepted});
}

double* kind_of(CarbideContent& content, std::string_view type) {
  if (type == "M7C3" || type == "M23C6") return &content.chromium_percent;
  if (type == "MC") return &content.mc_percent;
  if (type == "M6C") return &content.m6c_percent;
  if (type == "M3C") return &content.cementite_percent;
  return nullptr;
}

base::Result<CarbideContentRange> content_of(std::string_view steel) {
  const auto found = find_steel(steel);
  if (!found) return base::failed(found.error());
  const auto content = carbide_content(found->steel);
  if (content) return *content;
  return base::failed({.kind = base::ProblemKind::unsuitable_data,
                       .sentence = "The table of steels does not say how much carbide of which "
                                   "kind " +
                                   std::string(found->steel.name) + " holds.",
                       .place = {.found = std::string(steel)}});
}

void widen(Span& span, double number) {
  span.lo = std::min(span.lo, number);
  span.hi = std::max(span.hi, number);
}

}  // namespace

base::Result<double> card_depth_mm(const CardTestEdge& edge, CardDepthForm form) {
  using base::plain_number;
  if (!(edge.hardness_hrc >= kLowestHrc && edge.hardness_hrc <= kHighestHrc)) {
    return refused("The card regression was fitted to other hardnesses than " +
                       plain_number(edge.hardness_hrc) + " HRC.",
                   "56 to 68 HRC");
  }
  if (!(edge.inclusive_angle_deg >= kLowestDeg && edge.inclusive_angle_deg <= kHighestDeg)) {
    return refused("The card regression was fitted to other angles than " +
                       plain_number(edge.inclusive_angle_deg) + "° inclusive.",
                   "20° to 50° inclusive");
  }
  const double mm =
      -157 + 15.8 * edge.hardness_hrc - 17.8 * edge.inclusive_angle_deg +
      from_carbides(edge.carbides, form == CardDepthForm::article_2018 ? kArticle : kBook);
  if (mm <= 0) {
    return refused("The card regression gives no depth for so soft and obtuse an edge.",
                   "a harder steel or a smaller angle");
  }
  return mm;
}

std::optional<CarbideContentRange> carbide_content(const Steel& steel) {
  if (steel.carbides.empty()) return std::nullopt;
  CarbideContentRange range;
  for (const CarbideShare& share : steel.carbides) {
    double* lo = kind_of(range.lo, share.type);
    double* hi = kind_of(range.hi, share.type);
    if (lo == nullptr || hi == nullptr) return std::nullopt;
    *lo += share.lo_percent;
    *hi += share.hi_percent;
  }
  return range;
}

base::Result<CardDepthsCompared> card_depths_compared(const CardTestBlade& a,
                                                      const CardTestBlade& b) {
  const auto content_a = content_of(a.steel);
  if (!content_a) return base::failed(content_a.error());
  const auto content_b = content_of(b.steel);
  if (!content_b) return base::failed(content_b.error());
  const bool is_one_steel = find_steel(a.steel)->steel.name == find_steel(b.steel)->steel.name;
  std::optional<CardDepthsCompared> all;
  for (const CardDepthForm form :
       {CardDepthForm::article_2018, CardDepthForm::book_second_edition}) {
    for (const auto end_a : {&CarbideContentRange::lo, &CarbideContentRange::hi}) {
      for (const auto end_b : {&CarbideContentRange::lo, &CarbideContentRange::hi}) {
        if (is_one_steel && end_a != end_b) continue;
        const auto mm_a =
            card_depth_mm({a.hardness_hrc, a.inclusive_angle_deg, *content_a.*end_a}, form);
        if (!mm_a) return base::failed(mm_a.error());
        const auto mm_b =
            card_depth_mm({b.hardness_hrc, b.inclusive_angle_deg, *content_b.*end_b}, form);
        if (!mm_b) return base::failed(mm_b.error());
        const double ratio = *mm_a / *mm_b;
        if (!all) all = {{*mm_a, *mm_a}, {*mm_b, *mm_b}, {ratio, ratio}};
        widen(all->a_mm, *mm_a);
        widen(all->b_mm, *mm_b);
        widen(all->ratio, ratio);
      }
    }
  }
  return *all;
}

}  // namespace keenfall::materials
