#include "cli/resharpen_command.h"

#include "cli/own_things.h"
#include "cli/resharpen_request.h"
#include "cli/resharpen_text.h"
#include "cli/typed_options.h"
#include "cli/written_answer.h"
#include "wire/resharpening_json.h"

#include <algorithm>
#include <utility>

namespace keenfall::cli {

namespace {

base::Result<wire::WayBack> way_back(const ResharpenRequest& request,
                                     std::optional<trials::PerSideAngle> micro_bevel_angle) {
  sharpening::ResharpeningQuestion question = request.question;
  question.edge.micro_bevel_angle = micro_bevel_angle;
  auto found = sharpening::resharpening(question, request.stones);
  if (!found) return base::failed(found.error());
  wire::WayBack way{.micro_bevel_angle = micro_bevel_angle, .found = *found};
  if (request.growth) {
    const auto moment =
        sharpening::when_to_resharpen(question, request.stones.front(), *request.growth);
    if (!moment) return base::failed(moment.error());
    way.best_moment = *moment;
  }
  return way;
}

Outcome refused_question(const std::vector<base::Problem>& problems) {
  const auto is_of_file = [](const base::Problem& problem) { return !problem.place.file.empty(); };
  if (std::ranges::any_of(problems, is_of_file)) return refused(problems, "nothing was answered");
  return wrong_usage(problems, "resharpen");
}

}  // namespace

Outcome resharpen_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto read = read_options(Command::resharpen, words);
  if (!read) return wrong_usage(read.error(), "resharpen");
  const auto request = resharpen_request(*read);
  if (!request) return refused_question(request.error());
  wire::ResharpeningDocument document{.program_version = surroundings.program_version,
                                      .question = request->question,
                                      .growth = request->growth};
  std::vector<std::optional<trials::PerSideAngle>> wanted = {std::nullopt};
  if (request->micro_bevel_angle) wanted.insert(wanted.begin(), request->micro_bevel_angle);
  for (const auto& micro_bevel_angle : wanted) {
    auto way = way_back(*request, micro_bevel_angle);
    if (!way) return wrong_usage({under_option_of_field(way.error())}, "resharpen");
    document.ways.push_back(std::move(*way));
  }
  return with_note_of_own(delivered({.text = resharpening_text(document, surroundings.look),
                                     .json = wire::resharpening_to_json(document)},
                                    read->typed.json),
                          request->in_place_of_known,
                          surroundings.look);
}

}  // namespace keenfall::cli
