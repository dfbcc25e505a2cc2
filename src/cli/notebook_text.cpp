#include "cli/notebook_text.h"

#include "base/plain_number.h"
#include "base/shell_word.h"
#include "cli/ruled_table.h"
#include "cli/text_layout.h"
#include "workbench/plan_followed.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>

namespace keenfall::cli {

namespace {

std::string with_thousands(std::size_t count) {
  std::string digits = std::to_string(count);
  for (std::size_t end = digits.size(); end > 3; end -= 3) digits.insert(end - 3, ",");
  return digits;
}

// "1 run", "1,204 readings".
std::string number_of(std::size_t count, const std::string& one, const std::string& many) {
  return with_thousands(count) + " " + (count == 1 ? one : many);
}
std::string runs_of(std::size_t count) { return number_of(count, "run", "runs"); }
std::string readings_of(std::size_t count) { return number_of(count, "reading", "readings"); }

std::string cell_of(std::size_t count) { return count == 0 ? "" : with_thousands(count); }

std::string paragraph(const std::string& text, int indent, const Look& look) {
  return wrapped(shown_as(text, look), {.first = indent, .rest = indent}, look);
}

std::string words_of(const trials::Arm& arm) {
  std::string words = arm.blade;
  const std::string edge = in_words(arm.edge);
  if (!edge.empty()) words += " (" + edge + ")";
  words += " on " + arm.medium.name;
  if (!arm.medium.condition.empty()) words += ", " + arm.medium.condition;
  const std::string method = in_words(arm.method);
  return words + (method.empty() ? "" : ", " + method);
}

std::vector<std::string> row_of(const trials::Run& run) {
  const auto struck = std::ranges::count_if(run.readings, [](const trials::Reading& reading) {
    return reading.struck_reason.has_value();
  });
  const auto doubtful = std::ranges::count_if(run.readings, [](const trials::Reading& reading) {
    return reading.doubtful_reason.has_value();
  });
  return {run.name,
          with_thousands(run.readings.size()),
          cell_of(static_cast<std::size_t>(struck)),
          cell_of(static_cast<std::size_t>(doubtful)),
          run.voided_reason ? "yes" : "",
          cell_of(run.notes.size() + run.deviations.size() + run.events.size())};
}

// Why readings and runs do not count or are not trusted, and what was noted.
void say_of(const trials::Run& run, std::vector<std::string>& said) {
  const std::string name =
      "Run " + run.name + " of " + run.arm.blade + " on " + run.arm.medium.name;
  if (run.voided_reason) said.push_back(name + " is voided: " + *run.voided_reason);
  for (const trials::Reading& reading : run.readings) {
    const std::string at = name + ", " + base::plain_number(reading.reading) + " at " +
                           base::plain_number(reading.cuts) + " cuts, is ";
    if (reading.struck_reason) said.push_back(at + "struck out: " + *reading.struck_reason);
    if (reading.doubtful_reason) said.push_back(at + "doubtful: " + *reading.doubtful_reason);
  }
  for (const trials::Event& event : run.events) {
    said.push_back(name + ", at " + base::plain_number(event.cuts) + " cuts: " + event.as_written);
  }
  for (const std::string& text : run.deviations) said.push_back(name + ", deviation: " + text);
  for (const std::string& text : run.notes) said.push_back(name + ", note: " + text);
}

// What was asked and planned, a fact a line, and whether that can still change.
std::string plan_shown(const workbench::TrialWithLooks& shown, const Look& look) {
  if (!shown.plan) return {};
  const notebook::KeptPlan& plan = *shown.plan;
  std::string text = paragraph(
      plan.sealed_at_utc
          ? "Asked and planned, sealed at " + *plan.sealed_at_utc + ", SHA-256 " + plan.sha256 + ":"
          : "Asked and planned, a draft that is not sealed yet:",
      0,
      look);
  for (const std::string& fact : workbench::facts_of(plan)) text += paragraph(fact, 2, look);
  if (plan.sealed_at_utc && !shown.trial.runs.empty()) {
    for (const std::string& sentence : workbench::deviations_from(plan, shown.trial)) {
      text += paragraph(sentence, 0, look);
    }
  }
  return text + "\n";
}

std::string looks_text(const std::vector<notebook::Look>& looks, const Look& look) {
  if (looks.empty()) return {};
  std::string text = "\n";
  std::size_t number = 0;
  for (const notebook::Look& one : looks) {
    const notebook::StoredJudgement& judged = one.judgement;
    text +=
        paragraph("Look " + std::to_string(++number) + ", " + one.at_utc + ", " + one.who + ": " +
                      runs_of(judged.inputs.runs) + ", " + readings_of(judged.inputs.readings) +
                      "; " + judged.question + " --seed=" + std::to_string(judged.seed.number) +
                      ", keenfall " + judged.program_version,
                  0,
                  look);
  }
  return text;
}

}  // namespace

std::string taken_text(const workbench::TakenIn& in, const Look& look) {
  const notebook::Taken& taken = in.taken;
  if (!taken.entry) {
    return paragraph("Nothing new: " + in.trial + " holds " +
                         (in.left_out.empty() ? "" : "what is good in ") +
                         "these tables already (" + runs_of(taken.runs_known) + ").",
                     0,
                     look);
  }
  const std::string where =
      " into " + in.trial + ", entry " + std::to_string(taken.entry->entry) + ".";
  std::string text;
  if (taken.runs_added > 0) {
    text = runs_of(taken.runs_added) + " and " + readings_of(taken.readings_added) + where;
  } else if (taken.readings_added > 0 || taken.runs_grown > 0) {
    text = "No new run and " + readings_of(taken.readings_added) + where;
  } else {
    text = "No new run or reading; that the table was taken is noted" + where;
  }
  if (taken.runs_grown > 0)
    text += " There already, and with more to them now: " + runs_of(taken.runs_grown) + ".";
  if (taken.runs_known > 0)
    text += " There already, and as they were: " + runs_of(taken.runs_known) + ".";
  if (!in.left_out.empty()) {
    text += " Taken in part: " + exchange::in_words(in.left_out) + " left out.";
  }
  std::string shown = paragraph(text, 0, look);
  for (const std::string& remark : in.remarks) shown += paragraph(remark, 2, look);
  return shown;
}

std::string merged_text(const notebook::Merged& merged,
                        const std::string& other,
                        const Look& look) {
  if (!merged.entry) {
    std::string text = paragraph(
        merged.not_taken == 0
            ? "Nothing new: all of " + other + " is here already."
            : "Nothing was taken over: what " + other + " has otherwise was left out, as asked.",
        0,
        look);
    for (const std::string& remark : merged.remarks) text += paragraph(remark, 2, look);
    return text;
  }
  const notebook::Taken& runs = merged.runs;
  std::string text =
      (merged.trials_added > 0 ? number_of(merged.trials_added, "new trial", "new trials") + ", "
                               : "") +
      runs_of(runs.runs_added) + " and " + readings_of(runs.readings_added) + " from " + other +
      ", entry " + std::to_string(merged.entry->entry) + ".";
  if (runs.runs_grown > 0)
    text += " There already, and with more to them now: " + runs_of(runs.runs_grown) + ".";
  if (runs.runs_known > 0) text += " There already: " + runs_of(runs.runs_known) + ".";
  if (merged.looks_added > 0) {
    text += " Looks that came along: " + with_thousands(merged.looks_added) + ".";
  }
  std::string shown = paragraph(text, 0, look);
  for (const std::string& remark : merged.remarks) shown += paragraph(remark, 2, look);
  return shown;
}

std::string exported_text(const workbench::Exported& exported,
                          const std::string& to,
                          const Look& look) {
  switch (exported.form) {
    case workbench::ExportForm::json:
      return paragraph(
          to + " is the whole notebook, with its journal, as one JSON document.", 0, look);
    case workbench::ExportForm::data_package:
      return with_command(
          to + " is the whole notebook as a data package. A notebook takes it back:",
          "keenfall take new.keen " + base::shell_word(to),
          look);
    case workbench::ExportForm::long_table:
    case workbench::ExportForm::decide:
      break;
  }
  std::string words = to + " is " + trial_table_words(exported.trial);
  if (!exported.is_whole) {
    words +=
        " It does not hold all that the notebook has of the trial, since a table has no place for "
        "it; a data package does: --as=package";
  }
  return paragraph(words, 0, look);
}

std::string trial_table_words(const std::string& trial) {
  return "the trial " + trial +
         " as a table, a row a reading; what is struck out or voided is in it.";
}

std::string struck_words(const notebook::Struck& struck) {
  const std::string entry = "entry " + std::to_string(struck.entry.entry);
  const std::string still = " Still there to be seen, and counting no longer.";
  if (struck.instead) {
    return "One reading of " + struck.run_words + " corrected to " + *struck.instead + ", " +
           entry + ". The old one is still there to be seen, and counts no longer.";
  }
  if (struck.voided_runs > 0) {
    return "No cuts were named, so the whole " + struck.run_words + " is voided, " + entry + "." +
           still;
  }
  const std::string what = struck.edge_lives > 0
                               ? number_of(struck.edge_lives, "edge life", "edge lives")
                               : readings_of(struck.readings);
  return what + " of " + struck.run_words + " struck out, " + entry + "." + still;
}

std::string trials_text(const std::string& path,
                        const std::vector<notebook::KeptTrial>& trials,
                        const Look& look) {
  if (trials.empty()) {
    return with_command("The notebook holds no trial yet. To put one in:",
                        "keenfall take " + base::shell_word(path) + " readings.csv",
                        look);
  }
  RuledTable table{.columns = {{.head = "trial", .side = Side::left}, {"runs"}, {"readings"}}};
  for (const notebook::KeptTrial& trial : trials) {
    table.rows.push_back({trial.name, with_thousands(trial.runs), with_thousands(trial.readings)});
  }
  return laid_out(table, look).text;
}

std::string trial_text(const workbench::TrialWithLooks& shown, const Look& look) {
  const trials::Trial& trial = shown.trial;
  RuledTable table{.columns = {{.head = "run", .side = Side::left},
                               {"readings"},
                               {"struck"},
                               {"doubtful"},
                               {"voided"},
                               {.head = "notes", .drop_order = 1}}};
  std::vector<std::string> said;
  for (const trials::Arm& arm : arms_of(trial)) {
    table.rows.push_back({words_of(arm)});
    for (const trials::Run& run : trial.runs) {
      if (run.arm != arm) continue;
      table.rows.push_back(row_of(run));
      say_of(run, said);
    }
  }
  std::string text = plan_shown(shown, look);
  text +=
      trial.runs.empty() ? paragraph("It has no runs yet.", 0, look) : laid_out(table, look).text;
  if (!said.empty()) text += "\n";
  for (const std::string& sentence : said) text += paragraph(sentence, 0, look);
  if (!trial.remarks.empty()) text += "\n";
  for (const std::string& remark : trial.remarks) text += paragraph(remark, 0, look);
  return text + looks_text(shown.looks, look);
}

std::string journal_text(const std::vector<notebook::JournalEntry>& journal, const Look& look) {
  if (journal.empty()) return paragraph("Nothing was changed yet.", 0, look);
  std::string text;
  for (const notebook::JournalEntry& entry : journal) {
    const auto number = [](std::int64_t n) { return "entry " + std::to_string(n); };
    text += paragraph(
        "Entry " + std::to_string(entry.entry) + ", " + entry.at_utc + ", " + entry.who, 0, look);
    text += paragraph(entry.what, 2, look);
    if (!entry.why.empty()) text += paragraph("why: " + entry.why, 2, look);
    if (entry.undoes) text += paragraph("undoes " + number(*entry.undoes), 2, look);
    if (entry.undone_by) text += paragraph("undone by " + number(*entry.undone_by), 2, look);
  }
  return text;
}

std::string checked_text(const std::string& path,
                         const workbench::CheckedNotebook& checked,
                         const Look& look) {
  if (checked.findings.empty()) {
    return paragraph(
        path + " is as it was written. Looked at: " + number_of(checked.trials, "trial", "trials") +
            " with " + runs_of(checked.runs) + " and " + readings_of(checked.readings) + ", " +
            number_of(checked.entries, "entry", "entries") +
            " of the journal; the file's structure, the checksum of every row, the "
            "journal's chain.",
        0,
        look);
  }
  std::string text;
  for (const std::string& finding : checked.findings)
    text += paragraph(path + ": " + finding, 0, look);
  return text + paragraph(number_of(checked.findings.size(), "finding", "findings") +
                              ": the notebook is not as it was written. Nothing was changed. A "
                              "backup may be whole.",
                          0,
                          look);
}

}  // namespace keenfall::cli
