#include "exchange/mistyped_number.h"

#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

TEST(MistypedNumber, IsANumberInWordsWhereEveryWordIsOfANumber) {
  for (const char* const text :
       {"ten", "Zero", "twenty-five", "twentyfive", "one hundred and four", "a dozen"}) {
    EXPECT_TRUE(is_number_in_words(text)) << text;
  }
}

TEST(MistypedNumber, IsNoNumberWhereAnotherWordStandsBesideIt) {
  for (const char* const text : {"", "one nick", "stopped", "tension", "a", "point", "and"}) {
    EXPECT_FALSE(is_number_in_words(text)) << text;
  }
}

TEST(MistypedNumber, LooksLikeDigitsWhereThereAreOnlyLettersMistakenForThem) {
  for (const char* const text : {"O", "lO", "IS", "|l", "O0", "l80", "1O.5"}) {
    EXPECT_TRUE(looks_like_digits(text)) << text;
  }
  for (const char* const text : {"", "slip", "Ok", "O k", "80", "1.5", "8 mm"}) {
    EXPECT_FALSE(looks_like_digits(text)) << text;
  }
}

}  // namespace
}  // namespace keenfall::exchange
