// Several files in one fuzz input, and a line of words before them.
//
// A line "=== NAME" begins the file of that name; it goes on to the next such line. What stands
// before the first one is dropped. A file made of text this way stays text when it is mutated.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::fuzz {

struct InputPart {
  std::string name;
  std::string_view content;
};

[[nodiscard]] std::vector<InputPart> parts_of_input(std::string_view input);

// The words of the first line, divided by '|'; `input` is left without it.
[[nodiscard]] std::vector<std::string> words_of_first_line(std::string_view& input);

// A zip archive that holds the parts as they are, uncompressed, with the checksums they need: so a
// mutated part still reaches the reader of spreadsheets.
[[nodiscard]] std::string stored_archive(const std::vector<InputPart>& parts);

}  // namespace keenfall::fuzz
