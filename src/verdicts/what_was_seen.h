// What is said beside the answer: each run as it went, and what the data cannot say.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::verdicts {

// One result per run of the trial, used or not, in the trial's order.
[[nodiscard]] std::vector<RunResult> run_results(const trials::Trial& trial,
                                                 const blunting::BluntingData& data,
                                                 const blunting::BluntingFit& fit);

// Plain sentences; judgement: with its arms and comparisons already in place.
[[nodiscard]] std::vector<std::string> what_cannot_be_said(const trials::Trial& trial,
                                                           const blunting::BluntingData& data,
                                                           const Judgement& judgement);

// At least two runs and a fifth of all end no blunter than they began: half keenness means little.
[[nodiscard]] bool often_never_blunts(const ArmResult& arm);

// Says that a claim about the steels was asked for, where a comparison does not make it.
void add_claim_not_made(Judgement& judgement, std::optional<ClaimAbout> asked);

// What is recorded of a run beside its readings: events, deviations, notes.
[[nodiscard]] std::vector<std::string> recorded_remarks(const trials::Run& run,
                                                        const trials::Counted& counted);

}  // namespace keenfall::verdicts
