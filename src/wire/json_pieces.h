// The small JSON objects a judgement is made of: intervals, an edge, a cut method, an arm's name.
// Absent means not recorded: no key is written for it. Private to this folder (it shows the
// library).
#pragma once

#include "materials/told_in.h"
#include "numerics/interval.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"
#include "verdicts/verdict.h"

#include <nlohmann/json.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::wire {

// Keeps the order in which keys are written, which is the order a person reads them in.
using Json = nlohmann::ordered_json;

// Throws std::logic_error unless finite: JSON has no word for the others.
[[nodiscard]] Json finite_number(double number);

// A number below 2^53, which every JSON reader keeps exactly; decimal digits in a string above.
[[nodiscard]] Json whole_number(std::uint64_t number);

[[nodiscard]] Json interval_json(const numerics::Interval& interval);
[[nodiscard]] Json bounds_json(const verdicts::RatioBounds& bounds);
[[nodiscard]] Json cuts_to_level_json(const verdicts::CutsToLevel& reached);
[[nodiscard]] Json sentences_json(const std::vector<std::string>& sentences);

// Angles per side; with its words in what is told.
[[nodiscard]] Json edge_json(const trials::EdgePreparation& edge,
                             const materials::ToldIn& told = {});
// What was said of it, without words.
[[nodiscard]] Json cut_method_json(const trials::CutMethod& method);

// {blade, edge, medium, medium_condition, method}; words of edge and method in what is told.
[[nodiscard]] Json arm_json(const trials::Arm& arm, const materials::ToldIn& told = {});

[[nodiscard]] std::string_view keener_when_name(trials::KeenerWhen keener_when);

// Where arms are compared; a common reading is in `unit`.
[[nodiscard]] Json at_json(const verdicts::At& at, const std::string& unit);

// Written only when there is something to write.
void put_text(Json& object, const char* key, const std::string& text);
void put_number(Json& object, const char* key, const std::optional<double>& number);

// For an answer of the app: in one line, stray bytes of names as U+FFFD.
[[nodiscard]] std::string in_one_line(const Json& object);

}  // namespace keenfall::wire
