#include "page/html.h"

#include "base/require.h"
#include "base/unseen_character.h"
#include "exchange/text_file.h"

#include <cstddef>
#include <utility>

namespace keenfall::page {

namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

void append_character(std::string& to, std::string_view character) {
  if (character == "&") {
    to += "&amp;";
  } else if (character == "<") {
    to += "&lt;";
  } else if (character == ">") {
    to += "&gt;";
  } else if (character == "\"") {
    to += "&quot;";
  } else if (character == "\n" || character == "\t") {
    to += character;
  } else if (base::is_control(character) || base::turns_direction(character)) {
    to += kReplacement;
  } else {
    to += character;
  }
}

void append_well_formed(std::string& to, std::string_view words) {
  for (std::size_t at = 0; at < words.size();) {
    const std::size_t length = base::bytes_of_character(words, at);
    append_character(to, words.substr(at, length));
    at += length;
  }
}

void append_escaped(std::string& to, std::string_view words) {
  while (!words.empty()) {
    const std::size_t good = exchange::utf8_byte_count(words);
    append_well_formed(to, words.substr(0, good));
    if (good == words.size()) return;
    to += kReplacement;
    words.remove_prefix(good + 1);
  }
}

void append_tag(std::string& to,
                std::string_view tag,
                std::initializer_list<Attribute> attributes) {
  to += '<';
  to += tag;
  for (const Attribute& attribute : attributes) {
    to += ' ';
    to += attribute.name;
    to += "=\"";
    append_escaped(to, attribute.content);
    to += '"';
  }
  to += '>';
}

}  // namespace

Html& Html::open(std::string_view tag, std::initializer_list<Attribute> attributes) {
  append_tag(html_, tag, attributes);
  open_.emplace_back(tag);
  return *this;
}

Html& Html::close() {
  base::require(!open_.empty(), "an element is open where one is closed");
  html_ += "</" + open_.back() + ">";
  open_.pop_back();
  return *this;
}

Html& Html::text(std::string_view words) {
  append_escaped(html_, words);
  return *this;
}

Html& Html::element(std::string_view tag,
                    std::string_view words,
                    std::initializer_list<Attribute> attributes) {
  return open(tag, attributes).text(words).close();
}

Html& Html::lone(std::string_view tag, std::initializer_list<Attribute> attributes) {
  append_tag(html_, tag, attributes);
  return *this;
}

Html& Html::own(std::string_view html) {
  html_ += html;
  return *this;
}

std::string Html::taken() && {
  base::require(open_.empty(), "every element is closed before the page is taken");
  return std::move(html_);
}

std::string with_units_kept(std::string words) {
  constexpr std::string_view kBefore = " %";
  constexpr std::string_view kNoBreakSpace = "\xC2\xA0%";
  for (std::size_t at = words.find(kBefore); at != std::string::npos;
       at = words.find(kBefore, at + kNoBreakSpace.size())) {
    words.replace(at, kBefore.size(), kNoBreakSpace);
  }
  return words;
}

std::string escaped(std::string_view words) {
  std::string result;
  append_escaped(result, words);
  return result;
}

}  // namespace keenfall::page
