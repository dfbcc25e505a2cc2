#include "exchange/xml_reader.h"

#include "exchange/xlsx_styles.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::exchange {
namespace {

using Found = XmlReader::Found;

std::string events_of(std::string_view text) {
  XmlReader xml(text);
  std::string events;
  while (true) {
    const Found found = xml.next();
    if (found == Found::done) return events;
    if (found == Found::broken) return events + "broken";
    if (found == Found::start) events += "<" + std::string(xml.name()) + ">";
    if (found == Found::end) events += "</" + std::string(xml.name()) + ">";
    if (found == Found::text) events += xml.text();
  }
}

TEST(XmlReader, GivesStartsEndsAndTexts) {
  EXPECT_EQ(events_of("<?xml version=\"1.0\"?>\n<a:b c='>'><d/>x &amp; &#233;&#x20AC;<!-- no -->"
                      "<![CDATA[<y>]]></a:b>\n"),
            "<b><d></d>x & é€<y></b>");
}

TEST(XmlReader, FindsAttributesByTheirFullName) {
  XmlReader xml("<a r:id = \"x&quot;\" id='y'/>");

  ASSERT_EQ(xml.next(), Found::start);
  EXPECT_EQ(xml.attribute("r:id"), "x\"");
  EXPECT_EQ(xml.attribute("id"), "y");
  EXPECT_EQ(xml.attribute("no"), "");
}

TEST(XmlReader, StopsAtWhatIsNotWellFormed) {
  for (const char* text : {"<a>",
                           "<a></b>",
                           "<a",
                           "<a b>",
                           "<a b='>",
                           "</a>",
                           "<a><![CDATA[x</a>",
                           "<!DOCTYPE a [<!ENTITY b \"c\">]><a>&b;</a>",
                           "<>",
                           "x"}) {
    EXPECT_TRUE(events_of(text).ends_with("broken")) << text;
  }
}

TEST(XmlReader, UnfoldsNoEntityOfTheDocument) { EXPECT_EQ(events_of("<a>&b;</a>"), "<a>&b;</a>"); }

// Day numbers of ECMA-376 part 1, 18.17.4.1: 1 is 1 January 1900, 61 is 1 March 1900; 45413 by the
// calendar (44562 is 1 January 2022).
TEST(SpreadsheetDates, CountFrom1900Or1904) {
  EXPECT_EQ(date_of_serial(1, false), "1900-01-01");
  EXPECT_EQ(date_of_serial(61, false), "1900-03-01");
  EXPECT_EQ(date_of_serial(45413, false), "2024-05-01");
  EXPECT_EQ(date_of_serial(45413.5, false), "2024-05-01 12:00");
  EXPECT_EQ(date_of_serial(0, true), "1904-01-01");
}

TEST(SpreadsheetStyles, TellDatesAndPercentages) {
  const auto looks = looks_of_styles(
      "<styleSheet><numFmts><numFmt numFmtId=\"164\" formatCode=\"dd/mm/yyyy\"/><numFmt "
      "numFmtId=\"165\" formatCode=\"0.00 &quot;day&quot;\"/></numFmts><cellXfs><xf "
      "numFmtId=\"0\"/><xf numFmtId=\"9\"/><xf numFmtId=\"164\"/><xf numFmtId=\"165\"/></cellXfs>"
      "</styleSheet>");

  EXPECT_EQ(looks,
            (std::vector<NumberLook>{
                NumberLook::plain, NumberLook::percent, NumberLook::date, NumberLook::plain}));
}

}  // namespace
}  // namespace keenfall::exchange
