#include "cli/notebook_help.h"

#include "cli/help_entries.h"
#include "cli/text_layout.h"

#include <vector>

namespace keenfall::cli {

namespace {

struct NotebookPage {
  std::string_view command;
  std::string_view usage;
  std::string_view meaning;
  std::vector<HelpEntry> options;
};

constexpr HelpEntry kWho{"--who=NAME", "who does it; else the name you are logged in by"};
constexpr HelpEntry kWhy{"--why=TEXT", "why, for whoever reads the log"};

// NOLINTNEXTLINE(readability-function-size): a table
const std::vector<NotebookPage>& pages() {
  static const std::vector<NotebookPage> all = {
      {"new",
       "keenfall new FILE.keen",
       "Makes an empty notebook: one file that keeps trials and every change to them. A file that "
       "is there already is left alone.",
       {kWho}},
      {"take",
       "keenfall take FILE.keen TABLE... [options]",
       "Puts tables into a notebook, as one trial. What is there already is known again, runs that "
       "have more readings grow, and a table that contradicts the notebook, or has a problem, is "
       "not taken at all. Tables are read as judge reads them. A data package that keenfall export "
       "wrote is taken back too, with the options of merge.",
       {{"--trial=NAME", "the trial they belong to; else it is named after the first table"},
        {"--keep-good",
         "leaves out the rows with a problem, names each and takes the others; the code is 3 where "
         "anything was left out"},
        kWho,
        kWhy,
        {"--column, --sheet, --shape, --decimal, --where, --define-kind, --kind",
         "how to read the table, as in keenfall help judge; --kind is the kind of rows that name "
         "none"},
        {"--same, --apart, --keep-here", "of a data package, as in keenfall help merge"}}},
      {"show",
       "keenfall show FILE.keen [TRIAL]",
       "Lists the trials of a notebook with their runs and readings, or the runs of one trial: "
       "what was read, struck out, doubted, voided and noted, after what is asked and planned.",
       {}},
      {"log",
       "keenfall log FILE.keen",
       "Lists every change to a notebook: its entry, when, by whom, what, why, and whether it was "
       "undone.",
       {}},
      {"undo",
       "keenfall undo FILE.keen [ENTRY] [options]",
       "Undoes a change, which the log then shows; without ENTRY the last that still holds. To "
       "undo an undo is to have the change back: name its entry.",
       {kWho, kWhy}},
      {"strike",
       "keenfall strike FILE.keen --run=NAME --reason=TEXT [options]",
       "Strikes readings out of a run, or voids the whole run where no cuts are named. They stay, "
       "with the reason, and count no longer; keenfall undo takes it back.",
       {{"--trial=NAME", "the trial; may be left out where the notebook has one"},
        {"--blade, --medium, --specimen",
         "which run is meant, where several have that name; with what show has behind the name, "
         "as in --blade=\"A (15° per side)\", if need be"},
        {"--cuts=15", "only the readings after so many cuts; else the run is voided"},
        {"--lasted=40", "instead: that the edge lasted so many cuts, where a table says it"},
        {"--reading=240", "only readings of this value, in the unit they are kept in"},
        {"--station=NAME", "only those of this station"},
        {"--instead=104",
         "corrects the one reading that fits: it is struck out, and this stands beside it, in the "
         "unit it is kept in"},
        {"--reason=TEXT", "why they do not count"},
        kWho}},
      {"export",
       "keenfall export FILE.keen FILE|FOLDER [options]",
       "Hands out what a notebook holds, with all that is struck out or voided: a name that ends "
       "in .csv gets one trial as a table, a row a reading; .json the whole as one JSON document; "
       "any other a new folder with the whole as a data package, which keenfall take takes back. "
       "What is there already is left alone.",
       {{"--trial=NAME", "the trial of a table; may be left out where the notebook has one"},
        {"--as=csv", "csv, json or package, whatever the name"}}},
      {"merge",
       "keenfall merge FILE.keen OTHER.keen [options]",
       "Brings what another notebook holds into this one, as one change. What both have is known "
       "again; runs that one has more of grow. What is only called alike, or is recorded "
       "otherwise, is a conflict: all are listed, and nothing is merged until the options say what "
       "is meant. The other notebook is not changed.",
       {{"--same", "trials, blades and runs that are called alike are the same"},
        {"--apart=R.", "they are not: the other's are called A (R.) here"},
        {"--keep-here", "where both record one thing otherwise, what is here stands"},
        kWho,
        kWhy}},
      {"check",
       "keenfall check FILE.keen",
       "Looks whether a notebook is as it was written: the file's structure, every row's checksum, "
       "the journal's chain, and whether the rows are those the journal leaves. Changes nothing.",
       {}},
      {"backup",
       "keenfall backup FILE.keen COPY",
       "Makes a whole copy, also while the notebook is in use. A file that is there already is "
       "left alone.",
       {}}};
  return all;
}

}  // namespace

std::optional<std::string> notebook_help(std::string_view command, const Look& look) {
  for (const NotebookPage& page : pages()) {
    if (page.command != command) continue;
    std::string text = wrapped(page.usage, {}, look) + "\n" + wrapped(page.meaning, {}, look);
    if (!page.options.empty()) text += "\n" + entries_text(page.options, look);
    return text + "\n" +
           wrapped(
               "Exit code 0: done. 2: an option or a name is wrong. 3: a table is refused or, with "
               "--keep-good, taken in part; or the notebook holds nothing that fits. 4: a file "
               "cannot "
               "be read or written, or a notebook is damaged.",
               {},
               look);
  }
  return std::nullopt;
}

}  // namespace keenfall::cli
