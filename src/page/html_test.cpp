#include "page/html.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <stdexcept>
#include <string>

namespace keenfall::page {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

TEST(Html, EscapesWhateverIsPutIn) {
  Html html;

  html.element("p", "a < b && \"c\" > d", {{"title", "5\" & 'more' <b>"}});

  EXPECT_EQ(
      std::move(html).taken(),
      "<p title=\"5&quot; &amp; 'more' &lt;b&gt;\">a &lt; b &amp;&amp; &quot;c&quot; &gt; d</p>");
}

TEST(Html, ShowsWhatIsNoTextAsReplaced) {
  EXPECT_EQ(escaped(std::string("a\x01z\xFF") + "\xC3\xA4\xE2\x82"),
            "a\xEF\xBF\xBDz\xEF\xBF\xBD\xC3\xA4\xEF\xBF\xBD\xEF\xBF\xBD");
  EXPECT_EQ(escaped(""), "");
}

TEST(Html, LetsNoNameTurnWhatStandsBehindIt) {
  EXPECT_EQ(escaped("A\xE2\x80\xAEgnol\xE2\x81\xA9\xC2\x9B (6.2 to 4.1)"),
            "A\xEF\xBF\xBDgnol\xEF\xBF\xBD\xEF\xBF\xBD (6.2 to 4.1)");
  EXPECT_EQ(escaped("one\ttwo\nthree \xD7\x90\xC2\xA0"), "one\ttwo\nthree \xD7\x90\xC2\xA0");
}

TEST(Html, NestsAsItWasOpened) {
  Html html;

  html.open("ul").open("li").text("one").close().close().lone("meta", {{"charset", "utf-8"}});

  EXPECT_EQ(std::move(html).taken(), "<ul><li>one</li></ul><meta charset=\"utf-8\">");
}

TEST(Html, IsNotTakenWithAnElementOpenNorClosedBelowNone) {
  Html open;
  open.open("p");
  Html none;

  EXPECT_THROW(static_cast<void>(std::move(open).taken()), std::logic_error);
  EXPECT_THROW(none.close(), std::logic_error);
}

TEST(Html, KeepsPercentSignsWithTheirNumbers) {
  EXPECT_EQ(with_units_kept("95 % of 3 % and 4% %"), "95\xC2\xA0% of 3\xC2\xA0% and 4%\xC2\xA0%");
}

}  // namespace
}  // namespace keenfall::page
