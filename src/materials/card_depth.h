// How much silica-loaded card an edge would cut in a whole test, by a published regression.
//
//   mm = -157 + 15.8 HRC - 17.8 A + sum of a coefficient times volume-% for each kind of carbide
// A is the inclusive angle in degrees. Source: Thomas 2018 (article) and the same author's book,
// second edition, with other coefficients; both read second hand, in quotations. Single steels lie
// up to some 140 mm from it. It is card depth of one kind of machine test: neither cuts nor half
// keenness, and it knows nothing of grit, toughness or chips. docs/methods/predicted-ratio.md
//
// Valid, by our own judgement of how it was fitted (about 15 degrees per side), from 56 to 68 HRC
// and from 20 to 50 degrees inclusive; nothing is said outside.
#pragma once

#include "base/result.h"
#include "materials/steels.h"

#include <optional>
#include <string_view>

namespace keenfall::materials {

// Volume-%, of the hardened steel.
struct CarbideContent {
  double chromium_percent = 0;           // M7C3, M23C6
  double chromium_vanadium_percent = 0;  // (Cr,V)7C3
  double mc_percent = 0;                 // of V, Nb, W
  double m6c_percent = 0;
  double vanadium_nitride_percent = 0;
  double chromium_nitride_percent = 0;
  double cementite_percent = 0;  // M3C

  bool operator==(const CarbideContent&) const = default;
};

enum class CardDepthForm { article_2018, book_second_edition };

struct CardTestEdge {
  double hardness_hrc = 0;
  double inclusive_angle_deg = 0;
  CarbideContent carbides;
};

// In mm. Refused: outside the ranges above, and where the line falls below 0.
[[nodiscard]] base::Result<double> card_depth_mm(const CardTestEdge& edge, CardDepthForm form);

struct CarbideContentRange {
  CarbideContent lo;
  CarbideContent hi;
};

// What the table of steels says of its carbides; none where it says nothing.
[[nodiscard]] std::optional<CarbideContentRange> carbide_content(const Steel& steel);

struct CardTestBlade {
  std::string_view steel;  // as `find_steel` takes it
  double hardness_hrc = 0;
  double inclusive_angle_deg = 0;
};

struct Span {
  double lo = 0;
  double hi = 0;

  bool operator==(const Span&) const = default;
};

struct CardDepthsCompared {
  Span a_mm;
  Span b_mm;
  Span ratio;  // of a's depth over b's, form by form

  bool operator==(const CardDepthsCompared&) const = default;
};

// Over both forms and all the carbides that the table of steels allows; one steel in both blades
// has the same carbides in both. Refused: as card_depth_mm, and steels that are unknown or of whose
// carbides the table says nothing.
[[nodiscard]] base::Result<CardDepthsCompared> card_depths_compared(const CardTestBlade& a,
                                                                    const CardTestBlade& b);

}  // namespace keenfall::materials
