#include "base/plain_number.h"
#include "benchmarks/benchmark.h"
#include "benchmarks/gritty_edges.h"
#include "benchmarks/in_turn.h"
#include "benchmarks/measured_child.h"
#include "benchmarks/peers.h"
#include "benchmarks/results_table.h"

#include <fmt/format.h>

#include <ctime>
#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::benchmarks {

namespace {

constexpr double kSimulatingSeconds = 1;

Findings simulated() {
  const wear::ApexSimulation simulation = gritty_edges(kEdgeCuts);
  const std::clock_t began = std::clock();
  const auto edges = wear::simulate(simulation, {.runs = kEdges}, base::one_thread());
  const double spent = static_cast<double>(std::clock() - began) / CLOCKS_PER_SEC;
  if (!edges) throw std::runtime_error(base::in_words(edges.error()));
  double push = 0;
  double hits = 0;
  double chips = 0;
  for (const wear::SimulatedEdge& edge : *edges) {
    push += edge.readings[1].push_um / edge.readings[0].push_um / kEdges;
    hits += static_cast<double>(edge.counts.hits) / kEdges;
    chips += static_cast<double>(edge.counts.chips) / kEdges;
  }
  return {{"simulation_cpu_s", spent}, {"push_ratio", push}, {"hits", hits}, {"chips", chips}};
}

// The same numbers for the peer, so that both cut the same medium.
PeerScript peer() {
  const wear::ApexSimulation simulation = gritty_edges(kEdgeCuts);
  const wear::CutMedium& medium = *wear::stretches_of(simulation.schedule).front().medium;
  const wear::Wedge wedge = wear::wedge_of(simulation.edge.apex_angle);
  return {.interpreter = "/usr/bin/python3",
          .file = "blunted_edges.py",
          .words = {std::to_string(kEdges),
                    std::to_string(kEdgeCuts),
                    std::to_string(wear::segment_count(simulation.edge)),
                    base::plain_number(medium.particles.hits_per_mm_cut),
                    base::plain_number(wear::squared_land_growth_um2_per_cut(medium.wear, wedge)),
                    base::plain_number(simulation.steel.flow_stress_mpa),
                    base::plain_number(simulation.steel.transition_section_um)},
          .library = "numpy"};
}

double cpu_of(const Measured& measured) { return measured.findings.at("simulation_cpu_s"); }

std::vector<std::string> row_of(const std::string& name, const std::vector<Measured>& rounds) {
  const Measured& last = rounds.back();
  return {name,
          base::with_figures(median_of(rounds, cpu_of), 3),
          grouped(last.peak_memory_mb),
          base::with_figures(last.findings.at("push_ratio"), 4),
          base::with_figures(last.findings.at("hits"), 4),
          base::with_figures(last.findings.at("chips"), 3)};
}

}  // namespace

Outcome blunting_edges() {
  fmt::print("  {} runs, {} cuts, {} segments; {} pairs in turn, the median of each\n",
             kEdges,
             kEdgeCuts,
             wear::segment_count(gritty_edges(kEdgeCuts).edge),
             kRounds);
  const auto rounds = measured_in_turn({[](int /*round*/) { return measured_work(simulated); },
                                        [](int /*round*/) { return measured_peer(peer()); }});
  if (!rounds) return rounds.error();
  const auto& ours = rounds->at(0);
  const auto& beside = rounds->at(1);
  ResultsTable table{
      .heads =
          {"simulator", "CPU, s", "peak memory, MB", "push ÷ start", "hits a run", "chips a run"},
      .rows = {row_of("Keenfall, one thread", ours)}};
  if (!beside.empty()) table.rows.push_back(row_of("NumPy", beside));
  fmt::print("{}", in_columns(table));
  if (!beside.empty()) {
    fmt::print("  NumPy takes {} times the processor time (median of the pairs)\n",
               base::with_figures(median_ratio(beside, ours, cpu_of), 3));
  }
  fmt::print(
      "{}",
      in_words(
          {.what = "CPU, s", .below = kSimulatingSeconds, .measured = median_of(ours, cpu_of)}));
  return {};
}

}  // namespace keenfall::benchmarks
