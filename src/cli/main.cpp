#include "cli/process.h"
#include "workbench/judge_files.h"
#include "workbench/matting_bench.h"
#include "workbench/notebook_changes.h"
#include "workbench/notebook_export.h"
#include "workbench/notebook_merging.h"
#include "workbench/notebook_pages.h"
#include "workbench/notebook_place.h"
#include "workbench/report.h"

int main(int argument_count, char** arguments) {
  return keenfall::cli::run_as_process(
      argument_count,
      arguments,
      {.judge_files = keenfall::workbench::judge_files,
       .report_of_files = keenfall::workbench::report_of_files,
       .trial_in_files = keenfall::workbench::trial_in_files,
       .judge_trial = keenfall::workbench::judge_trial,
       .matting_bench = keenfall::workbench::matting_bench,
       .notebook = {.make = keenfall::workbench::new_notebook,
                    .take = keenfall::workbench::take_into,
                    .take_made = keenfall::workbench::take_made,
                    .strike = keenfall::workbench::strike_in,
                    .undo = keenfall::workbench::undo_in,
                    .merge = keenfall::workbench::merge_into,
                    .export_content = keenfall::workbench::export_notebook,
                    .trials = keenfall::workbench::trials_in,
                    .trial = keenfall::workbench::trial_in,
                    .journal = keenfall::workbench::journal_in,
                    .check = keenfall::workbench::check_notebook,
                    .back_up = keenfall::workbench::back_up_notebook,
                    .place = keenfall::workbench::notebook_place,
                    .to_open = keenfall::workbench::notebook_to_open}});
}
