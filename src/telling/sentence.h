// A sentence as words, some of which carry a tone. Whoever shows it chooses what a tone looks like;
// the words say it too.
#pragma once

#include <string>
#include <vector>

namespace keenfall::telling {

// Two tones, sparingly: an answer that holds, and one that is not settled.
enum class Tone { plain, settled, not_settled };

struct Words {
  std::string text;
  Tone tone = Tone::plain;

  bool operator==(const Words&) const = default;
};

struct Sentence {
  std::vector<Words> words;  // in order; the spaces between them are in their texts
  // What the judgement's numbers hold and the words leave out, to follow "holds": "how many more
  // runs each needs". Empty: nothing.
  std::string left_out;

  bool operator==(const Sentence&) const = default;
};

[[nodiscard]] Sentence plain(std::string text);
[[nodiscard]] std::vector<Sentence> all_plain(const std::vector<std::string>& texts);

// The words one after another, without their tones.
[[nodiscard]] std::string text_of(const Sentence& sentence);

}  // namespace keenfall::telling
