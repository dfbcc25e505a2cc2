#include "exchange/xml_reader.h"

#include <charconv>
#include <cstdint>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kDeepest = 200;
constexpr std::string_view kXmlBlanks = " \t\r\n";

std::string_view without_prefix(std::string_view name) {
  const std::size_t colon = name.find(':');
  return colon == name.npos ? name : name.substr(colon + 1);
}

void append_utf8(std::string& text, std::uint32_t code) {
  const auto put = [&text](std::uint32_t byte) { text += static_cast<char>(byte); };
  if (code < 0x80U) {
    put(code);
  } else if (code < 0x800U) {
    put(0xC0U | (code >> 6U));
    put(0x80U | (code & 0x3FU));
  } else if (code < 0x10000U) {
    put(0xE0U | (code >> 12U));
    put(0x80U | ((code >> 6U) & 0x3FU));
    put(0x80U | (code & 0x3FU));
  } else {
    put(0xF0U | (code >> 18U));
    put(0x80U | ((code >> 12U) & 0x3FU));
    put(0x80U | ((code >> 6U) & 0x3FU));
    put(0x80U | (code & 0x3FU));
  }
}

// "#39" and "#x27"; control characters become a blank.
bool append_numbered(std::string& text, std::string_view entity) {
  const bool is_hex = entity.starts_with("#x") || entity.starts_with("#X");
  const std::string_view digits = entity.substr(is_hex ? 2 : 1);
  std::uint32_t code = 0;
  const auto [end, fault] =
      std::from_chars(digits.data(), digits.data() + digits.size(), code, is_hex ? 16 : 10);
  const bool is_surrogate = code >= 0xD800U && code <= 0xDFFFU;
  if (fault != std::errc() || end != digits.data() + digits.size() || code > 0x10FFFFU ||
      is_surrogate) {
    return false;
  }
  append_utf8(text, code < 0x20U && code != '\n' && code != '\t' ? ' ' : code);
  return true;
}

std::string plain(std::string_view raw) {
  std::string text;
  while (true) {
    const std::size_t start = raw.find('&');
    text += raw.substr(0, start);
    if (start == raw.npos) return text;
    raw.remove_prefix(start);
    const std::size_t end = raw.find(';');
    const std::string_view entity = end == raw.npos ? std::string_view{} : raw.substr(1, end - 1);
    if (entity == "amp") {
      text += '&';
    } else if (entity == "lt") {
      text += '<';
    } else if (entity == "gt") {
      text += '>';
    } else if (entity == "quot") {
      text += '"';
    } else if (entity == "apos") {
      text += '\'';
    } else if (!entity.starts_with('#') || !append_numbered(text, entity)) {
      text += '&';
      raw.remove_prefix(1);
      continue;
    }
    raw.remove_prefix(end + 1);
  }
}

}  // namespace

XmlReader::Found XmlReader::next() {
  if (is_self_closed_) {
    is_self_closed_ = false;
    open_.pop_back();
    attributes_.clear();
    return Found::end;
  }
  while (at_ < text_.size()) {
    if (text_[at_] == '<') {
      const Found found = read_markup();
      if (found != Found::text || !found_text_.empty()) return found;
      continue;
    }
    const std::size_t end = std::min(text_.find('<', at_), text_.size());
    const std::string_view raw = text_.substr(at_, end - at_);
    at_ = end;
    if (open_.empty()) {
      if (raw.find_first_not_of(kXmlBlanks) != raw.npos && !raw.starts_with("\xEF\xBB\xBF")) {
        return Found::broken;
      }
      continue;
    }
    found_text_ = plain(raw);
    return Found::text;
  }
  return open_.empty() ? Found::done : Found::broken;
}

std::string XmlReader::attribute(std::string_view name) const {
  for (const Attribute& attribute : attributes_) {
    if (attribute.name == name) return plain(attribute.value);
  }
  return {};
}

// Passes over a comment or declaration as an empty text.
XmlReader::Found XmlReader::skip_past(std::string_view ending) {
  const std::size_t end = text_.find(ending, at_);
  if (end == text_.npos) return Found::broken;
  at_ = end + ending.size();
  found_text_.clear();
  return Found::text;
}

XmlReader::Found XmlReader::read_markup() {
  const std::string_view rest = text_.substr(at_);
  if (rest.starts_with("<!--")) return skip_past("-->");
  if (rest.starts_with("<?")) return skip_past("?>");
  constexpr std::string_view kCdata = "<![CDATA[";
  if (rest.starts_with(kCdata)) {
    const std::size_t end = text_.find("]]>", at_);
    if (end == text_.npos || open_.empty()) return Found::broken;
    found_text_ = std::string(text_.substr(at_ + kCdata.size(), end - at_ - kCdata.size()));
    at_ = end + 3;
    return Found::text;
  }
  if (rest.starts_with("<!")) return Found::broken;  // document types are not read
  return read_tag();
}

XmlReader::Found XmlReader::read_tag() {
  // A '>' may stand inside an attribute's quotes.
  std::size_t end = at_ + 1;
  char quote = '\0';
  while (end < text_.size() && (quote != '\0' || text_[end] != '>')) {
    const char c = text_[end++];
    if (quote != '\0') {
      if (c == quote) quote = '\0';
    } else if (c == '"' || c == '\'') {
      quote = c;
    }
  }
  if (end >= text_.size()) return Found::broken;
  std::string_view inside = text_.substr(at_ + 1, end - at_ - 1);
  at_ = end + 1;
  const bool is_end = inside.starts_with('/');
  if (is_end) inside.remove_prefix(1);
  const bool is_closed = !is_end && inside.ends_with('/');
  if (is_closed) inside.remove_suffix(1);
  const std::size_t name_end = std::min(inside.find_first_of(kXmlBlanks), inside.size());
  const std::string_view full_name = inside.substr(0, name_end);
  if (full_name.empty()) return Found::broken;
  name_ = without_prefix(full_name);
  if (is_end) {
    if (open_.empty() || open_.back() != full_name) return Found::broken;
    open_.pop_back();
    attributes_.clear();
    return Found::end;
  }
  if (open_.size() >= kDeepest || !read_attributes(inside.substr(name_end))) return Found::broken;
  open_.push_back(full_name);
  is_self_closed_ = is_closed;
  return Found::start;
}

bool XmlReader::read_attributes(std::string_view inside) {
  attributes_.clear();
  while (true) {
    const std::size_t start = inside.find_first_not_of(kXmlBlanks);
    if (start == inside.npos) return true;
    inside.remove_prefix(start);
    const std::size_t equals = inside.find('=');
    if (equals == inside.npos || equals == 0) return false;
    std::string_view name = inside.substr(0, equals);
    name = name.substr(0, name.find_last_not_of(kXmlBlanks) + 1);
    inside.remove_prefix(equals + 1);
    const std::size_t opening = inside.find_first_not_of(kXmlBlanks);
    if (opening == inside.npos || (inside[opening] != '"' && inside[opening] != '\'')) return false;
    const std::size_t closing = inside.find(inside[opening], opening + 1);
    if (closing == inside.npos) return false;
    attributes_.push_back(
        {.name = name, .value = inside.substr(opening + 1, closing - opening - 1)});
    inside.remove_prefix(closing + 1);
  }
}

}  // namespace keenfall::exchange
