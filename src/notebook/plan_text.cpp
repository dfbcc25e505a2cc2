#include "notebook/plan_text.h"

#include "base/plain_number.h"
#include "notebook/trial_words.h"

#include <cstddef>

namespace keenfall::notebook {

namespace {

// On one line, whatever a person typed, and with what ends a fact marked.
std::string typed(const std::string& words) {
  std::string text;
  for (const char letter : words) {
    if (letter == '\n') {
      text += "\\n";
    } else {
      if (letter == '\\' || letter == ';') text += '\\';
      text += letter;
    }
  }
  return text;
}

// "; angle 17", or nothing.
std::string fact(const std::string& name, const std::string& words) {
  return words.empty() ? "" : "; " + name + " " + typed(words);
}
std::string fact(const std::string& name, const std::optional<double>& number) {
  return number ? "; " + name + " " + base::plain_number(*number) : "";
}
std::string fact(const std::string& name, const std::optional<trials::PerSideAngle>& angle) {
  return angle ? "; " + name + " " + base::plain_number(angle->deg) + " deg per side" : "";
}

std::string numbers(const std::vector<double>& all) {
  std::string text;
  for (const double number : all) text += (text.empty() ? "" : ", ") + base::plain_number(number);
  return text;
}

std::string cutting_text(const trials::PlannedCutting& cutting) {
  const trials::CutMethod& method = cutting.method;
  std::string text = typed(cutting.medium.name) + fact("condition", cutting.medium.condition) +
                     fact("lot", cutting.lot);
  if (method.motion != trials::Motion::not_recorded) text += "; motion " + word_of(method.motion);
  text += fact("as written", method.as_written) + fact("cut length mm", method.cut_length_mm) +
          fact("edge used mm", method.edge_used_mm) + fact("board", method.board);
  return text + "; read at " + numbers(cutting.checkpoint_cuts);
}

std::string arm_text(const trials::PlannedArm& arm) {
  return typed(arm.blade) + fact("bevel", arm.edge.bevel_angle) +
         fact("apex", arm.edge.apex_angle) + fact("finish", arm.edge.finish) +
         fact("behind the edge mm", arm.edge.thickness_behind_edge_mm) + "; way of cutting " +
         std::to_string(arm.cutting + 1);
}

std::string reading_text(const trials::PlannedReading& reading) {
  std::string text = typed(reading.kind) + fact("unit", reading.unit) +
                     fact("thread", reading.thread) + fact("thread lot", reading.thread_lot) +
                     "; repeats " + std::to_string(reading.repeats);
  for (const std::string& station : reading.stations) text += "; station " + typed(station);
  return text;
}

std::string stop_text(const trials::StopRule& stop) {
  return "at the last checkpoint" + fact("or at times the start", stop.level) +
         fact("or at reading", stop.reading) + fact("force cap N", stop.force_cap_newton);
}

std::string number_of(std::size_t index) { return std::to_string(index + 1); }

}  // namespace

std::string plan_text(const Asked& asked) {
  const trials::Plan& plan = asked.plan;
  std::string text;
  const auto line = [&](const std::string& what, const std::string& words) {
    text += what + ": " + words + "\n";
  };
  for (const trials::Claim& claim : asked.claims) {
    line("Claim",
         typed(claim.words) + "; worth it from " + base::plain_number(claim.worth_it_margin));
  }
  line("Counted",
       typed(plan.counted.one) + "; " + typed(plan.counted.many) +
           (plan.counted.is_measured ? "; measured" : ""));
  for (std::size_t c = 0; c < plan.cuttings.size(); ++c) {
    line("Way of cutting " + number_of(c), cutting_text(plan.cuttings[c]));
  }
  for (std::size_t a = 0; a < plan.arms.size(); ++a) {
    line("Arm " + number_of(a), arm_text(plan.arms[a]));
  }
  line("Reading", reading_text(plan.reading));
  if (plan.start_gate) {
    line("Start gate",
         base::plain_number(plan.start_gate->target_reading) + "; give or take " +
             base::plain_number(plan.start_gate->tolerance_fraction));
  }
  line("Stop", stop_text(plan.stop));
  line("Runs of each arm", std::to_string(plan.runs_each));
  if (!plan.looks.empty()) {
    std::string looks;
    for (const int runs : plan.looks) looks += (looks.empty() ? "" : ", ") + std::to_string(runs);
    line("Looks at runs of each arm", looks);
  }
  if (!plan.house_blade.empty()) line("House blade", typed(plan.house_blade));
  line("Seed of the order", std::to_string(plan.order_seed.number));
  for (const trials::PlannedRun& run : plan.runs) {
    line("Run " + std::to_string(run.order),
         "arm " + number_of(run.arm) + fact("specimen", run.specimen) + "; block " +
             std::to_string(run.block));
  }
  return text;
}

}  // namespace keenfall::notebook
