// The rows of one table that all conditions of --where choose, and how many they leave out.
//
// A column that the table does not have is a Problem.
#pragma once

#include "exchange/row_filter.h"
#include "exchange/table_columns.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::exchange {

class RowChoice {
 public:
  RowChoice(std::span<const RowFilter> filters,
            const MatchedColumns& columns,
            ProblemList& problems);

  [[nodiscard]] bool is_taken(const Record& record);
  // How many rows were left out; nullopt when no filter was given.
  [[nodiscard]] std::optional<std::string> remark() const;

 private:
  struct Condition {
    std::size_t position = 0;
    RowFilter filter;
  };

  std::vector<Condition> conditions_;
  std::size_t left_out_ = 0;
  std::size_t seen_ = 0;
};

}  // namespace keenfall::exchange
