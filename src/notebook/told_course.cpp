#include "notebook/told_course.h"

#include "base/require.h"
#include "notebook/check.h"
#include "notebook/failing_disk.h"
#include "notebook/made_notebook.h"

namespace keenfall::notebook::testing {

ToldCourse told_of(const std::vector<Step>& steps) {
  const ScratchFolder folder("told");
  FailingDisk disk;
  disk.expect(Trouble::power_cut, 1 << 30);  // counts what a cut can hit, and never comes to it
  ToldCourse told{.states = {{}}};
  {
    Bench bench{.path = folder.file("bench.keen")};
    const Course course = run_steps(bench, steps, [&](const Bench& now) {
      if (told.operations_to_make == 0) told.operations_to_make = disk.operations();
      told.states.push_back(now.notebook ? state_of(*now.notebook) : told.states.back());
      base::require(!now.notebook || check(*now.notebook).empty(), "check finds nothing");
    });
    base::require(course.steps_done == steps.size(), course.refusal.c_str());
  }
  told.operations = disk.operations();
  return told;
}

}  // namespace keenfall::notebook::testing
