// What the tables count, in their own word: from the header over the cuts, and from what stands
// beside a number of cuts ("15 strokes" as a header, "40 strokes" as an edge life).
//
// Tables that say no known word (trials/counted.h) count cuts. Two words in one trial are reported:
// strokes and cuts do not stand on one axis.
#pragma once

#include "exchange/problem_list.h"
#include "exchange/table_row.h"
#include "trials/counted.h"

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::exchange {

class CountingWord {
 public:
  // `problems` must outlive it.
  explicit CountingWord(ProblemList& problems) : problems_(problems) {}

  void take(const TableRow& row, const MatchedColumns& file_columns);

  [[nodiscard]] trials::Counted found() const { return found_.value_or(trials::Counted{}); }

 private:
  void take_words(std::string_view words, Origin at, const std::string& header);

  ProblemList& problems_;
  std::optional<trials::Counted> found_;
  Origin first_at_;
  std::string last_header_;  // looked at already
};

}  // namespace keenfall::exchange
