#include "cli/judge_request.h"

#include "cli/option_numbers.h"
#include "exchange/column_mapping.h"
#include "exchange/kind_definition.h"
#include "exchange/row_filter.h"
#include "exchange/table_options.h"
#include "verdicts/judge_lives.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <system_error>
#include <utility>

namespace keenfall::cli {

namespace {

class OptionProblems {
 public:
  void add(base::ProblemKind kind,
           const std::string& option,
           const std::string& sentence,
           const std::string& found,
           const std::string& accepted) {
    problems_.push_back({.kind = kind,
                         .sentence = sentence,
                         .place = {.column = option, .found = found},
                         .accepted = accepted});
  }

  void add_bad_value(const std::string& option,
                     const std::string& needed,
                     const std::string& found,
                     const std::string& accepted) {
    add(base::ProblemKind::bad_value,
        option,
        option + " must be " + needed + ", not \"" + found + "\".",
        found,
        accepted);
  }

  void add(base::Problem problem) { problems_.push_back(std::move(problem)); }

  // A problem found elsewhere, with the option it came by.
  void add(const std::string& option, base::Problem problem) {
    problem.place.column = option;
    problem.sentence = option + ": " + problem.sentence;
    problems_.push_back(std::move(problem));
  }

  [[nodiscard]] const std::vector<base::Problem>& all() const { return problems_; }

 private:
  std::vector<base::Problem> problems_;
};

// The whole text as a number of this type.
template <class Number>
std::optional<Number> whole_text_as(const std::string& text) {
  Number number{};
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (fault != std::errc() || end != text.data() + text.size() || text.empty()) return std::nullopt;
  return number;
}

std::optional<double> number_above_one(const std::string& text) {
  const auto number = whole_text_as<double>(text);
  if (!number || !std::isfinite(*number) || *number <= 1) return std::nullopt;
  return number;
}

void read_levels(const TypedOptions& typed,
                 workbench::JudgeOptions& options,
                 OptionProblems& problems) {
  if (typed.worth_it) {
    const auto margin = number_above_one(*typed.worth_it);
    if (!margin) {
      problems.add_bad_value(
          "--worth-it", "a ratio above 1", *typed.worth_it, "for example 1.5 or 2");
    }
    options.worth_it_margin = margin.value_or(options.worth_it_margin);
    options.worth_it_is_asked = true;
  }
  if (typed.stop_level) {
    options.stop_level = number_above_one(*typed.stop_level);
    if (!options.stop_level) {
      problems.add_bad_value("--stop-level",
                             "how many times the start reading, above 1",
                             *typed.stop_level,
                             "for example 2 or 4");
    }
  }
  if (typed.stop_reading) {
    double reading = 0;
    const std::string& text = *typed.stop_reading;
    const auto fault = std::from_chars(text.data(), text.data() + text.size(), reading).ec;
    if (fault != std::errc() || !std::isfinite(reading) || reading <= 0) {
      problems.add_bad_value("--stop-reading",
                             "a reading above zero with its unit",
                             text,
                             "for example 400gf or 0.3mm");
    }
    options.stop_reading = text;
  }
  if (typed.stop_level && typed.stop_reading) {
    problems.add(base::ProblemKind::conflicting,
                 "--stop-level",
                 "--stop-level and --stop-reading cannot both decide where edges are compared.",
                 *typed.stop_level,
                 "one of the two");
  }
}

// "3,6,9": rising whole numbers, the first at least 2.
std::optional<std::vector<int>> looks_in(const std::string& text) {
  std::vector<int> looks;
  std::size_t begin = 0;
  while (begin <= text.size()) {
    const std::size_t comma = std::min(text.find(',', begin), text.size());
    const auto runs = whole_text_as<int>(text.substr(begin, comma - begin));
    constexpr int kMostRuns = 1000;
    if (!runs || *runs < 2 || *runs > kMostRuns) return std::nullopt;
    if (!looks.empty() && *runs <= looks.back()) return std::nullopt;
    looks.push_back(*runs);
    begin = comma + 1;
  }
  constexpr std::size_t kMostLooks = 20;
  if (looks.size() > kMostLooks) return std::nullopt;
  return looks;
}

void read_looks(const TypedOptions& typed,
                workbench::JudgeOptions& options,
                OptionProblems& problems) {
  if (!typed.looks) return;
  const auto looks = looks_in(*typed.looks);
  if (looks) {
    options.looks = *looks;
    return;
  }
  problems.add_bad_value("--looks",
                         "the runs of every edge at each planned look, rising, from 2 to 1000",
                         *typed.looks,
                         "for example 3,6,9");
}

void read_rung(const TypedOptions& typed,
               workbench::JudgeOptions& options,
               OptionProblems& problems) {
  if (!typed.rung) return;
  options.rung = whole_text_as<int>(*typed.rung);
  constexpr int kHighestRung = 9;
  if (options.rung && *options.rung >= 1 && *options.rung <= kHighestRung) return;
  problems.add_bad_value("--rung", "a rung of the pass ladder", *typed.rung, "1 to 9");
}

void read_test_level(const TypedOptions& typed,
                     workbench::JudgeOptions& options,
                     OptionProblems& problems) {
  if (!typed.test_level) return;
  options.test_level = number_above_one(*typed.test_level);
  if (options.test_level) return;
  problems.add_bad_value("--test-level",
                         "how many times the start reading failing the test means, above 1",
                         *typed.test_level,
                         "for example 3");
}

void read_running_options(const TypedOptions& typed,
                          JudgeRequest& request,
                          OptionProblems& problems) {
  if (typed.model) {
    if (*typed.model != "plain" && *typed.model != "default") {
      problems.add_bad_value("--model", "a model's name", *typed.model, "plain or default");
    }
    request.options.model = *typed.model;
  }
  if (typed.claim) {
    if (*typed.claim != "steels" && *typed.claim != "blades") {
      problems.add_bad_value("--claim", "what is claimed about", *typed.claim, "steels or blades");
    }
    request.options.claim = *typed.claim == "steels" ? verdicts::ClaimAbout::the_steels
                                                     : verdicts::ClaimAbout::these_blades;
  }
  const auto take = [&problems](const auto& number, auto& into) {
    if (number) {
      into = *number;
    } else {
      problems.add(number.error());
    }
  };
  if (typed.told_in) {
    const auto told = materials::told_in(*typed.told_in);
    if (!told) problems.add("--told-in", told.error());
    request.options.told_in = told.value_or(materials::ToldIn{});
  }
  if (typed.seed) take(seed_of("--seed", *typed.seed), request.options.seed);
  if (typed.trial_seed) take(seed_of("--trial-seed", *typed.trial_seed), request.trial_seed);
  if (typed.threads) take(threads_of("--threads", *typed.threads), request.threads);
}

void read_table_options(const TypedOptions& typed,
                        workbench::JudgeOptions& options,
                        OptionProblems& problems) {
  for (const std::string& text : typed.columns) {
    auto mapping = exchange::parse_column_mapping(text);
    if (mapping) {
      options.table.columns.push_back(std::move(*mapping));
    } else {
      problems.add("--column", mapping.error());
    }
  }
  for (const std::string& text : typed.defined_kinds) {
    auto kind = exchange::parse_kind_definition(text);
    if (kind) {
      options.table.defined_kinds.push_back(std::move(*kind));
    } else {
      problems.add("--define-kind", kind.error());
    }
  }
  for (const std::string& text : typed.where) {
    auto filter = exchange::parse_row_filter(text);
    if (filter) {
      options.table.where.push_back(std::move(*filter));
    } else {
      problems.add("--where", filter.error());
    }
  }
  if (typed.shape) {
    const auto shape = exchange::table_shape_named(*typed.shape);
    if (!shape) {
      problems.add_bad_value("--shape", "the shape of a table", *typed.shape, "long, wide or runs");
    }
    options.table.shape = shape.value_or(exchange::TableShape::decide);
  }
  options.table.sheets = typed.sheets;
  options.kind = typed.kind;
  options.trial = typed.trial;
  // Of rows that name none; an edge life is no reading.
  if (typed.kind && *typed.kind != verdicts::kEdgeLives) options.table.default_kind = *typed.kind;
}

void read_decimal_mark(const TypedOptions& typed,
                       workbench::JudgeOptions& options,
                       OptionProblems& problems) {
  if (!typed.decimal) return;
  if (*typed.decimal == "comma" || *typed.decimal == ",") {
    options.table.decimal_mark = exchange::DecimalMark::comma;
  } else if (*typed.decimal == "point" || *typed.decimal == ".") {
    options.table.decimal_mark = exchange::DecimalMark::point;
  } else {
    problems.add_bad_value("--decimal", "the decimal mark", *typed.decimal, "comma or point");
  }
}

// However each is spelled, and through links.
bool is_same_file(const std::string& one, const std::string& other) {
  std::error_code none;
  return one == other || std::filesystem::equivalent(one, other, none) ||
         std::filesystem::weakly_canonical(one, none) ==
             std::filesystem::weakly_canonical(other, none);
}

// A file with something in it that is no answer from before.
bool is_of_something_else(const std::string& path) {
  std::error_code none;
  if (!std::filesystem::is_regular_file(path, none)) return false;
  std::ifstream file(path, std::ios::binary);
  const std::string text((std::istreambuf_iterator<char>(file)), {});
  return !text.empty() && text.find("\"keenfall-judgement\"") == std::string::npos;
}

void read_destinations(const TypedOptions& typed, JudgeRequest& request, OptionProblems& problems) {
  request.quiet = typed.quiet;
  request.table_file = typed.table_file.value_or("");
  if (!typed.json) return;
  request.json_to = typed.json->empty() ? JsonTo::standard_output : JsonTo::file;
  request.json_file = *typed.json;
  const auto would_overwrite = [&](const std::string& table) {
    return is_same_file(table, *typed.json);
  };
  if (std::ranges::any_of(typed.positionals, would_overwrite) ||
      (typed.table_file && would_overwrite(*typed.table_file))) {
    problems.add(base::ProblemKind::conflicting,
                 "--json",
                 "--json would overwrite the table \"" + *typed.json + "\".",
                 *typed.json,
                 "another file, as in --json=answer.json");
  } else if (is_of_something_else(*typed.json)) {
    problems.add(base::ProblemKind::conflicting,
                 "--json",
                 "--json would overwrite \"" + *typed.json +
                     "\", which is there already and is no answer of judge. It was left as it is.",
                 *typed.json,
                 "a file that is not there yet, or an answer from before");
  }
}

}  // namespace

base::ResultOrProblems<JudgeRequest> judge_request(const TypedOptions& typed,
                                                   unsigned threads_at_hand) {
  JudgeRequest request{.tables = typed.positionals, .threads = std::max(1U, threads_at_hand)};
  OptionProblems problems;
  read_levels(typed, request.options, problems);
  read_looks(typed, request.options, problems);
  read_rung(typed, request.options, problems);
  read_test_level(typed, request.options, problems);
  read_running_options(typed, request, problems);
  read_table_options(typed, request.options, problems);
  read_decimal_mark(typed, request.options, problems);
  read_destinations(typed, request, problems);
  if (!problems.all().empty()) return tl::unexpected(problems.all());
  return request;
}

}  // namespace keenfall::cli
