// HTML that nothing a person wrote can break: whatever is put in is escaped on its way.
//
// Tags and attribute names are this program's own words; texts and attribute values may be
// anything. Control characters, and bytes that are not UTF-8, come out as U+FFFD. Elements are
// closed in the order they were opened, and all of them before the text is taken (else
// std::logic_error).
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::page {

struct Attribute {
  std::string_view name;
  std::string_view content;
};

class Html {
 public:
  Html& open(std::string_view tag, std::initializer_list<Attribute> attributes = {});
  Html& close();
  Html& text(std::string_view words);
  // An element with nothing but a text in it.
  Html& element(std::string_view tag,
                std::string_view words,
                std::initializer_list<Attribute> attributes = {});
  // An element without content or end: <meta>, <link>.
  Html& lone(std::string_view tag, std::initializer_list<Attribute> attributes);
  // HTML that this program made: never anything that was read.
  Html& own(std::string_view html);

  [[nodiscard]] std::string taken() &&;

 private:
  std::string html_;
  std::vector<std::string> open_;
};

// "95 %" and "108 cuts" do not look well on two lines: the space before a percent sign is kept.
[[nodiscard]] std::string with_units_kept(std::string words);

// As it may stand in an element, or between double quotes.
[[nodiscard]] std::string escaped(std::string_view words);

}  // namespace keenfall::page
