// Tables in memory as long_table.h, good_rows.h and table_survey.h read them, while somebody is
// told how far that is, and may stop it.
//
// Stopped, taking fails with a problem of the kind `interrupted`, and a survey is of what was read
// until then, with that problem.
#pragma once

#include "base/execution.h"
#include "exchange/good_rows.h"
#include "exchange/table_in_hand.h"
#include "exchange/table_options.h"
#include "exchange/table_survey.h"

#include <span>

namespace keenfall::exchange {

[[nodiscard]] base::ResultOrProblems<trials::Trial> take_tables_in_hand(
    std::span<const TableInHand> tables,
    const TableOptions& options,
    const base::ProgressReport& progress);
[[nodiscard]] base::ResultOrProblems<GoodRows> take_good_rows_in_hand(
    std::span<const TableInHand> tables,
    const TableOptions& options,
    const base::ProgressReport& progress);
[[nodiscard]] TableSurvey survey_tables(std::span<const TableInHand> tables,
                                        const TableOptions& options,
                                        const base::ProgressReport& progress);

}  // namespace keenfall::exchange
