#include "cli/merge_commands.h"

#include "cli/notebook_text.h"

#include <map>
#include <string>

namespace keenfall::cli {

namespace {

// What the options say of another notebook's content; a wrong one as an Outcome.
tl::expected<notebook::MergeRules, Outcome> merge_rules(const Asked& asked) {
  const TypedOptions& typed = asked.typed;
  if (typed.same && typed.apart) {
    return tl::unexpected(wrong(asked,
                                "--apart",
                                "--same says that what is called alike is one thing, --apart that "
                                "it is two. Say one of them."));
  }
  if (typed.apart && typed.apart->empty()) {
    return tl::unexpected(
        wrong(asked, "--apart", "--apart needs a name, to tell the other's by: --apart=R."));
  }
  notebook::MergeRules rules{.apart = typed.apart.value_or(""),
                             .keeps_what_is_here = typed.keep_here};
  if (typed.same) rules.alike_names = notebook::AlikeNames::are_one;
  if (typed.apart) rules.alike_names = notebook::AlikeNames::are_apart;
  return rules;
}

Outcome merge_in(const Asked& asked, const std::string& if_refused) {
  const auto rules = merge_rules(asked);
  if (!rules) return rules.error();
  const auto merged = asked.jobs().merge(
      {.notebook = asked.word(0), .other = asked.word(1), .rules = *rules}, asked.hand());
  if (!merged) return refused(merged.error(), if_refused);
  return {.out = merged_text(*merged, asked.word(1), asked.around.look)};
}

}  // namespace

Outcome merge_command(const Asked& asked) { return merge_in(asked, "nothing was merged"); }

// A package was read when its notebook took it, and names its trials itself.
Outcome take_package_command(const Asked& asked) {
  const TypedOptions& typed = asked.typed;
  if (typed.positionals.size() > 2) {
    return wrong(asked, "--", "A data package is taken by itself, and not with other files.");
  }
  std::string option;
  if (typed.trial) option = "--trial";
  if (!typed.columns.empty()) option = "--column";
  if (!typed.defined_kinds.empty()) option = "--define-kind";
  if (!typed.where.empty()) option = "--where";
  if (!typed.sheets.empty()) option = "--sheet";
  if (typed.shape) option = "--shape";
  if (typed.decimal) option = "--decimal";
  if (typed.kind) option = "--kind";
  if (typed.keep_good) option = "--keep-good";
  if (option.empty()) return merge_in(asked, "nothing was taken");
  return wrong(asked, option, option + " is for tables; a data package says itself what is in it.");
}

Outcome export_command(const Asked& asked) {
  using workbench::ExportForm;
  static const std::map<std::string, ExportForm> forms = {{"csv", ExportForm::long_table},
                                                          {"json", ExportForm::json},
                                                          {"package", ExportForm::data_package}};
  workbench::ExportRequest request{.notebook = asked.word(0),
                                   .to = asked.word(1),
                                   .trial = asked.typed.trial.value_or(""),
                                   .program_version = asked.around.program_version,
                                   .at_utc = asked.around.utc_now()};
  if (asked.typed.as) {
    const auto form = forms.find(*asked.typed.as);
    if (form == forms.end()) {
      return wrong(asked, "--as", "--as is csv, json or package, not \"" + *asked.typed.as + "\".");
    }
    request.form = form->second;
  }
  const auto exported = asked.jobs().export_content(request);
  if (!exported) return refused({exported.error()}, "nothing was exported");
  return {.out = exported_text(*exported, request.to, asked.around.look)};
}

}  // namespace keenfall::cli
