// Packages of a notebook: what somebody sends is read, put together and merged into a sound
// notebook, which must stay sound.
//
// The first line is a character that says how things that are called alike are merged. Then come
// files (input_parts.h) in place of those of a sound package, whose descriptor states no digests.
#include "fuzz_target.h"
#include "input_parts.h"
#include "notebook/check.h"
#include "notebook/merge.h"
#include "notebook/notebook_failure.h"
#include "scratch_folder.h"
#include "workbench/notebook_package.h"

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>

namespace {

using namespace keenfall;
using Files = std::map<std::string, std::string>;

constexpr const char* kSoundNotebook = KEENFALL_SOURCE_DIR "/tests/notebooks/schema_3.keen";
constexpr std::array kAlike = {notebook::AlikeNames::in_conflict,
                               notebook::AlikeNames::are_one,
                               notebook::AlikeNames::are_apart};

// Digests would refuse every file that is changed.
std::string without_digests(const std::string& descriptor) {
  std::string kept;
  std::string_view rest = descriptor;
  while (!rest.empty()) {
    const std::size_t end = rest.find('\n');
    const std::string_view line = rest.substr(0, end);
    const bool is_digest = line.find("\"hash\"") != std::string_view::npos;
    if (!is_digest) kept.append(line).append("\n");
    rest.remove_prefix(end == std::string_view::npos ? rest.size() : end + 1);
  }
  return kept;
}

Files files_of_sound_package() {
  const fuzz::ScratchFolder scratch;
  const std::string copy = scratch.file("sound.keen", fuzz::bytes_of(kSoundNotebook));
  const std::string folder = scratch.path() / "package";
  const auto opened = notebook::Notebook::open_to_read(copy);
  if (!opened || workbench::write_package(*opened, folder, "2026-11-26T12:00:00Z")) std::abort();
  Files files;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    files[entry.path().filename().string()] = fuzz::bytes_of(entry.path());
  }
  files["datapackage.json"] = without_digests(files.at("datapackage.json"));
  return files;
}

std::string package_with(const fuzz::ScratchFolder& folder,
                         const std::vector<fuzz::InputPart>& parts) {
  static const Files sound = files_of_sound_package();
  Files files = sound;
  for (const auto& part : parts) {
    const auto known = files.find(part.name);
    if (known != files.end()) known->second = part.content;
  }
  const std::filesystem::path package = folder.path() / "package";
  std::filesystem::create_directory(package);
  for (const auto& [name, content] : files) {
    std::ofstream file(package / name, std::ios::binary);
    file.write(content.data(), static_cast<std::streamsize>(content.size()));
  }
  return package;
}

void take_in(const fuzz::ScratchFolder& folder, const std::string& package, std::size_t how) {
  const auto read = workbench::read_package(package);
  if (!read) {
    for (const auto& problem : read.error()) (void)base::in_words(problem);
    return;
  }
  auto here = notebook::Notebook::open_to_write(
      folder.file("here.keen", fuzz::bytes_of(kSoundNotebook)),
      {.words = "the fuzz target", .at_utc = "2026-11-26T12:00:00Z"});
  if (!here) std::abort();
  (void)notebook::merge(
      *here,
      read->content->notebook(),
      "take a package",
      {.alike_names = kAlike.at(how % kAlike.size()),
       .apart = "R.",
       .keeps_what_is_here = how % 2 == 1},
      {.client_id = "take", .at_utc = "2026-11-26T12:00:00Z", .who = "the fuzz target", .why = ""});
  if (!notebook::check(*here).empty()) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const fuzz::ScratchFolder folder;
  folder.clear();
  std::string_view input = fuzz::as_text(bytes, size);
  const auto words = fuzz::words_of_first_line(input);
  const bool is_said = !words.empty() && !words.front().empty();
  const std::size_t how = is_said ? static_cast<unsigned char>(words.front().front()) : 0;
  try {
    take_in(folder, package_with(folder, fuzz::parts_of_input(input)), how);
  } catch (const notebook::NotebookFailure&) {
    return 0;
  }
  return 0;
}
