// A logarithmic axis on a row or column of small cells, with ticks at round numbers.
#pragma once

#include <string>
#include <vector>

namespace keenfall::cli {

struct LogAxis {
  double low = 1;    // above zero
  double high = 10;  // above low
  int cells = 60;    // at least 2

  // The cell of a number; below 0 or from `cells` on when it lies off the axis.
  [[nodiscard]] int cell_of(double number) const;
};

// "0.2", "500", "2 million".
[[nodiscard]] std::string tick_text(double tick);

// Numbers of the 1-2-5 kind on the axis; of the 1, 1.5, 2, 3, 4 ... kind where those are too few.
[[nodiscard]] std::vector<double> ticks_on(const LogAxis& axis);

}  // namespace keenfall::cli
