// Reading one grit out of a person's words: split into words, numbers and marks, then look for
// "system number", "number system" and "number unit"; two different answers are no answer.

#include "materials/grits.h"
#include "materials/spelling.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <span>
#include <string>
#include <vector>

namespace keenfall::materials {

namespace {

struct Token {
  enum class Kind { word, number, mark } kind = Kind::mark;
  std::string text;   // small letters
  double number = 0;  // where it is one
};

bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }

// Letters, and every byte of a character beyond ASCII (the micro sign).
bool is_letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0 || static_cast<unsigned char>(c) >= 0x80;
}

// Digits with one decimal point or comma at most.
std::size_t number_end(std::string_view text, std::size_t at) {
  const auto digits = [text](std::size_t from) {
    while (from < text.size() && is_digit(text[from])) ++from;
    return from;
  };
  const std::size_t whole = digits(at);
  const bool fraction = whole + 1 < text.size() && (text[whole] == '.' || text[whole] == ',') &&
                        is_digit(text[whole + 1]);
  return fraction ? digits(whole + 1) : whole;
}

Token number_token(std::string_view digits) {
  Token token{.kind = Token::Kind::number, .text = std::string(digits)};
  std::string plain = token.text;
  if (const auto comma = plain.find(','); comma != std::string::npos) plain[comma] = '.';
  std::from_chars(plain.data(), plain.data() + plain.size(), token.number);
  return token;
}

std::vector<Token> tokens_of(std::string_view text) {
  std::vector<Token> tokens;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = at + 1;
    if (is_digit(text[at])) {
      end = number_end(text, at);
      tokens.push_back(number_token(text.substr(at, end - at)));
    } else if (is_letter(text[at])) {
      while (end < text.size() && is_letter(text[end])) ++end;
      tokens.push_back({.kind = Token::Kind::word, .text = lower_case(text.substr(at, end - at))});
    } else if (text[at] != ' ' && text[at] != '\t') {
      tokens.push_back({.kind = Token::Kind::mark, .text = std::string(1, text[at])});
    }
    at = end;
  }
  return tokens;
}

bool is_word(std::span<const Token> tokens, std::size_t at, std::string_view word) {
  return at < tokens.size() && tokens[at].kind == Token::Kind::word && tokens[at].text == word;
}

bool is_mark(std::span<const Token> tokens, std::size_t at, char mark) {
  return at < tokens.size() && tokens[at].kind == Token::Kind::mark && tokens[at].text[0] == mark;
}

bool is_number(std::span<const Token> tokens, std::size_t at) {
  return at < tokens.size() && tokens[at].kind == Token::Kind::number;
}

struct SystemName {
  GritSystem system = GritSystem::unknown;
  std::size_t after = 0;    // index of the first token behind the name
  bool one_letter = false;  // "F" or "P" alone
};

SystemName system_at(std::span<const Token> tokens, std::size_t at) {
  if (is_word(tokens, at, "jis")) return {GritSystem::jis, at + 1, false};
  if (is_word(tokens, at, "cami") || is_word(tokens, at, "ansi")) {
    return {GritSystem::cami, at + 1, false};
  }
  std::size_t letter = at;
  if (is_word(tokens, at, "fepa")) letter = is_mark(tokens, at + 1, '-') ? at + 2 : at + 1;
  if (is_word(tokens, letter, "f")) return {GritSystem::fepa_f, letter + 1, letter == at};
  if (is_word(tokens, letter, "p")) return {GritSystem::fepa_p, letter + 1, letter == at};
  return {};
}

bool is_micrometre(std::string_view word) {
  constexpr std::array<std::string_view, 9> kSizeUnits = {"um",
                                                          "\u00b5m",
                                                          "\u03bcm",
                                                          "micron",
                                                          "microns",
                                                          "micrometre",
                                                          "micrometres",
                                                          "micrometer",
                                                          "micrometers"};
  return std::ranges::find(kSizeUnits, word) != kSizeUnits.end();
}

// The grit that begins at this token, if one does.
Grit grit_at(std::span<const Token> tokens, std::size_t at) {
  if (const SystemName name = system_at(tokens, at); name.system != GritSystem::unknown) {
    std::size_t number = name.after;
    if (is_mark(tokens, number, '-') || is_mark(tokens, number, '#')) ++number;
    if (is_number(tokens, number)) return {name.system, tokens[number].number, ""};
  }
  if (!is_number(tokens, at) || at + 1 >= tokens.size()) return {};
  if (tokens[at + 1].kind == Token::Kind::word && is_micrometre(tokens[at + 1].text)) {
    return {GritSystem::micrometres, tokens[at].number, ""};
  }
  const std::size_t behind = is_word(tokens, at + 1, "grit") ? at + 2 : at + 1;
  const SystemName name = system_at(tokens, behind);
  const bool next_belongs_to_it = is_number(tokens, name.after) || is_mark(tokens, name.after, '#');
  if (name.system == GritSystem::unknown || name.one_letter || next_belongs_to_it) return {};
  return {name.system, tokens[at].number, ""};
}

// "1-3 um", "0 to 1 um", "1000/6000": no single size.
bool holds_a_range(std::span<const Token> tokens) {
  for (std::size_t at = 0; at + 2 < tokens.size(); ++at) {
    if (!is_number(tokens, at)) continue;
    const bool between = is_mark(tokens, at + 1, '-') || is_mark(tokens, at + 1, '/') ||
                         is_word(tokens, at + 1, "to") || is_word(tokens, at + 1, "\u2013");
    if (between && is_number(tokens, at + 2)) return true;
  }
  return false;
}

}  // namespace

Grit parse_grit(std::string_view text) {
  const std::string_view written = trimmed(text);
  const std::vector<Token> tokens = tokens_of(written);
  Grit grit;
  bool one_answer = !holds_a_range(tokens);
  for (std::size_t at = 0; at < tokens.size() && one_answer; ++at) {
    const Grit found = grit_at(tokens, at);
    if (found.system == GritSystem::unknown || found == grit) continue;
    one_answer = grit.system == GritSystem::unknown;
    grit = found;
  }
  if (!one_answer || grit.number.value_or(0) <= 0) grit = {};
  // A bare number is remembered, so that what it could be can be listed.
  if (grit.system == GritSystem::unknown && one_answer) {
    for (const Token& token : tokens) {
      if (token.kind != Token::Kind::number) continue;
      grit.number = grit.number ? std::nullopt : std::optional(token.number);
      if (!grit.number) break;
    }
  }
  grit.as_written = std::string(written);
  return grit;
}

}  // namespace keenfall::materials
