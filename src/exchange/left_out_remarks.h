// What was left out of tables, in sentences that stay with the trial: "Left out when t.csv was
// taken: lines 6 and 9: “foo” is no kind of reading known here."
//
// Parts with the same reason are named together, neighbouring lines as "lines 4 to 9". Of very many
// the first are named, and how many more there were.
#pragma once

#include "exchange/blamed_parts.h"
#include "exchange/problem_list.h"
#include "exchange/table_part.h"

#include <string>
#include <vector>

namespace keenfall::exchange {

// A cell of a row or column that is among the parts, too.
[[nodiscard]] bool is_within_another(const TablePart& part, const TableParts& parts);

// `files`: names the files and how their places are called.
[[nodiscard]] std::vector<std::string> remarks_on_left_out(const BlamedParts& blamed,
                                                           const ProblemList& files);

}  // namespace keenfall::exchange
