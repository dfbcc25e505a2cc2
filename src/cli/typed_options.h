// The options of a command as they were typed, before anybody has looked at what they mean.
#pragma once

#include "base/result.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::cli {

// Of resharpen, as typed.
struct TypedSharpening {
  std::optional<std::string> steel;
  std::optional<std::string> stone;
  std::optional<std::string> angle;
  std::optional<std::string> primary_angle;
  std::optional<std::string> thickness;
  std::optional<std::string> micro_bevel;
  std::optional<std::string> edge;
  std::optional<std::string> land;
  std::optional<std::string> chip;
  std::optional<std::string> force;
  std::optional<std::string> stroke;
  std::optional<std::string> pace;
  std::optional<std::string> dress_every;
  std::optional<std::string> dressing_time;
  std::optional<std::string> setup;
  std::optional<std::string> stones_file;
  std::optional<std::string> steels_file;
  std::optional<std::string> counted_passes;
  std::optional<std::string> counted_height;
  std::optional<std::string> counted_width;
  std::optional<std::string> counted_width_before;
  std::optional<std::string> counted_angle;
  std::optional<std::string> counted_error;
  std::optional<std::string> counted_force;
  std::optional<std::string> counted_stroke;
  std::optional<std::string> counted_edge;
  bool compare = false;
};

// Of simulate, apex and predict alone.
struct TypedSimulation {
  std::vector<std::string> steels;
  std::vector<std::string> media;
  std::vector<std::string> angles;
  std::vector<std::string> finishes;
  std::vector<std::string> schedules;
  std::optional<std::string> steels_file;
  std::optional<std::string> media_file;
  std::optional<std::string> finishes_file;
  std::optional<std::string> edge_length;
  std::optional<std::string> runs;
  std::optional<std::string> blocks;
  std::optional<std::string> repeats;
  std::optional<std::string> scatter;
  std::optional<std::string> draws;  // of predict and apex
  std::optional<std::string> notebook;
  bool truth = false;
  bool list = false;
};

// Of scale alone.
struct TypedScale {
  std::optional<std::string> baud;
  std::optional<std::string> hold;
  std::optional<std::string> full_press;
};

// Of open: letting devices at the bench in.
struct TypedBench {
  bool is_open = false;
  std::optional<std::string> port;
  std::optional<std::string> name;
  std::optional<std::string> certificate;
  std::optional<std::string> key;
};

struct TypedOptions {
  std::vector<std::string> positionals;
  std::optional<std::string> worth_it;
  std::optional<std::string> stop_level;
  std::optional<std::string> stop_reading;
  std::optional<std::string> model;
  std::optional<std::string> claim;
  std::optional<std::string> looks;
  std::optional<std::string> seed;
  std::optional<std::string> told_in;
  std::optional<std::string> kind;
  std::optional<std::string> rung;
  std::optional<std::string> test_level;
  std::optional<std::string> threads;
  std::optional<std::string> json;  // empty text: to standard output
  std::optional<std::string> table_file;
  std::optional<std::string> trial_seed;  // of demo
  std::vector<std::string> columns;
  std::vector<std::string> defined_kinds;
  std::vector<std::string> where;
  std::vector<std::string> sheets;
  std::optional<std::string> shape;
  std::optional<std::string> decimal;
  std::optional<std::string> trial;  // of a notebook, as all that follow
  std::optional<std::string> who;
  std::optional<std::string> why;
  std::optional<std::string> run;
  std::optional<std::string> blade;
  std::optional<std::string> medium;
  std::optional<std::string> specimen;
  std::optional<std::string> cuts;
  std::optional<std::string> lasted;
  std::optional<std::string> reading;
  std::optional<std::string> station;
  std::optional<std::string> instead;  // of a strike
  std::optional<std::string> reason;
  std::optional<std::string> apart;
  std::optional<std::string> as;      // the form of an export
  std::optional<std::string> out;     // of tell: the file to write
  std::optional<std::string> format;  // of tell, and of scale
  TypedSharpening sharpening;
  std::optional<std::string> port;  // of open
  bool same = false;
  bool keep_here = false;
  bool quiet = false;
  bool no_open = false;
  bool demo = false;        // of open: with the invented trial
  bool own_window = false;  // of open: the terminal window is its own
  bool keep_good = false;
  TypedSimulation simulated;
  TypedScale scale;
  TypedBench bench;
};

// `look`: what only looks into a notebook, or makes one; those have no options but --who.
// `scale`: phases and hardness, which have none but --json. `bench_scale`: a scale at a serial
// line.
enum class Command {
  judge,
  demo,
  tell,
  take,
  undo,
  strike,
  merge,
  export_content,
  look,
  open,
  scale,
  bench_scale,
  resharpen,
  simulate,
  apex,
  predict
};

// What could be read, and the options that the command does not have.
struct ReadOptions {
  TypedOptions typed;
  std::vector<base::Problem> unknown;
};

// Fails for an option without its value, or one given twice: what was typed is then not clear.
[[nodiscard]] base::ResultOrProblems<ReadOptions> read_options(Command command,
                                                               std::span<const std::string> words);

// Fails also for an option the command does not have.
[[nodiscard]] base::ResultOrProblems<TypedOptions> typed_options(
    Command command, std::span<const std::string> words);

}  // namespace keenfall::cli
