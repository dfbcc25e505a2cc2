// What every fuzz target offers: one input, taken as it comes. Whatever it does that is no harm is
// silent; harm ends the process (a sanitizer's report, an exception nobody expects, abort).
//
// libFuzzer calls it with inputs of its making; corpus_main.cpp with the files of a corpus.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size);

namespace keenfall::fuzz {

[[nodiscard]] inline std::string_view as_text(const std::uint8_t* bytes, std::size_t size) {
  return {reinterpret_cast<const char*>(bytes), size};
}

}  // namespace keenfall::fuzz
