#include "cli/simulation_help.h"

#include "cli/help_entries.h"
#include "cli/text_layout.h"

#include <vector>

namespace keenfall::cli {

namespace {

std::vector<HelpEntry> edge_entries() {
  return {{"--steel=NAME", "a steel of keenfall apex --list, or of your file"},
          {"--medium=NAME",
           "what is cut: \"new sisal matting\" (clean) or \"uplifted sisal matting\" (gritty)"},
          {"--schedule=PARTS",
           "mixed work, begun anew until a run ends: \"90 new sisal matting, 10 uplifted sisal "
           "matting, pause 8 h wet\"; a pause may also be dry, or \"wet at 0.02 um/h\""},
          {"--angle=20", "degrees per side at the apex, 1 to 45"},
          {"--finish=fine", "fine, coarse, or of your file"},
          {"--edge-length=20", "mm of edge that is used"},
          {"--steels=FILE, --media=FILE, --finishes=FILE",
           "your own: a CSV table with a row each, its columns as in docs/methods/apex.md"},
          {"--seed=1", "the number that makes it repeatable"},
          {"--threads=2", "how many to work with; the numbers do not depend on it"},
          {"--quiet", "no progress"}};
}

std::string simulate_help(const Look& look) {
  return wrapped("keenfall simulate [options]", {}, look) + "\n" +
         wrapped(
             "Makes a whole trial from the apex simulator, as if somebody had cut and read, and "
             "knows the truth behind it: to try out how many runs a trial needs, or whether it "
             "could tell two edges apart at all. Without --out, --notebook, --json or --truth its "
             "table stands alone on standard output. Where nothing is said it has X153CrMoV12 and "
             "C75S in new and in uplifted sisal matting. Plausible parameters, not validated: it "
             "is "
             "no evidence about any steel or medium.",
             {},
             look) +
         "\nWhere it goes\n" +
         entries_text(
             {{"--out=FILE", "a table, a row a reading; the file must not be there yet"},
              {"--notebook=FILE.keen", "as a trial of a notebook"},
              {"--trial=NAME",
               "what the trial is called; else what it is: its steels, media, edges and seed"},
              {"--who=NAME, --why=TEXT", "for the notebook's log"},
              {"--truth", "how long the edges last, and how they stand to each other"},
              {"--json, --json=FILE", "the trial and its truth as JSON"}},
             look) +
         "\nWhich edges (each may be said several times; every combination is an arm)\n" +
         entries_text(edge_entries(), look) + "\nHow the trial is done\n" +
         entries_text({{"--runs=6", "runs of each arm"},
                       {"--blocks=6", "blocks, each in shuffled order; else one for each run"},
                       {"--cuts=1023", "where a run stops that is not blunt by then"},
                       {"--stop-level=4", "times the start reading at which a run stops"},
                       {"--reading=push", "push: thread push in gf; slice: cord draw in mm"},
                       {"--repeats=7", "readings at each checkpoint (0, 1, 3, 7, 15, ... cuts)"},
                       {"--scatter=run=0.2,reading=0.09",
                        "sd of logs: run, block, start, spot, reading; or none"}},
                      look) +
         "\n" +
         wrapped(
             "Exit code 0: done. 2: an option is wrong. 3: a table of steels, media or finishes is "
             "refused, or the notebook refuses the trial. 4: a file cannot be read or written. "
             "130: stopped.",
             {},
             look);
}

std::string apex_help(const Look& look) {
  return wrapped("keenfall apex [options]", {}, look) + "\n" +
         wrapped(
             "Cuts one simulated edge and says how it blunts: when it is half as keen, what is "
             "read on it over the cuts, how a stretch of it looks, and what took the metal. "
             "Where nothing is said it is of X153CrMoV12 and cuts uplifted sisal matting. "
             "Plausible parameters, not validated.",
             {},
             look) +
         "\n" +
         entries_text({{"--list",
                        "the steels, media and finishes that are known, each number with its mark; "
                        "with --steel one steel with its sources"},
                       {"--cuts=255", "how far it is cut"},
                       {"--draws=200",
                        "the range of its half keenness over all plausible constants, from so many "
                        "draws of them at once; 50 or more"},
                       {"--json, --json=FILE", "all of it as JSON, the whole section too"}},
                      look) +
         "\nWhich edge\n" + entries_text(edge_entries(), look);
}

std::string predict_help(const Look& look) {
  return wrapped("keenfall predict BLADE BLADE [options]", {}, look) + "\n" +
         wrapped(
             "Says how many times as long one blade would stay keen as another, as far as "
             "hardness, carbides, toughness and angle tell: always a range, over all that is not "
             "well known, with what it hangs on. A BLADE is a steel, then its hardness and its "
             "angle if need be, in quotes: \"X153CrMoV12 61HRC 20deg-per-side\". Plausible "
             "constants, not validated.",
             {},
             look) +
         "\n" +
         entries_text(
             {{"--medium=NAME",
               "\"new sisal matting\" (the usual), \"uplifted sisal matting\", or of your file"},
              {"--schedule=PARTS", "mixed work in its place, as keenfall help apex says"},
              {"--reading=push", "push or slice: they rank damaged edges unlike each other"},
              {"--finish=fine", "fine, coarse, or of your file"},
              {"--draws=200", "of all constants at once, for the range; 50 or more"},
              {"--runs=10", "simulated edges of each blade for one answer"},
              {"--steels=FILE, --media=FILE, --finishes=FILE",
               "your own: a CSV table with a row each, its columns as in docs/methods/apex.md"},
              {"--seed=1", "the number that makes it repeatable"},
              {"--threads=2", "how many to work with; the numbers do not depend on it"},
              {"--json, --json=FILE", "all constants with their sources, as JSON"},
              {"--quiet", "no progress"}},
             look);
}

}  // namespace

std::optional<std::string> simulation_help(std::string_view command, const Look& look) {
  if (command == "simulate") return simulate_help(look);
  if (command == "apex") return apex_help(look);
  if (command == "predict") return predict_help(look);
  return std::nullopt;
}

}  // namespace keenfall::cli
