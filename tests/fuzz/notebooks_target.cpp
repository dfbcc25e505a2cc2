// Notebooks: a file that somebody sends, damaged or made to harm, is opened, checked, read, merged
// into a sound one (which must stay sound), and undone.
//
// The first byte says what the rest is: f, the file's bytes; p, changes to the bytes of a notebook;
// r, changes to its rows and j to its journal, with checksums that fit (spoiled_notebook.h). P, R
// and J are the same of a notebook of the newest format, and the second byte says how it is merged.
#include "exchange/long_table.h"
#include "fuzz_target.h"
#include "input_bytes.h"
#include "notebook/check.h"
#include "notebook/content.h"
#include "notebook/kept_trials.h"
#include "notebook/kit.h"
#include "notebook/looks.h"
#include "notebook/merge.h"
#include "notebook/notebook.h"
#include "notebook/notebook_failure.h"
#include "notebook/plans.h"
#include "scratch_folder.h"
#include "spoiled_notebook.h"

#include <array>
#include <cstdlib>
#include <string>

namespace {

using namespace keenfall;

const notebook::Opener kOpener{.words = "the fuzz target", .at_utc = "2026-11-26T12:00:00Z"};

const std::string& oldest_notebook() {
  static const std::string bytes =
      fuzz::bytes_of(KEENFALL_SOURCE_DIR "/tests/notebooks/schema_1.keen");
  return bytes;
}

const std::string& newest_notebook() {
  static const std::string bytes =
      fuzz::bytes_of(KEENFALL_SOURCE_DIR "/tests/notebooks/schema_3.keen");
  return bytes;
}

std::string spoiled(const fuzz::ScratchFolder& folder, char how, fuzz::InputBytes input) {
  constexpr const char* kName = "spoiled.keen";
  const bool is_newest = how >= 'A' && how <= 'Z';
  const std::string& sound = is_newest ? newest_notebook() : oldest_notebook();
  if (how == 'f') return folder.file(kName, input.rest());
  if (how == 'p' || how == 'P') return folder.file(kName, fuzz::with_bytes_changed(sound, input));
  std::string path = folder.file(kName, sound);
  if (how == 'j' || how == 'J') {
    fuzz::change_journal(path, input);
  } else {
    fuzz::change_rows(path, input);
  }
  return path;
}

// What may fail for a damaged file, each for itself.
template <class Work>
void looking(Work work) {
  try {
    work();
  } catch (const notebook::NotebookFailure&) {
    return;
  }
}

notebook::Authorship authorship(const char* client_id) {
  return {.client_id = client_id,
          .at_utc = "2026-11-26T12:00:00Z",
          .who = "the fuzz target",
          .why = ""};
}

// Table by table, as another program would have it, and put together again.
void gather(const notebook::Notebook& opened) {
  notebook::GatheredContent gathered;
  for (const auto& table : notebook::content_of(opened)) {
    notebook::each_content_row(opened, table.name, [&](const notebook::ContentRow& row) {
      (void)gathered.add(table.name, row);
    });
  }
  (void)gathered.flaw();
}

void read(const std::string& path) {
  const auto opened = notebook::Notebook::open_to_read(path);
  if (!opened) return;
  looking([&] { (void)notebook::check(*opened); });
  looking([&] { (void)opened->journal(); });
  looking([&] { (void)opened->last_to_undo(); });
  looking([&] {
    for (const auto& kept : notebook::kept_trials(*opened)) {
      looking([&] {
        const auto trial = notebook::kept_trial(*opened, kept.name);
        if (trial) (void)exchange::long_table_of(*trial);
        (void)notebook::count_of(notebook::looks_at(*opened, kept.name));
        (void)notebook::kept_plan(*opened, kept.name);
      });
    }
  });
  looking([&] { (void)notebook::kept_kit(*opened); });
  looking([&] { gather(*opened); });
}

// Whatever comes from elsewhere, what was sound stays so.
void merge_into_a_sound_one(const fuzz::ScratchFolder& folder, const std::string& path, char how) {
  constexpr std::array kAlike = {notebook::AlikeNames::in_conflict,
                                 notebook::AlikeNames::are_one,
                                 notebook::AlikeNames::are_apart};
  const auto other = notebook::Notebook::open_to_read(path);
  if (!other) return;
  auto here =
      notebook::Notebook::open_to_write(folder.file("sound.keen", newest_notebook()), kOpener);
  if (!here) std::abort();
  looking([&] {
    const auto number = static_cast<unsigned char>(how);
    (void)notebook::merge(*here,
                          *other,
                          "merge",
                          {.alike_names = kAlike.at(number % kAlike.size()),
                           .apart = "R.",
                           .keeps_what_is_here = number % 2 == 1},
                          authorship("merge"));
  });
  if (!notebook::check(*here).empty()) std::abort();
}

void undo_and_redo(const std::string& path) {
  auto opened = notebook::Notebook::open_to_write(path, kOpener);
  if (!opened) return;
  for (const char* client_id : {"undo", "redo"}) {
    const auto journal = opened->journal();
    if (journal.empty()) return;
    (void)opened->undo(journal.back().entry, authorship(client_id));
  }
  (void)notebook::check(*opened);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const fuzz::ScratchFolder folder;
  folder.clear();
  fuzz::InputBytes input(fuzz::as_text(bytes, size));
  const char how = static_cast<char>(input.number(1));
  const char merging = how >= 'A' && how <= 'Z' ? static_cast<char>(input.number(1)) : how;
  const std::string path = spoiled(folder, how, input);
  looking([&] { read(path); });
  looking([&] { merge_into_a_sound_one(folder, path, merging); });
  looking([&] { undo_and_redo(path); });
  return 0;
}
