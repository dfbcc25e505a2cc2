#include "cli/resharpen_command.h"

#include "cli/resharpen_request.h"
#include "cli/resharpen_text.h"
#include "cli/typed_options.h"
#include "cli/written_answer.h"
#include "wire/resharpening_json.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace keenfall::cli {

namespace {

struct OptionOfField {
  std::string_view field;
  std::string_view option;
};

constexpr auto kOptions = std::to_array<OptionOfField>({{"bevel_angle", "--angle"},
                                                        {"primary_angle", "--primary-angle"},
                                                        {"thickness_behind_edge", "--thickness"},
                                                        {"land", "--land"},
                                                        {"deepest_chip", "--chip"},
                                                        {"micro_bevel", "--micro-bevel"},
                                                        {"edge_length", "--edge"},
                                                        {"force", "--force"},
                                                        {"stroke_length", "--stroke"},
                                                        {"pace", "--pace"},
                                                        {"dress_every", "--dress-every"},
                                                        {"dressing_time", "--dressing-time"},
                                                        {"seen_after_cuts", "--cuts"},
                                                        {"setup", "--setup"}});

Outcome refused_by_engine(base::Problem problem) {
  const auto named = std::ranges::find(kOptions, problem.place.column, &OptionOfField::field);
  problem.place.column = named == kOptions.end() ? "--" : std::string(named->option);
  return wrong_usage({std::move(problem)}, "resharpen");
}

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

}  // namespace

Outcome resharpen_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto typed = typed_options(Command::resharpen, words);
  if (!typed) return wrong_usage(typed.error(), "resharpen");
  const auto request = resharpen_request(*typed);
  if (!request) return wrong_usage(request.error(), "resharpen");
  wire::ResharpeningDocument document{.program_version = surroundings.program_version,
                                      .question = request->question,
                                      .growth = request->growth};
  std::vector<std::optional<trials::PerSideAngle>> wanted = {std::nullopt};
  if (request->micro_bevel_angle) wanted.insert(wanted.begin(), request->micro_bevel_angle);
  for (const auto& micro_bevel_angle : wanted) {
    auto way = way_back(*request, micro_bevel_angle);
    if (!way) return refused_by_engine(way.error());
    document.ways.push_back(std::move(*way));
  }
  return delivered({.text = resharpening_text(document, surroundings.look),
                    .json = wire::resharpening_to_json(document)},
                   typed->json);
}

}  // namespace keenfall::cli
