// What `keenfall phases` and `keenfall hardness` answer: in words, and as JSON.
//
// In: what was asked as typed, empty for the whole table. Out: lines that fit the look's width, and
// a document of docs/wire. Fails with the Problem of the table that was asked.
#pragma once

#include "base/result.h"
#include "cli/look.h"
#include "cli/written_answer.h"

#include <string>
#include <string_view>

namespace keenfall::cli {

// Carbides, nitrides, minerals, fillers and abrasives from soft to hard; with a name also what it
// scratches and what scratches it; with a steel, what cuts its matrix and its carbides.
[[nodiscard]] base::Result<WrittenAnswer> phases_command(std::string_view asked,
                                                         const std::string& program_version,
                                                         const Look& look);

// The rows of ASTM E140; with "61HRC" or "720HV" that hardness on both scales.
[[nodiscard]] base::Result<WrittenAnswer> hardness_command(std::string_view asked,
                                                           const std::string& program_version,
                                                           const Look& look);

}  // namespace keenfall::cli
