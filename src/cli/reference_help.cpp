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

}  // namespace

std::optional<std::string> reference_help(std::string_view command, const Look& look) {
  if (command == "steels") return steels_help(look);
  if (command == "grits") return grits_help(look);
  if (command == "phases") return phases_help(look);
  if (command == "hardness") return hardness_help(look);
  if (command == "convert") return convert_help(look);
  return std::nullopt;
}

}  // namespace keenfall::cli
