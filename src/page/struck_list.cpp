#include "page/struck_list.h"

#include "base/plain_number.h"
#include "page/figure.h"
#include "page/runs_told.h"

#include <algorithm>
#include <string>

namespace keenfall::page {

namespace {

// What stands in a table for "struck, and no reason is given".
std::string reason_words(const std::string& reason) {
  return reason.empty() ? "no reason is given" : reason;
}

struct Places {
  telling::Table& table;
  const ToldRun& run;
};

void add_row(const Places& to,
             const std::string& at,
             const std::string& what,
             const std::string& became) {
  to.table.rows.push_back(
      {.cells = {to.run.result->name, to.run.edge, to.run.medium, at, what, became}});
}

void add_readings(const Places& to,
                  const trials::Trial& trial,
                  const verdicts::Judgement& judgement) {
  for (const trials::Reading& reading : trial.runs.at(to.run.result->run).readings) {
    if (!is_of(trial.series.at(reading.series), judgement)) continue;
    std::string what =
        base::plain_number(reading.reading) + " " + trial.series[reading.series].unit;
    if (!reading.station.empty()) what += " (" + reading.station + ")";
    const std::string at = base::plain_number(reading.cuts);
    if (reading.struck_reason) {
      add_row(to, at, what, "struck out: " + reason_words(*reading.struck_reason));
    } else if (reading.doubtful_reason) {
      add_row(to, at, what, "doubtful: " + reason_words(*reading.doubtful_reason));
    }
  }
}

void add_lives(const Places& to, const trials::Trial& trial) {
  for (const trials::EdgeLife& life : trial.runs.at(to.run.result->run).edge_lives) {
    if (!life.struck_reason) continue;
    add_row(to,
            base::plain_number(life.lasted_cuts),
            life.failed_by_cuts ? "failed by " + base::plain_number(*life.failed_by_cuts)
                                : "not seen to fail",
            "struck out: " + reason_words(*life.struck_reason));
  }
}

}  // namespace

void add_struck_list(Html& html, const telling::Report& report, std::size_t judgement_index) {
  const verdicts::Judgement& judgement = report.judgements.at(judgement_index).judgement;
  telling::Table table{.caption = "What is struck out or doubtful, and why",
                       .columns = {{.head = "run", .side = telling::Side::left},
                                   {.head = "edge", .side = telling::Side::left},
                                   {.head = "medium", .side = telling::Side::left},
                                   {.head = judgement.counted.many},
                                   {.head = "as recorded"},
                                   {.head = "what became of it", .side = telling::Side::left}}};
  for (const ToldRun& run : runs_told(report, judgement_index)) {
    const Places to{.table = table, .run = run};
    add_readings(to, report.trial, judgement);
    if (judgement.test) add_lives(to, report.trial);
  }
  if (!table.rows.empty()) add_table(html, table);
}

}  // namespace keenfall::page
