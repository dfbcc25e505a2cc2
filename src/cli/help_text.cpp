#include "cli/help_text.h"

#include "cli/help_entries.h"
#include "cli/notebook_help.h"
#include "cli/reference_help.h"
#include "cli/simulation_help.h"
#include "cli/text_layout.h"

namespace keenfall::cli {

namespace {

std::vector<HelpEntry> judging_options() {
  return {
      {"--worth-it=1.5", "a ratio of lasting below which you would not act (above 1)"},
      {"--stop-level=4",
       "also give the cuts until the reading is this many times its start, and compare there"},
      {"--stop-reading=400gf", "compare all edges at this one reading instead"},
      {"--model=plain",
       "without robust readings, blocks and checkpoint errors; \"default\" has them"},
      {"--claim=steels",
       "of what the ratios are to hold: \"steels\" (the usual, where there are several pieces of "
       "both) or \"blades\", just the pieces that were cut with"},
      {"--looks=3,6,9",
       "the runs each at which the plan looks at its results; intervals are widened for it"},
      {"--told-in=N,in",
       "readings of force in N, gf, lbf or the like, lengths in mm or in; else as recorded. The "
       "verdicts do not depend on it"},
      {"--seed=1", "the number that makes the answer repeatable"},
      {"--threads=2", "how many to work with; the numbers do not depend on it"}};
}

std::vector<HelpEntry> answer_options() {
  return {{"--json, --json=FILE", "the whole answer as JSON, on standard output or into a file"},
          {"--quiet", "the answers only, and no progress"}};
}

std::vector<HelpEntry> both(std::vector<HelpEntry> first, const std::vector<HelpEntry>& then) {
  first.insert(first.end(), then.begin(), then.end());
  return first;
}

std::vector<HelpEntry> table_options() {
  return {{"--kind=NAME", "judge only readings of this kind, such as thread_push"},
          {"--rung=4",
           "the rung at which a pass ladder is judged, 1 to 9; else the one that tells most"},
          {"--test-level=3",
           "what failing a test means on a curve, times the start reading: then edges tested are "
           "compared with edges read"},
          {"--column=OURS=THEIRS", "a column by another name: --column cuts=strokes (repeatable)"},
          {"--define-kind=DEFINITION",
           "an own kind of reading, name:unit:lower or name:unit:higher, then options: "
           "--define-kind flank_wear:mm:lower (repeatable)"},
          {"--shape=runs",
           "the table is long (a row a reading), wide (cuts down, runs across) or runs (a line a "
           "run), where that is not plain by itself"},
          {"--decimal=comma",
           "how the table writes decimals, comma or point, where its numbers do not tell"},
          {"--sheet=NAME", "only this sheet of a spreadsheet (repeatable)"},
          {"--where=COLUMN=VALUE", "only the rows whose column reads so (repeatable)"}};
}

std::string judge_help(const Look& look) {
  return wrapped("keenfall judge TABLE... [options]", {}, look) + "\n" +
         wrapped(
             "Says which edge stays keen longer, how sure that is, and what else could explain it. "
             "A table is a CSV file or a spreadsheet (.xlsx, .ods) that names blade, medium, run, "
             "cuts and reading: a reading a "
             "row, "
             "or cuts down and runs across, or a line a run. Several tables are taken as one "
             "trial. A notebook (.keen) is judged as it stands: --trial=NAME says which of its "
             "trials, and how to read a table was said when it was taken. It counts the judging "
             "as a look by --who, and keeps the answer, where it can be written to.",
             {},
             look) +
         "\nHow to judge\n" + entries_text(both(judging_options(), answer_options()), look) +
         "\nOf a notebook\n" +
         entries_text({{"--trial=NAME", "which trial; may be left out where it has one"},
                       {"--who=NAME", "whose look it is; else of the name you are logged in by"}},
                      look) +
         "\nHow to read the table\n" + entries_text(table_options(), look) + "\n" +
         wrapped(
             "Exit code 0: there is an answer, also when it is \"not settled\". 1: the fit is "
             "not usable. 2: an option is wrong. 3: a table is refused. 4: a file cannot be "
             "read or written. 130: stopped.",
             {},
             look);
}

std::string tell_help(const Look& look) {
  return wrapped("keenfall tell TABLE...|FILE.keen [options]", {}, look) + "\n" +
         wrapped(
             "Judges as keenfall judge does, and writes a report that others can check: every "
             "judgement, every run and every reading, with all that is struck out or voided. Of a "
             "notebook it counts as a look. As a table it is the readings alone: nothing is judged "
             "or counted then.",
             {},
             look) +
         "\nWhat to write\n" +
         entries_text(
             {{"--out=FILE",
               "the file to write, which must not be there yet; without it, standard output"},
              {"--format=json",
               "html (a page that opens anywhere), json or csv (a table); else as the name after "
               "--out ends. Without --out it must "
               "be said"},
              {"--trial=NAME", "the trial; may be left out where the notebook has one"},
              {"--who=NAME", "whose look it is; else of the name you are logged in by"},
              {"--quiet", "no progress, and no word on what was written"}},
             look) +
         "\nHow to judge\n" + entries_text(judging_options(), look) + "\nHow to read the table\n" +
         entries_text(table_options(), look) + "\n" +
         wrapped(
             "Exit code 0: done. 1: no fit is usable, so that there is no verdict in it. 2: an "
             "option is wrong. 3: a table is refused. 4: a file cannot be read or written. 130: "
             "stopped.",
             {},
             look);
}

std::string demo_help(const Look& look) {
  std::vector<HelpEntry> entries = both(judging_options(), answer_options());
  entries.push_back(
      {"--table=FILE", "write the demo's readings as a table, to see what one looks like"});
  entries.push_back({"--trial-seed=32", "draw another trial: another workshop, the same truth"});
  entries.push_back({"--out=FILE", "write the demo's report there, as a page (.html)"});
  entries.push_back({"--no-open", "open nothing on the desktop (./keen demo opens the app)"});
  return wrapped("keenfall demo [options]", {}, look) + "\n" +
         wrapped(
             "Judges an invented trial: three knives in new and in uplifted matting.", {}, look) +
         "\n" + entries_text(entries, look);
}

std::string open_help(const Look& look) {
  return wrapped("keenfall open [FILE.keen] [options]", {}, look) + "\n" +
         wrapped(
             "Serves Keenfall's pages to the browser of this machine, and without --bench to no "
             "other, until "
             "Ctrl-C, or a press at the foot of its pages, stops it. The address that is printed "
             "holds a key: whoever has it may see and change "
             "the notebook. Where you have it open already, with that notebook or none named, that "
             "one is shown; --port, --bench and --no-open begin another.",
             {},
             look) +
         "\n" +
         entries_text(
             {{"--demo",
               "with an invented trial, in a new notebook; FILE.keen is made where it is not "
               "there"},
              {"--no-open", "print the address, and open nothing on the desktop"},
              {"--port=17034", "of the address; without it this one, or any that is free"},
              {"--bench",
               "also lets phones and other devices of this machine's networks in at the bench, "
               "each "
               "by a code that is good once; they can do nothing else. Off without it"},
              {"--bench-port=17035", "of the address for those devices"},
              {"--bench-name=NAME", "under which they may ask beside the address"},
              {"--bench-certificate=FILE",
               "in PEM: what they send is encrypted (TLS). Without it whoever listens on that "
               "network can read it"},
              {"--bench-key=FILE", "the certificate's private key, in PEM"},
              {"--own-window",
               "as the menu does: the terminal window is there for Keenfall alone, says that "
               "closing it stops Keenfall, and stays until Enter where something is wrong"}},
             look) +
         "\n" +
         wrapped(
             "Exit code 0: it was stopped. 2: an option is wrong. 4: the notebook cannot be read, "
             "or the port cannot be had.",
             {},
             look);
}

std::string scale_help(const Look& look) {
  return wrapped("keenfall scale DEVICE [options]", {}, look) + "\n" +
         wrapped(
             "Shows what a scale at a serial or USB line (/dev/ttyUSB0) sends, until Ctrl-C: every "
             "reading that differs from the one before with the line it was read from, and every "
             "line that is not read with the reason. Nothing is sent to the scale, and nothing is "
             "kept. Set the scale to send by itself, with its unit.",
             {},
             look) +
         "\n" +
         entries_text(
             {{"--baud=9600", "300, 600, 1200, 2400, 4800, 9600 or 19200, as the scale is set"},
              {"--format=7E1", "8N1 (else) or 7E1: bits, parity, stop bits, as the scale is set"},
              {"--decimal=comma", "1,104 kg is a little more than 1 kg; else it is refused"},
              {"--hold=peak",
               "say the peak of every press; or with \"stable\" every value that settles"},
              {"--full-press=200gf", "what a press reaches, so that touches are told from it"}},
             look) +
         "\n" +
         wrapped(
             "Exit code 0: it was stopped. 2: an option is wrong. 4: the device is not there, is "
             "no "
             "serial line, or may not be read.",
             {},
             look);
}

}  // namespace

const std::vector<std::string_view>& command_names() {
  static const std::vector<std::string_view> names = {
      "open",   "judge",    "demo",    "tell",    "simulate",  "apex",  "new",    "take",   "show",
      "log",    "undo",     "strike",  "export",  "merge",     "check", "backup", "steels", "grits",
      "phases", "hardness", "convert", "predict", "resharpen", "scale", "help"};
  return names;
}

std::string first_words(const Look& look) {
  return wrapped(
             "Keenfall judges knife-cutting trials: which edge stays keen longer, and how sure "
             "that "
             "is.",
             {},
             look) +
         "\n" +
         entries_text({{"keenfall demo", "see an answer on invented readings"},
                       {"keenfall judge TABLE", "get one on your own"},
                       {"keenfall open", "do all this on pages, in a browser"},
                       {"keenfall help", "everything else"}},
                      look);
}

std::string help_text(const Look& look) {
  return wrapped(
             "Keenfall judges knife-cutting trials: from readings of sharpness as edges blunt, "
             "which "
             "edge stays keen longer, how sure that is, and what else could explain it.",
             {},
             look) +
         "\n" +
         entries_text(
             {{"keenfall judge TABLE...", "judge tables of readings"},
              {"keenfall tell TABLE...|FILE.keen", "write a report that others can check"},
              {"keenfall open [FILE.keen]", "do all of it on pages in a browser, on this machine"},
              {"keenfall demo", "judge an invented trial, to see what an answer looks like"},
              {"keenfall simulate", "make a trial from simulated edges, with the truth beside it"},
              {"keenfall apex", "how one edge blunts: a simulated edge over the cuts"},
              {"keenfall predict A B", "how two blades would compare, as far as physics tells"},
              {"keenfall new FILE.keen", "make a notebook, in which your trials are kept"},
              {"keenfall take FILE.keen TABLE...", "put tables into a notebook"},
              {"keenfall judge FILE.keen", "judge a trial of a notebook"},
              {"keenfall show FILE.keen [TRIAL]", "the trials of a notebook, or one's runs"},
              {"keenfall log FILE.keen", "what was changed in a notebook, by whom and why"},
              {"keenfall undo FILE.keen", "undo a change"},
              {"keenfall strike FILE.keen", "strike readings out, or void a run"},
              {"keenfall export FILE.keen TO", "hand it out: a table, JSON, or a data package"},
              {"keenfall merge FILE.keen OTHER.keen", "bring another notebook's content in"},
              {"keenfall check FILE.keen", "whether a notebook is as it was written"},
              {"keenfall backup FILE.keen COPY", "a whole copy"},
              {"keenfall resharpen --steel=NAME ...", "what bringing a damaged edge back takes"},
              {"keenfall scale DEVICE", "read a scale at a serial or USB line, to try it"},
              {"keenfall steels [NAME]", "steels by their AISI and EN designations"},
              {"keenfall grits [GRIT]", "grit systems side by side, in µm"},
              {"keenfall phases [NAME]", "how hard carbides, minerals and abrasives are"},
              {"keenfall hardness [HRC or HV]", "HRC and HV side by side, or one in the other"},
              {"keenfall convert WHAT TO", "units, hardness scales and grits into others"},
              {"keenfall help [COMMAND]", "this page, or the options of a command"},
              {"keenfall --version", "which Keenfall this is"}},
             look);
}

std::optional<std::string> help_on(std::string_view command, const Look& look) {
  if (command == "judge") return judge_help(look);
  if (command == "tell") return tell_help(look);
  if (command == "demo") return demo_help(look);
  if (command == "open") return open_help(look);
  if (command == "scale") return scale_help(look);
  if (command == "help") return help_text(look);
  if (auto text = simulation_help(command, look)) return text;
  if (auto text = notebook_help(command, look)) return text;
  return reference_help(command, look);
}

}  // namespace keenfall::cli
