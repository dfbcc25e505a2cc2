#include "cli/predict_command.h"

#include "cli/edge_request.h"
#include "cli/own_things.h"
#include "cli/predict_request.h"
#include "cli/predict_text.h"
#include "cli/watched_work.h"
#include "cli/written_answer.h"
#include "wire/prediction_json.h"

namespace keenfall::cli {

namespace {

constexpr const char* kNothingPredicted = "nothing was predicted";

}  // namespace

Outcome predict_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto read = read_options(Command::predict, words);
  if (!read) return wrong_usage(read.error(), "predict");
  const TypedOptions& typed = read->typed;
  const auto catalogue = workbench::apex_catalogue(catalogue_files(typed));
  if (!catalogue) return refused(catalogue.error(), kNothingPredicted);
  const auto request = predict_request(*read, *catalogue, surroundings.threads_at_hand);
  if (!request) return wrong_usage(request.error(), "predict");
  const JudgeRequest how{.threads = request->threads, .quiet = typed.quiet};
  const auto predicted = watched(
      how, surroundings, [&](const base::Executor& executor, const base::ProgressReport& report) {
        return wear::predicted_ratio(request->asked, executor, report);
      });
  if (!predicted) return refused({predicted.error()}, kNothingPredicted);
  WrittenAnswer answer{.text = prediction_text(request->asked, *predicted, surroundings.look),
                       .json = {}};
  if (typed.json) {
    answer.json = wire::prediction_to_json({.program_version = surroundings.program_version,
                                            .asked = request->asked,
                                            .predicted = *predicted});
  }
  return with_note_of_own(
      delivered(answer, typed.json), catalogue->in_place_of_known, surroundings.look);
}

}  // namespace keenfall::cli
