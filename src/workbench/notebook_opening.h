// Opening a notebook for one job: who does it, and what a machine's failure is called.
//
// Fails with a Problem of kind `unreadable` where the file is not there, not a notebook, of a newer
// program, or being written by another.
#pragma once

#include "base/result.h"
#include "notebook/notebook.h"
#include "notebook/notebook_failure.h"

#include <chrono>
#include <optional>
#include <string>

namespace keenfall::workbench {

// Who changes a notebook, where and when.
struct Hand {
  std::string who;
  std::string machine_words;  // "bench-2, process 4711"
  std::string at_utc;         // "2026-11-26T12:00:00Z"
  std::string why;            // may be empty
  // How long to wait for another who writes; the app's requests wait for each other.
  std::chrono::milliseconds patience{0};
  // Since when: of a request, when it came. Nothing: since the notebook is opened.
  std::optional<std::chrono::steady_clock::time_point> waits_since = {};
};

// Its first bytes say so, or its name ends in ".keen".
[[nodiscard]] bool is_notebook(const std::string& path);

[[nodiscard]] base::Result<notebook::Notebook> opened_to_read(const std::string& path);
// While another writes it is tried again, as long as the hand is patient. A patient one that waited
// in vain is told so by a NotebookTrouble: nothing is wrong with what was asked for, and it can be
// asked again.
[[nodiscard]] base::Result<notebook::Notebook> opened_to_write(const std::string& path,
                                                               const Hand& hand);
[[nodiscard]] base::Result<notebook::Notebook> opened_to_write_within(
    std::chrono::milliseconds patience, const std::string& path, const Hand& hand);

// The same for a change that rests on what is there: throws NotebookDamaged where a check of the
// whole notebook finds anything. `any_size`: also of a large one, of which a check takes a while;
// without it that is left to the check of each row that is read.
enum class Checked { any_size, if_small };
[[nodiscard]] base::Result<notebook::Notebook> opened_whole_to_write(const std::string& path,
                                                                     const Hand& hand,
                                                                     Checked checked);

// Would a check of the notebook take no longer than a change to it? Up to 512 KiB, which take about
// 10 ms.
[[nodiscard]] bool is_quickly_checked(const std::string& path);

[[nodiscard]] notebook::Opener opener_of(const Hand& hand);
// A change of its own: nothing arrives twice from a command.
[[nodiscard]] notebook::Authorship authorship_of(const Hand& hand);

// Throws NotebookDamaged unless the whole of it is as it was written. Whoever goes on to read from
// it does so within the same OneMoment.
void refuse_damage(const notebook::Notebook& notebook);

// A failure of the notebook at `path` as a NotebookTrouble that names it.
[[noreturn]] void throw_as_trouble(const std::string& path,
                                   const notebook::NotebookFailure& failure);

// What `work` returns; a failure leaves it as trouble with the notebook at `path`.
template <class Work>
auto naming_the_file(const std::string& path, Work work) {
  try {
    return work();
  } catch (const notebook::NotebookFailure& failure) {
    throw_as_trouble(path, failure);
  }
}

}  // namespace keenfall::workbench
