#include "cli/notebook_commands.h"

#include "base/shell_word.h"
#include "cli/asked.h"
#include "cli/judge_request.h"
#include "cli/merge_commands.h"
#include "cli/notebook_text.h"
#include "cli/text_layout.h"
#include "cli/typed_options.h"
#include "workbench/notebook_opening.h"
#include "workbench/notebook_package.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <map>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

constexpr const char* kNothingChanged = "nothing was changed";

Outcome make_new(const Asked& asked) {
  const auto made =
      asked.jobs().make(asked.word(0), "keenfall " + asked.around.program_version, asked.hand());
  if (!made) return refused({made.error()}, kNothingChanged);
  return done_with_next(asked,
                        *made + " is a new notebook. To put a table into it:",
                        "keenfall take " + base::shell_word(*made) + " readings.csv");
}

Outcome take_tables_in(const Asked& asked) {
  if (std::ranges::any_of(asked.typed.positionals, workbench::is_package)) {
    return take_package_command(asked);
  }
  if (asked.typed.same || asked.typed.apart || asked.typed.keep_here) {
    return wrong(asked,
                 "--",
                 "--same, --apart and --keep-here are for data packages, and for keenfall merge.");
  }
  const auto request = judge_request(asked.typed, 1);
  if (!request) return wrong_usage(request.error(), asked.command);
  const auto& words = asked.typed.positionals;
  const auto taken = asked.jobs().take({.notebook = words.front(),
                                        .tables = {words.begin() + 1, words.end()},
                                        .trial = asked.typed.trial.value_or(""),
                                        .options = request->options.table,
                                        .keeps_good = asked.typed.keep_good},
                                       asked.hand());
  if (!taken) return refused(taken.error(), "nothing was taken");
  std::string text = taken_text(*taken, asked.around.look);
  if (taken->left_out.empty()) return {.out = std::move(text)};
  return done_in_part(std::move(text),
                      taken->left_out.problems,
                      in_words(taken->left_out) +
                          " left out, which the trial's remarks say too. To have them: mend the "
                          "table and take it again with --trial=" +
                          base::shell_word(taken->trial));
}

// What is shown, and that it may be wrong where a quick check of the whole finds anything.
Outcome shown(const Asked& asked, std::string text) {
  const std::string& path = asked.word(0);
  if (!workbench::is_quickly_checked(path)) return {.out = std::move(text)};
  const auto checked = asked.jobs().check(path);
  if (!checked || checked->findings.empty()) return {.out = std::move(text)};
  Outcome warning =
      done_with_next(asked,
                     path +
                         ": The notebook is not as it was written, so what is shown may be wrong. "
                         "A backup may be whole. What is the matter:",
                     "keenfall check " + base::shell_word(path));
  return {.code = ExitCode::file_trouble, .out = std::move(text), .err = std::move(warning.out)};
}

Outcome show(const Asked& asked) {
  if (asked.typed.positionals.size() > 1) {
    const auto trial = asked.jobs().trial(asked.word(0), asked.word(1));
    if (!trial) return refused({trial.error()}, "nothing was shown");
    return shown(asked, trial_text(*trial, asked.around.look));
  }
  const auto trials = asked.jobs().trials(asked.word(0));
  if (!trials) return refused({trials.error()}, "nothing was shown");
  return shown(asked, trials_text(asked.word(0), *trials, asked.around.look));
}

Outcome log(const Asked& asked) {
  const auto journal = asked.jobs().journal(asked.word(0));
  if (!journal) return refused({journal.error()}, "nothing was shown");
  return {.out = journal_text(*journal, asked.around.look)};
}

Outcome undo(const Asked& asked) {
  std::optional<std::int64_t> entry;
  if (asked.typed.positionals.size() > 1) {
    const std::string& word = asked.word(1);
    std::int64_t number = 0;
    const auto [end, fault] = std::from_chars(word.data(), word.data() + word.size(), number);
    if (fault != std::errc() || end != word.data() + word.size() || number < 1) {
      return wrong(
          asked, "--", "An entry is a number that keenfall log lists, not \"" + word + "\".");
    }
    entry = number;
  }
  const auto undone = asked.jobs().undo(asked.word(0), entry, asked.hand());
  if (!undone) return refused({undone.error()}, kNothingChanged);
  return done_with_next(
      asked,
      "Done, as entry " + std::to_string(undone->entry) + ": " + undone->what +
          ". To take this back:",
      "keenfall undo " + base::shell_word(asked.word(0)) + " " + std::to_string(undone->entry));
}

// The option's number; false where it is none.
bool read_number(const std::optional<std::string>& text, std::optional<double>& number) {
  if (!text) return true;
  double value = 0;
  const auto [end, fault] = std::from_chars(text->data(), text->data() + text->size(), value);
  if (fault != std::errc() || end != text->data() + text->size()) return false;
  number = value;
  return std::isfinite(value);
}

Outcome strike(const Asked& asked) {
  const TypedOptions& typed = asked.typed;
  if (typed.run.value_or("").empty()) {
    return wrong(asked, "--run", "--run says which run is meant: --run=2");
  }
  if (typed.reason.value_or("").empty()) {
    return wrong(asked, "--reason", "--reason says why it does not count: --reason=\"slipped\"");
  }
  notebook::StrikeRequest request{.trial = typed.trial.value_or(""),
                                  .blade = typed.blade.value_or(""),
                                  .medium = typed.medium.value_or(""),
                                  .specimen = typed.specimen.value_or(""),
                                  .run = *typed.run,
                                  .station = typed.station.value_or(""),
                                  .reason = *typed.reason};
  if (!read_number(typed.cuts, request.cuts) || request.cuts.value_or(0) < 0) {
    return wrong(asked, "--cuts", "--cuts must be a number of cuts, not \"" + *typed.cuts + "\".");
  }
  if (!read_number(typed.reading, request.reading)) {
    return wrong(asked,
                 "--reading",
                 "--reading must be a number without its unit, not \"" + *typed.reading + "\".");
  }
  if (!read_number(typed.lasted, request.lasted_cuts) || request.lasted_cuts.value_or(0) < 0) {
    return wrong(
        asked, "--lasted", "--lasted must be a number of cuts, not \"" + *typed.lasted + "\".");
  }
  std::optional<double> instead;
  if (!read_number(typed.instead, instead)) {
    return wrong(asked,
                 "--instead",
                 "--instead must be a number without its unit, not \"" + *typed.instead + "\".");
  }
  if (instead && !request.cuts) {
    return wrong(
        asked,
        "--instead",
        "--instead corrects one reading: say after how many cuts it was read, with --cuts.");
  }
  if (instead) request.instead = {.reading = *instead, .unit = ""};
  if (request.lasted_cuts && request.cuts) {
    return wrong(asked,
                 "--lasted",
                 "--cuts strikes readings out, --lasted how long the edge lasted. Say one of them, "
                 "and the other in a command of its own.");
  }
  if (!request.cuts && (request.reading || !request.station.empty())) {
    return wrong(asked,
                 "--cuts",
                 "--reading and --station narrow down what --cuts names. Say --cuts too; without "
                 "any of them the whole run is voided.");
  }
  const auto struck = asked.jobs().strike(asked.word(0), request, asked.hand());
  if (!struck) return refused({struck.error()}, kNothingChanged);
  return done(asked, struck_words(*struck));
}

Outcome check(const Asked& asked) {
  const auto checked = asked.jobs().check(asked.word(0));
  if (!checked) return refused({checked.error()}, "nothing was checked");
  const std::string text = checked_text(asked.word(0), *checked, asked.around.look);
  if (checked->findings.empty()) return {.out = text};
  return {.code = ExitCode::file_trouble, .out = "", .err = text};
}

Outcome back_up(const Asked& asked) {
  const auto copy = asked.jobs().back_up(asked.word(0), asked.word(1));
  if (!copy) return refused({copy.error()}, "no copy was made");
  if (copy->findings == 0)
    return done(asked, copy->path + " is a whole copy of " + asked.word(0) + ".");
  Outcome damaged = done(asked,
                         copy->path + " is a copy of " + asked.word(0) +
                             ", which is not as it was written: keenfall check says what is wrong. "
                             "An older backup may be whole.");
  return {.code = ExitCode::file_trouble, .err = std::move(damaged.out)};
}

struct NotebookCommand {
  Command options;
  std::size_t fewest_words;
  std::size_t most_words;
  const char* needs;  // "take needs ...: keenfall ..."
  Outcome (*run)(const Asked&);
};

const std::map<std::string, NotebookCommand>& commands() {
  constexpr std::size_t kAnyNumber = static_cast<std::size_t>(-1);
  static const std::map<std::string, NotebookCommand> all = {
      {"new", {Command::look, 1, 1, "one file to make: keenfall new bench.keen", make_new}},
      {"take",
       {Command::take,
        2,
        kAnyNumber,
        "a notebook and a table: keenfall take bench.keen readings.csv",
        take_tables_in}},
      {"show",
       {Command::look,
        1,
        2,
        "a notebook, and a trial if you like: keenfall show bench.keen readings",
        show}},
      {"log", {Command::look, 1, 1, "one notebook: keenfall log bench.keen", log}},
      {"undo",
       {Command::undo,
        1,
        2,
        "a notebook, and an entry if you like: keenfall undo bench.keen 3",
        undo}},
      {"strike",
       {Command::strike,
        1,
        1,
        "one notebook: keenfall strike bench.keen --run=2 --reason=\"slipped\"",
        strike}},
      {"export",
       {Command::export_content,
        2,
        2,
        "a notebook and a file or folder to make: keenfall export bench.keen readings.csv",
        export_command}},
      {"merge",
       {Command::merge,
        2,
        2,
        "a notebook and the one to bring into it: keenfall merge bench.keen other.keen",
        merge_command}},
      {"check", {Command::look, 1, 1, "one notebook: keenfall check bench.keen", check}},
      {"backup",
       {Command::look,
        2,
        2,
        "a notebook and a name for the copy: keenfall backup bench.keen copy.keen",
        back_up}}};
  return all;
}

}  // namespace

std::optional<Outcome> notebook_command(const std::string& command,
                                        std::span<const std::string> words,
                                        const Surroundings& surroundings) {
  const auto found = commands().find(command);
  if (found == commands().end()) return std::nullopt;
  const NotebookCommand& known = found->second;
  auto typed = typed_options(known.options, words);
  if (!typed) return wrong_usage(typed.error(), command);
  const Asked asked{.command = command, .typed = std::move(*typed), .around = surroundings};
  const std::size_t count = asked.typed.positionals.size();
  if (count < known.fewest_words || count > known.most_words) {
    return wrong(asked, "--", command + " needs " + known.needs);
  }
  return known.run(asked);
}

}  // namespace keenfall::cli
