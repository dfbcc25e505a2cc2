// A notebook of tests/notebooks as an input spoils it: bytes of the file, or rows and journal whose
// checksums fit all the same (docs/notebook-format.md says how they are made).
#pragma once

#include "input_bytes.h"

#include <string>

namespace keenfall::fuzz {

// Overwrites bytes: a place (three bytes) and a text, again and again.
[[nodiscard]] std::string with_bytes_changed(std::string file, InputBytes& input);

// In the notebook at `path`: cells changed, rows added and left out. Where SQLite refuses that, as
// much as went before.
void change_rows(const std::string& path, InputBytes& input);

// The same, of the words and changesets of the journal.
void change_journal(const std::string& path, InputBytes& input);

}  // namespace keenfall::fuzz
