#include "cli/process.h"
#include "workbench/judge_tables.h"
#include "workbench/matting_bench.h"

int main(int argument_count, char** arguments) {
  return keenfall::cli::run_as_process(argument_count,
                                       arguments,
                                       {.judge_tables = keenfall::workbench::judge_tables,
                                        .judge_trial = keenfall::workbench::judge_trial,
                                        .matting_bench = keenfall::workbench::matting_bench});
}
