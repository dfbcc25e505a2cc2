#include "cli/sentence_text.h"

namespace keenfall::cli {

namespace {

std::string words_text(const telling::Words& words, const Look& look) {
  std::string shown = shown_as(words.text, look);
  switch (words.tone) {
    case telling::Tone::settled:
      return as_settled(shown, look);
    case telling::Tone::not_settled:
      return as_not_settled(shown, look);
    case telling::Tone::plain:
      break;
  }
  return shown;
}

}  // namespace

std::string sentence_text(const telling::Sentence& sentence, const Look& look) {
  std::string text;
  for (const telling::Words& words : sentence.words) text += words_text(words, look);
  if (sentence.left_out.empty()) return text;
  if (text.ends_with('.')) text.pop_back();
  return text + "; --json has " + shown_as(sentence.left_out, look) + ".";
}

std::string sentences_text(const std::vector<telling::Sentence>& sentences,
                           Indent indent,
                           const Look& look) {
  std::string text;
  for (const telling::Sentence& sentence : sentences) {
    text += wrapped(sentence_text(sentence, look), indent, look);
  }
  return text;
}

}  // namespace keenfall::cli
