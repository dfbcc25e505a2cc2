#include "workbench/notebook_opening.h"

#include "base/shell_word.h"
#include "notebook/check.h"
#include "notebook/random_uid.h"
#include "workbench/notebook_trouble.h"

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <system_error>
#include <thread>
#include <utility>

namespace keenfall::workbench {

namespace {

// One exit code for all that keeps a notebook from being opened.
template <class T>
base::Result<T> opened(base::Result<T> notebook) {
  if (notebook) return notebook;
  base::Problem problem = notebook.error();
  problem.kind = base::ProblemKind::unreadable;
  return base::failed(std::move(problem));
}

bool another_writes(const base::Result<notebook::Notebook>& notebook) {
  return !notebook && notebook.error().kind == base::ProblemKind::conflicting;
}

// Both locks are waited for until then: ours, and the file's own, which any program can hold.
base::Result<notebook::Notebook> opened_until(std::chrono::steady_clock::time_point end,
                                              const std::string& path,
                                              const Hand& hand) {
  using Clock = std::chrono::steady_clock;
  constexpr std::chrono::milliseconds kPause{20};
  for (;;) {
    notebook::Opener opener = opener_of(hand);
    if (hand.patience.count() > 0) {
      opener.waits = std::max(
          kPause, std::chrono::duration_cast<std::chrono::milliseconds>(end - Clock::now()));
    }
    auto notebook = notebook::Notebook::open_to_write(path, opener);
    if (!another_writes(notebook) || Clock::now() >= end) return notebook;
    std::this_thread::sleep_for(kPause);
  }
}

}  // namespace

bool is_notebook(const std::string& path) {
  return path.ends_with(".keen") || notebook::begins_as_notebook(path);
}

base::Result<notebook::Notebook> opened_to_read(const std::string& path) {
  return opened(notebook::Notebook::open_to_read(path));
}

base::Result<notebook::Notebook> opened_to_write(const std::string& path, const Hand& hand) {
  using Clock = std::chrono::steady_clock;
  const auto end = hand.waits_since.value_or(Clock::now()) + hand.patience;
  auto notebook = opened_until(end, path, hand);
  const bool waited_in_vain = another_writes(notebook) && hand.patience.count() > 0;
  if (waited_in_vain) {
    throw NotebookTrouble(notebook.error().sentence + " Nothing was changed; try again.");
  }
  return opened(std::move(notebook));
}

base::Result<notebook::Notebook> opened_to_write_within(std::chrono::milliseconds patience,
                                                        const std::string& path,
                                                        const Hand& hand) {
  return opened(opened_until(std::chrono::steady_clock::now() + patience, path, hand));
}

base::Result<notebook::Notebook> opened_whole_to_write(const std::string& path,
                                                       const Hand& hand,
                                                       Checked checked) {
  auto notebook = opened_to_write(path, hand);
  const bool is_checked = notebook && (checked == Checked::any_size || is_quickly_checked(path));
  if (is_checked) refuse_damage(*notebook);
  return notebook;
}

bool is_quickly_checked(const std::string& path) {
  constexpr std::uintmax_t kQuickBytes = std::uintmax_t{512} * 1024;
  std::error_code fault;
  const std::uintmax_t bytes = std::filesystem::file_size(path, fault);
  return !fault && bytes <= kQuickBytes;
}

notebook::Opener opener_of(const Hand& hand) {
  return {.words = hand.who + " on " + hand.machine_words, .at_utc = hand.at_utc};
}

notebook::Authorship authorship_of(const Hand& hand) {
  return {
      .client_id = notebook::random_uid(), .at_utc = hand.at_utc, .who = hand.who, .why = hand.why};
}

void refuse_damage(const notebook::Notebook& notebook) {
  if (notebook::check(notebook).empty()) return;
  throw notebook::NotebookDamaged("it is not as it was written");
}

void throw_as_trouble(const std::string& path, const notebook::NotebookFailure& failure) {
  std::string words = path + ": " + failure.what() + ".";
  if (dynamic_cast<const notebook::NotebookDamaged*>(&failure) != nullptr) {
    words +=
        " The notebook is not as it was written, so nothing was done with it: keenfall check " +
        base::shell_word(path) + " says what is wrong. A backup may be whole.";
  }
  throw NotebookTrouble(words);
}

}  // namespace keenfall::workbench
