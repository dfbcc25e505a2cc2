#include "cli/reference_help.h"

#include "cli/help_entries.h"
#include "cli/text_layout.h"

namespace keenfall::cli {

namespace {

std::string usage_and_meaning(std::string_view usage, std::string_view meaning, const Look& look) {
  return wrapped(usage, {}, look) + "\n" + wrapped(shown_as(meaning, look), {}, look);
}

std::string json_option_help(const Look& look) {
  return "\n" + entries_text({{"--json, --json=FILE",
                               "the answer as JSON, on standard output or into a file"}},
                             look);
}

std::string steels_help(const Look& look) {
  return usage_and_meaning(
      "keenfall steels [NAME]",
      "Lists the steels known by AISI and EN designation, or one of them with the source of each "
      "number.",
      look);
}

std::string grits_help(const Look& look) {
  return usage_and_meaning(
      "keenfall grits [SYSTEM or GRIT]",
      "Shows the grit systems side by side, one system (JIS), or one grit (F1000, 9 µm) with its "
      "nearest in the others. A bare number is shown with all it could be.",
      look);
}

std::string phases_help(const Look& look) {
  return usage_and_meaning(
             "keenfall phases [NAME] [--json]",
             "Lists carbides, nitrides, minerals, fillers and abrasives from soft to hard, each "
             "with its source. With a NAME (quartz, M7C3, diamond) it says what that one scratches "
             "and what scratches it; with a steel (A11) what cuts its matrix and its carbides.",
             look) +
         json_option_help(look);
}

std::string hardness_help(const Look& look) {
  return usage_and_meaning(
             "keenfall hardness [HARDNESS] [--json]",
             "Shows HRC and HV side by side (ASTM E140), or one hardness (61HRC, 720HV) on both "
             "scales.",
             look) +
         json_option_help(look);
}

std::string convert_help(const Look& look) {
  return usage_and_meaning(
      "keenfall convert QUANTITY UNIT",
      "Converts a quantity: 400gf to N, 61HRC to HV, 17deg-per-side to inclusive, F1000 to JIS.",
      look);
}

std::string resharpen_help(const Look& look) {
  return usage_and_meaning(
             "keenfall resharpen --steel=NAME --angle=ANGLE --thickness=LENGTH --land=WIDTH "
             "--chip=DEPTH [options]",
             "Says how much steel must go before a damaged edge is whole, and how many passes and "
             "minutes that takes on which stone, as ranges. A model, not a measurement.",
             look) +
         "\nThe edge\n" +
         entries_text(
             {{"--steel=1.2379",
               "by AISI or EN designation, of those whose structure is known; at "
               "another hardness \"1.2379 60HRC\""},
              {"--angle=17", "of the bevel, degrees per side; or 34deg-inclusive"},
              {"--thickness=0.3mm", "of the blade behind the bevel, at its shoulder"},
              {"--land=3um", "how wide the worn apex is; 0 where nothing is said"},
              {"--chip=12um", "how deep the deepest chip is below that; 0 where nothing is said"},
              {"--edge=100mm", "length of edge; 100 mm where nothing is said"},
              {"--primary-angle=1.5", "of the faces behind the bevel"},
              {"--micro-bevel=20", "answer also for setting a micro-bevel"}},
             look) +
         "\nThe work\n" +
         entries_text(
             {{"--stone=alumina",
               "alumina, SiC, CBN, diamond or of your file; without it all of them"},
              {"--compare", "the others beside it"},
              {"--dress-every=30", "passes after which the stone is dressed; else never"},
              {"--dressing-time=1min", "what each dressing takes"},
              {"--force=10N, --stroke=120mm", "how hard, and how long a stroke"},
              {"--pace=90", "passes a minute"},
              {"--cuts=400", "the damage was seen after so many: says when to sharpen again"},
              {"--setup=3min", "what each sharpening takes besides, with --cuts"},
              {"--stones=FILE, --steels=FILE", "your own, as CSV with the units in the columns"},
              {"--seed=1", "the number that makes the ranges repeatable"}},
             look) +
         "\nCounted on your own stone, with the bevel measured before and after\n" +
         entries_text(
             {{"--counted-passes=20",
               "on the stone of --stone, both sides together, freshly dressed"},
              {"--counted-height=4um", "by how much the apex went up; or"},
              {"--counted-width=80um", "how wide the ground face became, on one side"},
              {"--counted-angle=22", "of the test bevel that was ground; else the bevel itself"},
              {"--counted-width-before=20um", "0 where nothing is said"},
              {"--counted-error=3um", "of a reading, either way; else a tenth of it"},
              {"--counted-force, -stroke, -edge", "where they were not those of the work"}},
             look) +
         json_option_help(look);
}

}  // namespace

std::optional<std::string> reference_help(std::string_view command, const Look& look) {
  if (command == "steels") return steels_help(look);
  if (command == "grits") return grits_help(look);
  if (command == "phases") return phases_help(look);
  if (command == "hardness") return hardness_help(look);
  if (command == "resharpen") return resharpen_help(look);
  if (command == "convert") return convert_help(look);
  return std::nullopt;
}

}  // namespace keenfall::cli
