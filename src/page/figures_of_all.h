// The pictures of a whole judgement: media side by side, the factors, the runs in their order.
#pragma once

#include "page/figure.h"
#include "telling/report.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <optional>

namespace keenfall::page {

// Each is absent where the judgement has nothing of the kind.
[[nodiscard]] std::optional<Figure> media_figure(const verdicts::Judgement& judgement,
                                                 std::size_t judgement_index);
[[nodiscard]] std::optional<Figure> factor_figure(const verdicts::Judgement& judgement,
                                                  std::size_t judgement_index);
[[nodiscard]] std::optional<Figure> order_figure(const telling::ReportedJudgement& reported,
                                                 std::size_t judgement_index);

}  // namespace keenfall::page
