// Notebooks: a file that somebody sends, damaged or made to harm, is opened, checked, read and
// undone.
//
// The first byte says what the rest is: f, the file's bytes; p, changes to the bytes of a notebook;
// r, changes to its rows and j to its journal, with checksums that fit (spoiled_notebook.h).
#include "exchange/long_table.h"
#include "fuzz_target.h"
#include "input_bytes.h"
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/notebook.h"
#include "notebook/notebook_failure.h"
#include "spoiled_notebook.h"

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

namespace {

using namespace keenfall;

// In memory, so that no disk wears out; gone when the process ends as it should.
class ScratchFolder {
 public:
  ScratchFolder() {
    std::string name = "/dev/shm/keenfall-fuzz-XXXXXX";
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder in /dev/shm");
    path_ = name;
  }
  ~ScratchFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  ScratchFolder(ScratchFolder&&) = delete;
  ScratchFolder& operator=(ScratchFolder&&) = delete;

  // Nothing else is in the folder afterwards.
  [[nodiscard]] std::string only_file(std::string_view bytes) const {
    for (const auto& entry : std::filesystem::directory_iterator(path_)) {
      std::filesystem::remove(entry.path());
    }
    std::string path = path_ / "spoiled.keen";
    std::ofstream file(path, std::ios::binary);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    return path;
  }

 private:
  std::filesystem::path path_;
};

const std::string& sound_notebook() {
  static const std::string bytes = [] {
    std::ifstream file(KEENFALL_SOURCE_DIR "/tests/notebooks/schema_1.keen", std::ios::binary);
    return std::string(std::istreambuf_iterator<char>(file), {});
  }();
  return bytes;
}

std::string spoiled(const ScratchFolder& folder, fuzz::InputBytes input) {
  switch (input.number(1)) {
    case 'f':
      return folder.only_file(input.rest());
    case 'p':
      return folder.only_file(fuzz::with_bytes_changed(sound_notebook(), input));
    case 'j': {
      std::string path = folder.only_file(sound_notebook());
      fuzz::change_journal(path, input);
      return path;
    }
    default: {
      std::string path = folder.only_file(sound_notebook());
      fuzz::change_rows(path, input);
      return path;
    }
  }
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
      });
    }
  });
}

void undo_and_redo(const std::string& path) {
  auto opened = notebook::Notebook::open_to_write(
      path, {.words = "the fuzz target", .at_utc = "2026-11-26T12:00:00Z"});
  if (!opened) return;
  for (const char* client_id : {"undo", "redo"}) {
    const auto journal = opened->journal();
    if (journal.empty()) return;
    (void)opened->undo(journal.back().entry,
                       {.client_id = client_id,
                        .at_utc = "2026-11-26T12:00:00Z",
                        .who = "the fuzz target",
                        .why = ""});
  }
  (void)notebook::check(*opened);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const ScratchFolder folder;
  const std::string path = spoiled(folder, fuzz::InputBytes(keenfall::fuzz::as_text(bytes, size)));
  looking([&] { read(path); });
  looking([&] { undo_and_redo(path); });
  return 0;
}
