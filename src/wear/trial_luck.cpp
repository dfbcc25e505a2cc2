#include "wear/trial_luck.h"

#include "wear/used_constants.h"

#include <bit>
#include <cstdint>
#include <string_view>
#include <variant>

namespace keenfall::wear {

namespace {

// Fowler, Noll and Vo's hash, the variant 1a with 64 bits (RFC 9923).
class Fingerprint {
 public:
  void add(std::string_view text) {
    for (const char letter : text) add_byte(static_cast<unsigned char>(letter));
    add_byte(0);  // so that "ab", "c" is not "a", "bc"
  }

  void add(double number) {
    const auto bits = std::bit_cast<std::uint64_t>(number + 0.0);  // -0 is 0
    for (unsigned shift = 0; shift < 64; shift += 8) {
      add_byte(static_cast<unsigned char>((bits >> shift) & 0xffU));
    }
  }

  [[nodiscard]] std::uint64_t number() const { return hash_; }

 private:
  void add_byte(unsigned char byte) {
    hash_ ^= byte;
    hash_ *= 0x100000001b3U;
  }

  std::uint64_t hash_ = 0xcbf29ce484222325U;
};

void add_constants(Fingerprint& print, const std::vector<materials::UncertainConstant>& constants) {
  for (const auto& constant : constants) {
    print.add(constant.field);
    print.add(constant.estimate.typical);
  }
}

void add_works(Fingerprint& print, const std::vector<WorkPlan>& works) {
  for (const WorkPlan& work : works) {
    print.add(work.name);
    for (const WorkStep& step : work.steps) {
      print.add(static_cast<double>(step.cuts));
      if (const auto* pause = std::get_if<WetPause>(&step.what)) {
        print.add(pause->duration_hour);
        print.add(pause->land_growth_um_per_hour);
      } else {
        print.add(std::get<AbrasiveMedium>(step.what).name);
      }
    }
  }
}

}  // namespace

base::Seed luck_of(const TrialPlan& plan) {
  Fingerprint print;
  const UsedConstants used = used_constants(plan);
  for (const auto* group : {&used.steels, &used.media, &used.finishes}) {
    for (const NamedConstants& each : *group) {
      print.add(each.name);
      add_constants(print, each.constants);
    }
  }
  add_constants(print, used.model);
  add_works(print, plan.works);
  for (const TrialEdge& edge : plan.edges) {
    print.add(edge.finish_name);
    print.add(edge.apex_angle.deg);
  }
  const PracticeScatter& scatter = plan.scatter;
  for (const double number : {static_cast<double>(plan.runs_each),
                              static_cast<double>(plan.blocks),
                              static_cast<double>(plan.repeats),
                              static_cast<double>(plan.longest_cuts),
                              plan.stop_level,
                              plan.edge_length_mm,
                              scatter.run_log_sd,
                              scatter.block_log_sd,
                              scatter.start_log_sd,
                              scatter.spot_log_sd,
                              scatter.reading_log_sd}) {
    print.add(number);
  }
  return {plan.seed.number ^ print.number()};
}

}  // namespace keenfall::wear
