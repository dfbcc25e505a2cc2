// What cannot be opened or written is refused in a plain sentence, its bytes stay as they were and
// nothing is left beside it. Where rights are missing, that is tried by a process without any.
#include "notebook/digest.h"
#include "notebook/in_a_process_test.h"
#include "notebook/kept_trials.h"
#include "notebook/made_notebook.h"
#include "notebook/notebook.h"
#include "notebook/schema.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::kOpener;
using testing::Rights;
using testing::said_in_a_process;
using testing::said_without_rights;
using testing::ScratchFolder;

std::string content_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

// Every file of a folder with its SHA-256.
std::map<std::string, std::string> digests_in(const std::filesystem::path& folder) {
  std::map<std::string, std::string> digests;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    digests[entry.path().filename()] = in_hex(sha256_of(content_of(entry.path())));
  }
  return digests;
}

std::string sentence_of(const base::Result<Notebook>& opened) {
  return opened ? "opened" : opened.error().sentence;
}

std::string sentence_of_reading(const std::string& path) {
  const auto opened = Notebook::open_to_read(path);
  if (!opened) return opened.error().sentence;
  return *kept_trial(*opened, "matting") == a_trial() ? "read" : "read otherwise";
}

class ARefusal : public ::testing::Test {
 protected:
  ARefusal() {
    Notebook notebook = std::move(*Notebook::create(path_, {.uid = "u", .made_by = "t"}, kOpener));
    EXPECT_TRUE(take(notebook, a_trial(), {}, {.client_id = "c", .at_utc = "", .who = "R."}));
    copy_open_file("open.keen");
  }

  // As a process that was killed leaves it: with its log beside.
  void copy_open_file(const std::string& name) {
    for (const char* ending : {"", "-wal"}) {
      std::filesystem::copy_file(path_ + ending, scratch_.file(name + ending));
    }
  }

  std::string path_with(std::size_t place, const std::string& bytes) {
    std::string content = content_of(path_);
    content.replace(place, bytes.size(), bytes);
    return path_holding(content);
  }

  std::string path_holding(const std::string& content) {
    std::ofstream(scratch_.file("other.keen"), std::ios::binary) << content;
    return scratch_.file("other.keen");
  }

  void allow(const char* name, unsigned mode) {
    std::filesystem::permissions(scratch_.path() / name, std::filesystem::perms(mode));
  }

  void expect_refused_untouched(const std::string& path, const std::string& sentence) {
    const auto before = digests_in(scratch_.path());
    EXPECT_EQ(sentence_of(Notebook::open_to_read(path)), sentence);
    EXPECT_EQ(sentence_of(Notebook::open_to_write(path, kOpener)), sentence);
    EXPECT_EQ(digests_in(scratch_.path()), before);
  }

  ScratchFolder scratch_{::testing::UnitTest::GetInstance()->current_test_info()->name()};
  std::string path_ = scratch_.file("bench.keen");
};

TEST_F(ARefusal, LeavesWhatIsNoNotebookAsItIs) {
  expect_refused_untouched(path_holding("cuts;reading\n0;110\n" + std::string(200, ' ')),
                           "This is not a notebook.");
  expect_refused_untouched(path_with(68, std::string(4, '\0')),
                           "This is a database of another program, not a notebook.");
  expect_refused_untouched(path_with(63, "\x09"),
                           "This notebook was written by a newer Keenfall (format 9; this one "
                           "knows up to " +
                               std::to_string(kSchemaVersion) + "). It was left as it is.");
}

TEST_F(ARefusal, LeavesAShortenedFileAsItIsAtEveryLength) {
  const std::string whole = content_of(path_);
  expect_refused_untouched(
      path_holding(""),
      "There is nothing in this file: its making was interrupted, or it was emptied.");
  for (std::size_t length = 1; length < whole.size(); length += length < 100 ? 33 : 1999) {
    SCOPED_TRACE(length);
    expect_refused_untouched(path_holding(whole.substr(0, length)),
                             length < 100
                                 ? "This is not a notebook: the file is too short."
                                 : "This notebook is cut short: the end of the file is missing.");
  }
  expect_refused_untouched(path_holding(whole.substr(0, whole.size() - 1)),
                           "This notebook is cut short: the end of the file is missing.");
}

TEST_F(ARefusal, NamesTheFolderThatMayNotBeWrittenToAndLetsRead) {
  const auto before = digests_in(scratch_.path());
  allow("bench.keen", 0666);
  allow("", 0555);

  EXPECT_EQ(said_without_rights([&] { return sentence_of_reading(path_); }), "read");
  EXPECT_EQ(said_without_rights([&] { return sentence_of_reading("/" + path_); }), "read");
  EXPECT_EQ(
      said_without_rights([&] { return sentence_of(Notebook::open_to_write(path_, kOpener)); }),
      "The notebook cannot be written to: beside it " + path_ +
          ".writer cannot be made (Permission denied).");
  EXPECT_EQ(said_without_rights([&] {
              return sentence_of(Notebook::create(scratch_.file("new.keen"), {}, kOpener));
            }),
            "No notebook can be made here: Permission denied.");
  EXPECT_EQ(said_without_rights([&] {
              return Notebook::open_to_read(path_)
                  ->back_up_to(scratch_.file("copy.keen"))
                  .error()
                  .sentence;
            }),
            "No copy can be made here: Permission denied.");
  EXPECT_EQ(digests_in(scratch_.path()), before);
}

TEST_F(ARefusal, SaysWhereALogCannotBeReadForWantOfRights) {
  const auto before = digests_in(scratch_.path());
  allow("", 0555);

  EXPECT_EQ(said_without_rights([&] { return sentence_of_reading(scratch_.file("open.keen")); }),
            "The last changes lie in a log beside the notebook, which can be read only where the "
            "folder may be written to.");
  EXPECT_EQ(digests_in(scratch_.path()), before);
}

TEST_F(ARefusal, SaysThatAFileMayNotBeWrittenToAndLetsRead) {
  const auto before = digests_in(scratch_.path());
  allow("", 0777);
  allow("bench.keen", 0444);

  EXPECT_EQ(said_without_rights([&] { return sentence_of_reading(path_); }), "read");
  EXPECT_EQ(
      said_without_rights([&] { return sentence_of(Notebook::open_to_write(path_, kOpener)); }),
      "The notebook may not be written to.");
  EXPECT_EQ(digests_in(scratch_.path()), before);
}

TEST_F(ARefusal, SaysThatAFileMayNotBeRead) {
  allow("bench.keen", 0000);
  EXPECT_EQ(said_without_rights([&] { return sentence_of_reading(path_); }),
            "The notebook cannot be read.");

  allow("", 0000);
  EXPECT_EQ(said_without_rights([&] { return sentence_of_reading(path_); }),
            "The notebook cannot be read: Permission denied.");
  allow("", 0755);
}

TEST_F(ARefusal, NamesTheProcessThatWritesAndTouchesNothing) {
  const Notebook held = std::move(*Notebook::open_to_write(path_, kOpener));
  const auto before = digests_in(scratch_.path());

  const std::string said = said_in_a_process(Rights::same, [&] {
    return sentence_of(Notebook::open_to_write(path_, {.words = "S.", .at_utc = "later"}));
  });

  EXPECT_EQ(said,
            "The notebook is being written to by R. on bench-2, process 4711, since "
            "2026-11-26T12:00:00Z, and one writes at a time.");
  EXPECT_EQ(digests_in(scratch_.path()), before);
}

}  // namespace
}  // namespace keenfall::notebook
