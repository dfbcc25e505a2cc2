// The words that stand in a notebook's rows, and in JSON, for choices among known kinds.
#pragma once

#include "trials/trial.h"

#include <string>

namespace keenfall::notebook {

[[nodiscard]] std::string word_of(trials::Motion motion);
[[nodiscard]] std::string word_of(trials::EventKind kind);
[[nodiscard]] std::string word_of(trials::HardnessScale scale);
[[nodiscard]] std::string word_of(trials::HowKnown how);
[[nodiscard]] std::string word_of(trials::KeenerWhen when);
[[nodiscard]] std::string word_of(trials::ReadingUse use);
[[nodiscard]] std::string word_of(trials::ZeroReading zero);

// "run 2 of A on new matting".
[[nodiscard]] std::string words_of(const trials::Run& run);

// Throw NotebookDamaged for a word that none of them writes.
[[nodiscard]] trials::Motion motion_of(const std::string& word);
[[nodiscard]] trials::EventKind event_kind_of(const std::string& word);
[[nodiscard]] trials::HardnessScale hardness_scale_of(const std::string& word);
[[nodiscard]] trials::HowKnown how_known_of(const std::string& word);
[[nodiscard]] trials::KeenerWhen keener_when_of(const std::string& word);
[[nodiscard]] trials::ReadingUse use_of(const std::string& word);
[[nodiscard]] trials::ZeroReading zero_of(const std::string& word);

}  // namespace keenfall::notebook
