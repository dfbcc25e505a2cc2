#include "telling/sentence.h"

#include <utility>

namespace keenfall::telling {

Sentence plain(std::string text) { return {.words = {{.text = std::move(text)}}}; }

std::vector<Sentence> all_plain(const std::vector<std::string>& texts) {
  std::vector<Sentence> sentences;
  for (const std::string& text : texts) sentences.push_back(plain(text));
  return sentences;
}

std::string text_of(const Sentence& sentence) {
  std::string text;
  for (const Words& words : sentence.words) text += words.text;
  return text;
}

}  // namespace keenfall::telling
