#include "cli/resharpen_request.h"

#include "cli/option_numbers.h"
#include "cli/option_reader.h"
#include "cli/steel_words.h"
#include "workbench/stone_catalogue.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>

namespace keenfall::cli {

namespace {

struct OptionOfField {
  std::string_view field;
  std::string_view option;
};

constexpr auto kOptions =
    std::to_array<OptionOfField>({{"bevel_angle", "--angle"},
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
                                  {"setup", "--setup"},
                                  {"counted_passes", "--counted-passes"},
                                  {"counted_height", "--counted-height"},
                                  {"counted_width", "--counted-width"},
                                  {"counted_width_before", "--counted-width-before"},
                                  {"counted_angle", "--counted-angle"},
                                  {"counted_error", "--counted-error"},
                                  {"counted_force", "--counted-force"},
                                  {"counted_stroke", "--counted-stroke"},
                                  {"counted_edge", "--counted-edge"}});

std::vector<base::Problem> named(std::vector<base::Problem> problems) {
  std::ranges::transform(problems, problems.begin(), under_option_of_field);
  return problems;
}

void read_edge(const TypedOptions& typed, ResharpenRequest& request, OptionReader& reader) {
  const TypedSharpening& said = typed.sharpening;
  sharpening::EdgeToSharpen& edge = request.question.edge;
  edge.bevel.bevel_angle.deg = kUnread;
  edge.bevel.thickness_behind_edge_mm = kUnread;
  if (!said.angle) {
    reader.missing("--angle", "the bevel's angle", "--angle=17deg-per-side or 34deg-inclusive");
  }
  if (!said.thickness) {
    reader.missing("--thickness", "how thick the blade is behind the bevel", "--thickness=0.3mm");
  }
  if (!said.land && !said.chip) {
    reader.missing("--land",
                   "there is no damage to take away",
                   "--land=3um, --chip=12um, or both, as seen under a microscope");
  }
  reader.angle("--angle", said.angle, edge.bevel.bevel_angle);
  reader.angle("--primary-angle", said.primary_angle, edge.bevel.primary_angle);
  reader.quantity("--thickness", said.thickness, "mm", edge.bevel.thickness_behind_edge_mm);
  reader.quantity("--land", said.land, "um", edge.damage.land_um);
  reader.quantity("--chip", said.chip, "um", edge.damage.deepest_chip_um);
  reader.quantity("--edge", said.edge, "mm", edge.edge_length_mm);
  const bool is_said = said.land || said.chip;
  if (is_said && edge.damage.land_um == 0 && edge.damage.deepest_chip_um == 0) {
    reader.missing(
        "--land", "with no land and no chip there is nothing to take away", "--chip=12um");
  }
  if (said.micro_bevel) {
    trials::PerSideAngle angle;
    reader.angle("--micro-bevel", said.micro_bevel, angle);
    request.micro_bevel_angle = angle;
  }
}

void read_work(const TypedOptions& typed, ResharpenRequest& request, OptionReader& reader) {
  const TypedSharpening& said = typed.sharpening;
  sharpening::WayOfWorking& work = request.question.work;
  reader.quantity("--force", said.force, "N", work.stroke.force_newton);
  reader.quantity("--stroke", said.stroke, "mm", work.stroke.length_mm);
  reader.plain_number("--pace", said.pace, work.passes_per_minute);
  if (said.dress_every) {
    double passes = 0;
    reader.plain_number("--dress-every", said.dress_every, passes);
    work.dress_every_passes = passes;
  }
  reader.quantity("--dressing-time", said.dressing_time, "min", work.minutes_per_dressing);
}

void read_growth(const TypedOptions& typed, ResharpenRequest& request, OptionReader& reader) {
  const TypedSharpening& said = typed.sharpening;
  if (!typed.cuts) {
    if (said.setup) {
      reader.missing("--cuts", "--setup says when to sharpen only beside it", "--cuts=400");
    }
    return;
  }
  sharpening::DamageGrowth growth{.setup_minutes = 3};
  reader.plain_number("--cuts", typed.cuts, growth.seen_after_cuts);
  reader.quantity("--setup", said.setup, "min", growth.setup_minutes);
  request.growth = growth;
}

void read_stones(const TypedOptions& typed, ResharpenRequest& request, OptionReader& reader) {
  const TypedSharpening& said = typed.sharpening;
  const auto catalogue = workbench::stone_catalogue(said.stones_file.value_or(""));
  if (!catalogue) {
    for (const base::Problem& problem : catalogue.error()) reader.add(problem);
    return;
  }
  std::ranges::copy(catalogue->in_place_of_known, std::back_inserter(request.in_place_of_known));
  if (said.stone) {
    const auto stone = workbench::find_stone(*catalogue, *said.stone);
    if (!stone) return reader.refuse("--stone", stone.error());
    request.stones.push_back(*stone);
    if (!said.compare) return;
  }
  for (const sharpening::Stone& stone : catalogue->stones) {
    if (std::ranges::find(request.stones, stone) == request.stones.end()) {
      request.stones.push_back(stone);
    }
  }
}

void read_steel(const TypedOptions& typed, ResharpenRequest& request, OptionReader& reader) {
  const auto catalogue =
      workbench::apex_catalogue({.steels = typed.sharpening.steels_file.value_or("")});
  if (!catalogue) {
    for (const base::Problem& problem : catalogue.error()) reader.add(problem);
  }
  if (!typed.sharpening.steel) {
    return reader.missing("--steel",
                          "the steel, by its AISI or EN designation, and its hardness if need be",
                          "--steel=1.2379 or --steel=\"1.2379 60HRC\"");
  }
  if (!catalogue) return;
  std::ranges::copy(catalogue->in_place_of_known, std::back_inserter(request.in_place_of_known));
  const auto steel = steel_without_angle(*catalogue, *typed.sharpening.steel);
  if (!steel) return reader.refuse("--steel", steel.error());
  request.question.steel = *steel;
}

bool says_a_count(const TypedSharpening& said) {
  return said.counted_passes || said.counted_height || said.counted_width ||
         said.counted_width_before || said.counted_angle || said.counted_error ||
         said.counted_force || said.counted_stroke || said.counted_edge;
}

void read_count(const TypedOptions& typed, ResharpenRequest& request, OptionReader& reader) {
  const TypedSharpening& said = typed.sharpening;
  if (!says_a_count(said)) return;
  const sharpening::EdgeToSharpen& edge = request.question.edge;
  const sharpening::Stroke& stroke = request.question.work.stroke;
  sharpening::BevelCount count;  // as the work is, unless it is said or could not be read
  if (stroke.force_newton > 0) count.stroke.force_newton = stroke.force_newton;
  if (stroke.length_mm > 0) count.stroke.length_mm = stroke.length_mm;
  if (edge.edge_length_mm > 0) count.edge_length_mm = edge.edge_length_mm;
  if (!said.stone) {
    reader.missing("--stone", "on which stone the passes were counted", "--stone=alumina");
  }
  if (!said.counted_passes) {
    reader.missing("--counted-passes",
                   "how many passes were counted, both sides together",
                   "--counted-passes=60");
    count.passes = kUnread;
  }
  reader.plain_number("--counted-passes", said.counted_passes, count.passes);
  const auto length =
      [&](const std::string& option, const std::optional<std::string>& text, auto& into) {
        if (!text) return;
        double um = 0;
        reader.quantity(option, text, "um", um);
        into = um;
      };
  length("--counted-height", said.counted_height, count.height_um);
  length("--counted-width", said.counted_width, count.width_after_um);
  length("--counted-width-before", said.counted_width_before, count.width_before_um);
  length("--counted-error", said.counted_error, count.error_um);
  if (said.counted_angle) {
    trials::PerSideAngle angle;
    reader.angle("--counted-angle", said.counted_angle, angle);
    count.face_angle = angle;
  }
  reader.quantity("--counted-force", said.counted_force, "N", count.stroke.force_newton);
  reader.quantity("--counted-stroke", said.counted_stroke, "mm", count.stroke.length_mm);
  reader.quantity("--counted-edge", said.counted_edge, "mm", count.edge_length_mm);
  auto counted = sharpening::counted_strokes(count, edge.bevel);
  if (counted) {
    request.question.counted = *counted;
  } else {
    reader.add_new(named(counted.error()));
  }
}

// What the engine cannot work with, of every way asked for.
void look_at_all(const ResharpenRequest& request, OptionReader& reader) {
  sharpening::ResharpeningQuestion question = request.question;
  question.edge.micro_bevel_angle = request.micro_bevel_angle;
  reader.add_new(named(sharpening::problems_of(question)));
  if (request.growth) reader.add_new(named(sharpening::problems_of(*request.growth)));
}

}  // namespace

base::Problem under_option_of_field(base::Problem problem) {
  const auto named = std::ranges::find(kOptions, problem.place.column, &OptionOfField::field);
  problem.place.column = named == kOptions.end() ? "--" : std::string(named->option);
  return problem;
}

base::ResultOrProblems<ResharpenRequest> resharpen_request(const ReadOptions& read) {
  const TypedOptions& typed = read.typed;
  ResharpenRequest request;
  OptionReader reader;
  for (const base::Problem& problem : read.unknown) reader.add(problem);
  for (const std::string& word : typed.positionals) {
    reader.add({.sentence = "“" + word + "” stands alone; everything here is an option",
                .place = {.column = "--", .found = word},
                .accepted = "an option before it, such as --steel=\"C75S 58HRC\""});
  }
  read_steel(typed, request, reader);
  read_stones(typed, request, reader);
  read_edge(typed, request, reader);
  read_work(typed, request, reader);
  read_growth(typed, request, reader);
  if (typed.seed) {
    const auto seed = seed_of("--seed", *typed.seed);
    if (seed) {
      request.question.seed = *seed;
    } else {
      reader.add(seed.error());
    }
  }
  look_at_all(request, reader);
  read_count(typed, request, reader);
  if (!reader.problems().empty()) return tl::unexpected(reader.problems());
  return request;
}

}  // namespace keenfall::cli
