#include "cli/typed_options.h"

#include "cli/open_command.h"
#include "cli/option_problems.h"

#include <CLI/CLI.hpp>

#include <string_view>
#include <utility>

namespace keenfall::cli {

namespace {

constexpr std::string_view kToStandardOutput = "-";

void add_judging_options(CLI::App& app, TypedOptions& typed) {
  app.add_option("--worth-it", typed.worth_it);
  app.add_option("--stop-level", typed.stop_level);
  app.add_option("--stop-reading", typed.stop_reading);
  app.add_option("--model", typed.model);
  app.add_option("--claim", typed.claim);
  app.add_option("--looks", typed.looks);
  app.add_option("--seed", typed.seed);
  app.add_option("--told-in", typed.told_in);
  app.add_option("--threads", typed.threads);
  app.add_flag("--quiet", typed.quiet);
}

void add_json_option(CLI::App& app, std::string& json) {
  // As a flag it takes a file only in the form --json=FILE, so that it can never swallow a table.
  app.add_flag("--json{-}", json);
}

void add_table_options(CLI::App& app, TypedOptions& typed) {
  constexpr int kOneEach = 1;  // the word after it; further ones are tables
  app.add_option("--kind", typed.kind);
  app.add_option("--column", typed.columns)
      ->expected(kOneEach)
      ->take_all()
      ->allow_extra_args(false);
  app.add_option("--define-kind", typed.defined_kinds)
      ->expected(kOneEach)
      ->take_all()
      ->allow_extra_args(false);
  app.add_option("--where", typed.where)->expected(kOneEach)->take_all()->allow_extra_args(false);
  app.add_option("--sheet", typed.sheets)->expected(kOneEach)->take_all()->allow_extra_args(false);
  app.add_option("--shape", typed.shape);
  app.add_option("--decimal", typed.decimal);
}

// What is judged, beside how: files, and who looks at them.
void add_options_about_files(CLI::App& app, TypedOptions& typed) {
  add_table_options(app, typed);
  app.add_option("--rung", typed.rung);
  app.add_option("--test-level", typed.test_level);
  app.add_option("--trial", typed.trial);
  app.add_option("--who", typed.who);
}

void add_authorship_options(CLI::App& app, TypedOptions& typed) {
  app.add_option("--who", typed.who);
  app.add_option("--why", typed.why);
}

void add_merging_options(CLI::App& app, TypedOptions& typed) {
  app.add_flag("--same", typed.same);
  app.add_option("--apart", typed.apart);
  app.add_flag("--keep-here", typed.keep_here);
}

void add_strike_options(CLI::App& app, TypedOptions& typed) {
  app.add_option("--who", typed.who);
  app.add_option("--trial", typed.trial);
  app.add_option("--run", typed.run);
  app.add_option("--blade", typed.blade);
  app.add_option("--medium", typed.medium);
  app.add_option("--specimen", typed.specimen);
  app.add_option("--cuts", typed.cuts);
  app.add_option("--lasted", typed.lasted);
  app.add_option("--reading", typed.reading);
  app.add_option("--station", typed.station);
  app.add_option("--instead", typed.instead);
  app.add_option("--reason", typed.reason);
}

void add_sharpening_options(CLI::App& app, TypedOptions& typed) {
  TypedSharpening& said = typed.sharpening;
  app.add_option("--steel", said.steel);
  app.add_option("--stone", said.stone);
  app.add_option("--angle", said.angle);
  app.add_option("--primary-angle", said.primary_angle);
  app.add_option("--thickness", said.thickness);
  app.add_option("--micro-bevel", said.micro_bevel);
  app.add_option("--edge", said.edge);
  app.add_option("--land", said.land);
  app.add_option("--chip", said.chip);
  app.add_option("--force", said.force);
  app.add_option("--stroke", said.stroke);
  app.add_option("--pace", said.pace);
  app.add_option("--dress-every", said.dress_every);
  app.add_option("--dressing-time", said.dressing_time);
  app.add_option("--cuts", typed.cuts);
  app.add_option("--setup", said.setup);
  app.add_option("--seed", typed.seed);
  app.add_flag("--compare", said.compare);
  app.add_option("--stones", said.stones_file);
  app.add_option("--steels", said.steels_file);
  app.add_option("--counted-passes", said.counted_passes);
  app.add_option("--counted-height", said.counted_height);
  app.add_option("--counted-width", said.counted_width);
  app.add_option("--counted-width-before", said.counted_width_before);
  app.add_option("--counted-angle", said.counted_angle);
  app.add_option("--counted-error", said.counted_error);
  app.add_option("--counted-force", said.counted_force);
  app.add_option("--counted-stroke", said.counted_stroke);
  app.add_option("--counted-edge", said.counted_edge);
}

void add_repeatable(CLI::App& app, const std::string& option, std::vector<std::string>& typed) {
  app.add_option(option, typed)->expected(1)->take_all()->allow_extra_args(false);
}

// Steels, media and finishes of one's own.
void add_catalogue_options(CLI::App& app, TypedSimulation& simulated) {
  app.add_option("--steels", simulated.steels_file);
  app.add_option("--media", simulated.media_file);
  app.add_option("--finishes", simulated.finishes_file);
}

// Which edges the simulator cuts, and what with.
void add_edge_options(CLI::App& app, TypedOptions& typed) {
  TypedSimulation& simulated = typed.simulated;
  add_repeatable(app, "--steel", simulated.steels);
  add_repeatable(app, "--medium", simulated.media);
  add_repeatable(app, "--angle", simulated.angles);
  add_repeatable(app, "--finish", simulated.finishes);
  add_repeatable(app, "--schedule", simulated.schedules);
  add_catalogue_options(app, simulated);
  app.add_option("--edge-length", simulated.edge_length);
  app.add_option("--cuts", typed.cuts);
  app.add_option("--seed", typed.seed);
  app.add_option("--threads", typed.threads);
  app.add_flag("--quiet", typed.quiet);
}

// What predict compares, besides the two blades.
void add_prediction_options(CLI::App& app, TypedOptions& typed) {
  TypedSimulation& simulated = typed.simulated;
  constexpr int kOne = 1;
  app.add_option("--medium", simulated.media)->expected(kOne);
  app.add_option("--schedule", simulated.schedules)->expected(kOne);
  app.add_option("--finish", simulated.finishes)->expected(kOne);
  add_catalogue_options(app, simulated);
  app.add_option("--reading", typed.reading);
  app.add_option("--runs", simulated.runs);
  app.add_option("--draws", simulated.draws);
  app.add_option("--seed", typed.seed);
  app.add_option("--threads", typed.threads);
  app.add_flag("--quiet", typed.quiet);
}

void add_trial_options(CLI::App& app, TypedOptions& typed) {
  TypedSimulation& simulated = typed.simulated;
  app.add_option("--runs", simulated.runs);
  app.add_option("--blocks", simulated.blocks);
  app.add_option("--repeats", simulated.repeats);
  app.add_option("--reading", typed.reading);
  app.add_option("--stop-level", typed.stop_level);
  app.add_option("--scatter", simulated.scatter);
  app.add_option("--out", typed.out);
  app.add_option("--notebook", simulated.notebook);
  app.add_option("--trial", typed.trial);
  app.add_flag("--truth", simulated.truth);
}

void add_options_of(Command command, CLI::App& app, TypedOptions& typed, std::string& json) {
  switch (command) {
    case Command::judge:
      add_judging_options(app, typed);
      add_json_option(app, json);
      add_options_about_files(app, typed);
      break;
    case Command::tell:
      add_judging_options(app, typed);
      add_options_about_files(app, typed);
      app.add_option("--out", typed.out);
      app.add_option("--format", typed.format);
      break;
    case Command::take:
      add_table_options(app, typed);
      app.add_option("--trial", typed.trial);
      app.add_flag("--keep-good", typed.keep_good);
      add_merging_options(app, typed);
      add_authorship_options(app, typed);
      break;
    case Command::merge:
      add_merging_options(app, typed);
      add_authorship_options(app, typed);
      break;
    case Command::export_content:
      app.add_option("--trial", typed.trial);
      app.add_option("--as", typed.as);
      break;
    case Command::undo:
      add_authorship_options(app, typed);
      break;
    case Command::strike:
      add_strike_options(app, typed);
      break;
    case Command::look:
      app.add_option("--who", typed.who);
      break;
    case Command::open:
      app.add_option("--port", typed.port);
      app.add_flag("--no-open", typed.no_open);
      app.add_flag("--demo", typed.demo);
      app.add_flag("--bench", typed.bench.is_open);
      app.add_option("--bench-port", typed.bench.port);
      app.add_option("--bench-name", typed.bench.name);
      app.add_option("--bench-certificate", typed.bench.certificate);
      app.add_option("--bench-key", typed.bench.key);
      app.add_flag(std::string(kOwnWindow), typed.own_window);
      break;
    case Command::scale:
      add_json_option(app, json);
      break;
    case Command::bench_scale:
      app.add_option("--baud", typed.scale.baud);
      app.add_option("--format", typed.format);
      app.add_option("--decimal", typed.decimal);
      app.add_option("--hold", typed.scale.hold);
      app.add_option("--full-press", typed.scale.full_press);
      break;
    case Command::resharpen:
      add_sharpening_options(app, typed);
      add_json_option(app, json);
      break;
    case Command::simulate:
      add_edge_options(app, typed);
      add_trial_options(app, typed);
      add_authorship_options(app, typed);
      add_json_option(app, json);
      break;
    case Command::apex:
      add_edge_options(app, typed);
      app.add_flag("--list", typed.simulated.list);
      app.add_option("--draws", typed.simulated.draws);
      add_json_option(app, json);
      break;
    case Command::predict:
      add_prediction_options(app, typed);
      add_json_option(app, json);
      break;
    case Command::demo:
      add_judging_options(app, typed);
      add_json_option(app, json);
      app.add_option("--table", typed.table_file);
      app.add_option("--out", typed.out);
      app.add_option("--trial-seed", typed.trial_seed);
      app.add_flag("--no-open", typed.no_open);
      break;
  }
}

}  // namespace

base::ResultOrProblems<ReadOptions> read_options(Command command,
                                                 std::span<const std::string> words) {
  ReadOptions read;
  std::string json;
  CLI::App app;
  app.set_help_flag();
  app.allow_extras();
  app.add_option("WHAT", read.typed.positionals);
  add_options_of(command, app, read.typed, json);
  try {
    app.parse(std::vector<std::string>(words.rbegin(), words.rend()));
  } catch (const CLI::ParseError& error) {
    return base::failed_by(problem_of_parsing(error));
  }
  for (const std::string& word : app.remaining()) {
    read.unknown.push_back(unknown_option(word, app));
  }
  if (!json.empty()) read.typed.json = json == kToStandardOutput ? std::string() : json;
  return read;
}

base::ResultOrProblems<TypedOptions> typed_options(Command command,
                                                   std::span<const std::string> words) {
  auto read = read_options(command, words);
  if (!read) return tl::unexpected(std::move(read.error()));
  if (!read->unknown.empty()) return tl::unexpected(std::move(read->unknown));
  return std::move(read->typed);
}

}  // namespace keenfall::cli
