// The elements and texts of an XML document, one after another (XML 1.0 without document types).
//
// In: UTF-8 text. Out: starts, ends and texts in their order; names without their prefix. Entities
// other than the five of XML and numbered characters are left as they stand, so that none can
// unfold. Anything not well formed ends the reading as `broken`; nothing is read beyond the text.
// Source: W3C, Extensible Markup Language (XML) 1.0, fifth edition.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

class XmlReader {
 public:
  enum class Found { start, end, text, done, broken };

  explicit XmlReader(std::string_view text) : text_(text) {}

  [[nodiscard]] Found next();

  // Of the element that starts or ends, without its prefix.
  [[nodiscard]] std::string_view name() const { return name_; }
  // By its name with the prefix; empty when the element has none.
  [[nodiscard]] std::string attribute(std::string_view name) const;
  [[nodiscard]] const std::string& text() const { return found_text_; }

 private:
  struct Attribute {
    std::string_view name;
    std::string_view value;
  };

  Found read_markup();
  Found read_tag();
  Found skip_past(std::string_view ending);
  bool read_attributes(std::string_view inside);

  std::string_view text_;
  std::size_t at_ = 0;
  std::string_view name_;
  std::vector<Attribute> attributes_;
  std::vector<std::string_view> open_;
  std::string found_text_;
  bool is_self_closed_ = false;
};

}  // namespace keenfall::exchange
