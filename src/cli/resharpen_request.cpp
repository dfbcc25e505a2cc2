#include "cli/resharpen_request.h"

#include "cli/option_numbers.h"
#include "materials/quantity.h"
#include "materials/units.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <string>
#include <string_view>
#include <utility>

namespace keenfall::cli {

namespace {

using Typed = std::optional<std::string>;

class Reader {
 public:
  void refuse(const std::string& option, base::Problem problem) {
    problem.place.column = option;
    problem.sentence = option + ": " + problem.sentence;
    problems_.push_back(std::move(problem));
  }

  void add(base::Problem problem) { problems_.push_back(std::move(problem)); }

  void missing(const std::string& option, const std::string& what, const std::string& example) {
    problems_.push_back({.kind = base::ProblemKind::missing,
                         .sentence = option + " is missing: " + what + ".",
                         .place = {.column = option},
                         .accepted = example});
  }

  // A quantity in this unit; what stood there before where nothing was typed.
  void quantity(const std::string& option, const Typed& text, std::string_view unit, double& into) {
    if (!text) return;
    const auto typed = materials::parse_quantity(*text);
    if (!typed) return refuse(option, typed.error());
    if (typed->unit.empty()) {
      return refuse(option,
                    {.kind = base::ProblemKind::missing,
                     .sentence = "“" + *text + "” has no unit",
                     .place = {.found = *text},
                     .accepted = "a number with its unit, such as " + *text + std::string(unit)});
    }
    const auto converted = materials::convert(typed->number, typed->unit, unit);
    if (!converted) return refuse(option, converted.error());
    into = *converted;
  }

  void plain_number(const std::string& option, const Typed& text, double& into) {
    if (!text) return;
    double number = 0;
    const char* end = text->data() + text->size();
    const auto [stopped, fault] = std::from_chars(text->data(), end, number);
    if (fault != std::errc() || stopped != end || !std::isfinite(number) || number <= 0) {
      return refuse(option,
                    {.sentence = "“" + *text + "” is no number above zero",
                     .place = {.found = *text},
                     .accepted = "a number without a unit, such as 30"});
    }
    into = number;
  }

  [[nodiscard]] const std::vector<base::Problem>& problems() const { return problems_; }

 private:
  std::vector<base::Problem> problems_;
};

void read_edge(const TypedOptions& typed, ResharpenRequest& request, Reader& reader) {
  const TypedSharpening& said = typed.sharpening;
  sharpening::EdgeToSharpen& edge = request.question.edge;
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
  reader.quantity("--angle", said.angle, "deg-per-side", edge.bevel.bevel_angle.deg);
  reader.quantity(
      "--primary-angle", said.primary_angle, "deg-per-side", edge.bevel.primary_angle.deg);
  reader.quantity("--thickness", said.thickness, "mm", edge.bevel.thickness_behind_edge_mm);
  reader.quantity("--land", said.land, "um", edge.damage.land_um);
  reader.quantity("--chip", said.chip, "um", edge.damage.deepest_chip_um);
  reader.quantity("--edge", said.edge, "mm", edge.edge_length_mm);
  const bool is_read = reader.problems().empty() && (said.land || said.chip);
  if (is_read && edge.damage.land_um == 0 && edge.damage.deepest_chip_um == 0) {
    reader.missing(
        "--land", "with no land and no chip there is nothing to take away", "--chip=12um");
  }
  if (said.micro_bevel) {
    trials::PerSideAngle angle;
    reader.quantity("--micro-bevel", said.micro_bevel, "deg-per-side", angle.deg);
    request.micro_bevel_angle = angle;
  }
}

void read_work(const TypedOptions& typed, ResharpenRequest& request, Reader& reader) {
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

void read_growth(const TypedOptions& typed, ResharpenRequest& request, Reader& reader) {
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

void read_stones(const TypedOptions& typed, ResharpenRequest& request, Reader& reader) {
  const TypedSharpening& said = typed.sharpening;
  if (said.stone) {
    const auto stone = sharpening::find_stone(*said.stone);
    if (!stone) return reader.refuse("--stone", stone.error());
    request.stones.push_back(*stone);
    if (!said.compare) return;
  }
  for (const sharpening::Stone& stone : sharpening::known_stones()) {
    if (std::ranges::find(request.stones, stone) == request.stones.end()) {
      request.stones.push_back(stone);
    }
  }
}

void read_steel(const TypedOptions& typed, ResharpenRequest& request, Reader& reader) {
  if (!typed.sharpening.steel) {
    return reader.missing("--steel", "the steel, by its AISI or EN designation", "--steel=1.2379");
  }
  const auto steel = materials::find_microstructure(*typed.sharpening.steel);
  if (!steel) return reader.refuse("--steel", steel.error());
  request.question.steel = *steel;
}

}  // namespace

base::ResultOrProblems<ResharpenRequest> resharpen_request(const TypedOptions& typed) {
  ResharpenRequest request;
  Reader reader;
  for (const std::string& word : typed.positionals) {
    reader.refuse("--steel",
                  {.sentence = "“" + word + "” stands alone; everything here is an option",
                   .place = {.found = word},
                   .accepted = "--steel=" + word});
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
  if (!reader.problems().empty()) return tl::unexpected(reader.problems());
  return request;
}

}  // namespace keenfall::cli
