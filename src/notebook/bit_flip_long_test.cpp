// A bit that turns over on the disk is noticed or does no harm: opening refuses, check finds it
// (judging asks it first), or reading throws; else the trial is exactly what it was. KEENFALL_FLIPS
// sets how many (200).
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/made_notebook.h"
#include "notebook/notebook_failure.h"
#include "notebook/strike.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iostream>
#include <iterator>
#include <random>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::kOpener;
using testing::ScratchFolder;

std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

void write_bytes(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary)
      .write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

Authorship by(int change) {
  return {.client_id = std::to_string(change), .at_utc = "2026-11-26T12:00:00Z", .who = "R."};
}

trials::Trial a_longer_trial() {
  trials::Trial trial = a_trial();
  for (int r = 2; r < 12; ++r) {
    for (int blade = 0; blade < 2; ++blade) {
      trials::Run run = trial.runs[static_cast<std::size_t>(blade)];
      run.name = std::to_string(r);
      for (trials::Reading& reading : run.readings) reading.reading += r;
      trial.runs.push_back(run);
    }
  }
  return trial;
}

void make_notebook(const std::string& path) {
  auto notebook = Notebook::create(path, {.uid = "u", .made_by = "test"}, kOpener);
  ASSERT_TRUE(take(*notebook, a_longer_trial(), {{"a.csv", std::string(64, 'a')}}, by(1)));
  ASSERT_TRUE(
      strike(*notebook,
             {.trial = "matting", .blade = "B", .run = "3", .cuts = 15, .reason = "slipped"},
             by(2)));
  ASSERT_TRUE(notebook->undo(2, by(3)));
}

enum class Seen { refused, found_by_check, thrown, harmless, changed };

Seen seen_of(const std::string& path, const trials::Trial& truth) {
  try {
    const auto notebook = Notebook::open_to_read(path);
    if (!notebook) return Seen::refused;
    if (!check(*notebook).empty()) return Seen::found_by_check;
    const auto trial = kept_trial(*notebook, truth.name);
    return trial && *trial == truth ? Seen::harmless : Seen::changed;
  } catch (const NotebookFailure&) {
    return Seen::thrown;
  }
}

TEST(AFlippedBit, IsNoticedOrDoesNoHarm) {
  const ScratchFolder folder("flips");
  make_notebook(folder.file("good.keen"));
  const std::string good = bytes_of(folder.file("good.keen"));
  const trials::Trial truth = a_longer_trial();
  ASSERT_EQ(seen_of(folder.file("good.keen"), truth), Seen::harmless);
  std::mt19937_64 random(11);
  int counts[5] = {};
  for (int flip = 0; flip < testing::times_asked_for("KEENFALL_FLIPS", 200); ++flip) {
    std::string bytes = good;
    const std::size_t place = random() % bytes.size();
    bytes[place] = static_cast<char>(bytes[place] ^ (1 << random() % 8));
    write_bytes(folder.file("flipped.keen"), bytes);

    const Seen seen = seen_of(folder.file("flipped.keen"), truth);

    ++counts[static_cast<int>(seen)];
    EXPECT_NE(seen, Seen::changed) << "byte " << place;
  }
  std::cout << good.size() << " bytes; refused " << counts[0] << ", found by check " << counts[1]
            << ", thrown " << counts[2] << ", harmless " << counts[3] << "\n";
}

TEST(ATruncatedNotebook, IsNoticed) {
  const ScratchFolder folder("cuts");
  make_notebook(folder.file("good.keen"));
  const std::string good = bytes_of(folder.file("good.keen"));
  for (std::size_t size = 0; size < good.size(); size += 4096) {
    write_bytes(folder.file("short.keen"), good.substr(0, size));

    EXPECT_EQ(seen_of(folder.file("short.keen"), a_longer_trial()), Seen::refused) << size;
  }
}

}  // namespace
}  // namespace keenfall::notebook
