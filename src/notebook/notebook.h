// A notebook: one file in which a person's work lives, every change to it recorded.
//
// Opened for reading by anyone, for writing by one process at a time. A change is one transaction
// with its journal entry: there as a whole or not at all, and on the disk before it is
// acknowledged. Opening fails with a Problem where the file is not there, not a notebook, of a
// newer program, or being written by another; a disk that fails or a damaged page is thrown
// (notebook_failure.h). The format: docs/notebook-format.md
#pragma once

#include "base/result.h"

#include <chrono>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {

// Do the file's first bytes say that it is of the format notebooks are kept in? False where it
// cannot be read.
[[nodiscard]] bool begins_as_notebook(const std::string& path);

// Who opens it, as a second writer would be told: "R. on bench-2, process 4711".
struct Opener {
  std::string words;
  std::string at_utc;  // "2026-11-26T12:00:00Z"
  // How long each change waits where a program that is not Keenfall writes to the file just then.
  std::chrono::milliseconds waits{10'000};
};

struct Authorship {
  std::string client_id;  // by which a change that arrives twice counts once; not empty
  std::string at_utc;
  std::string who;
  std::string why;  // may be empty
};

struct JournalEntry {
  std::int64_t entry = 0;
  std::string client_id;
  std::string at_utc;
  std::string who;
  std::string what;
  std::string why;
  std::optional<std::int64_t> undoes;
  std::optional<std::int64_t> undone_by;  // by an entry that still holds

  bool operator==(const JournalEntry&) const = default;
};

// The journal's newest entry.
struct JournalPlace {
  std::int64_t entry = 0;  // 0: none
  std::string client_id;

  bool operator==(const JournalPlace&) const = default;
};

struct NotebookIdentity {
  std::string uid;
  std::string made_at_utc;
  std::string made_by;
  std::int64_t schema_version = 0;  // of the file as it is
};

// What the file holds, inside the folder only.
struct NotebookFile;

class Notebook {
 public:
  struct Birth {
    std::string uid;      // 32 hexadecimal digits, random
    std::string made_by;  // "keenfall 0.1.0"
  };

  // Refused where something is there already. It is open for writing afterwards.
  [[nodiscard]] static base::Result<Notebook> create(const std::string& path,
                                                     const Birth& birth,
                                                     const Opener& opener);
  [[nodiscard]] static base::Result<Notebook> open_to_read(const std::string& path);
  [[nodiscard]] static base::Result<Notebook> open_to_write(const std::string& path,
                                                            const Opener& opener);
  // An empty one of no file, for content from elsewhere (content.h). It has no journal to write to.
  [[nodiscard]] static Notebook temporary();

  Notebook(Notebook&& other) noexcept;
  Notebook& operator=(Notebook&&) = delete;
  Notebook(const Notebook&) = delete;
  Notebook& operator=(const Notebook&) = delete;
  ~Notebook();  // folds the log into the file where it is the last to have it open

  [[nodiscard]] const std::string& path() const;
  [[nodiscard]] NotebookIdentity identity() const;
  [[nodiscard]] std::vector<JournalEntry> journal() const;
  // Where the journal stands, at once: as long as that is the same, so is all else.
  [[nodiscard]] JournalPlace last_place() const;

  // The inverse of an entry as a new one. Refused where it was undone already, and where later
  // entries that still hold touched the same rows or rest on them: those are named.
  [[nodiscard]] base::Result<JournalEntry> undo(std::int64_t entry, const Authorship& by);
  // The last entry that still holds and undoes nothing; nothing where there is none.
  [[nodiscard]] std::optional<std::int64_t> last_to_undo() const;

  // All of it again, of no file: to try a change on, which is gone with it.
  [[nodiscard]] Notebook temporary_copy() const;

  // A copy as of now, whole, also while others write. Refused where something is there already.
  [[nodiscard]] base::Result<std::string> back_up_to(const std::string& copy_path) const;

  // For the folder's own functions.
  [[nodiscard]] NotebookFile& file() const { return *file_; }

 private:
  explicit Notebook(std::unique_ptr<NotebookFile> file);

  std::unique_ptr<NotebookFile> file_;
};

// While it lives, everything that is read of the notebook is as of one moment, also while another
// process writes. Nothing is written to the notebook meanwhile by whoever has this. Within another
// one it is the same moment.
class OneMoment {
 public:
  explicit OneMoment(const Notebook& notebook);
  OneMoment(OneMoment&&) = delete;
  OneMoment& operator=(OneMoment&&) = delete;
  OneMoment(const OneMoment&) = delete;
  OneMoment& operator=(const OneMoment&) = delete;
  ~OneMoment();

 private:
  struct View;

  std::unique_ptr<View> view_;
};

}  // namespace keenfall::notebook
