#include "wire/bench_to_cut.h"

#include "wire/json_pieces.h"

namespace keenfall::wire {

std::string bench_to_cut_to_json(const BenchToCut& start) {
  Json object = {{"is_at_desk", start.is_at_desk}};
  put_text(object, "notebook", start.notebook);
  put_text(object, "notebook_name", start.notebook_name);
  object["trials"] = Json::array();
  for (const TrialToCut& trial : start.trials) {
    object["trials"].push_back(
        {{"uid", trial.uid}, {"name", trial.name}, {"runs", trial.runs}, {"left", trial.left}});
  }
  return in_one_line(object);
}

}  // namespace keenfall::wire
