#include "io/units/number.h"

#include <gtest/gtest.h>

namespace bedbow {
namespace {

TEST(LeadingNumber, Decimals) {
  EXPECT_DOUBLE_EQ(leading_number("2.5").value, 2.5);
  EXPECT_DOUBLE_EQ(leading_number("-1e-3 mm").value, -0.001);
  EXPECT_DOUBLE_EQ(leading_number("+.5").value, 0.5);
  EXPECT_DOUBLE_EQ(leading_number("  12. in").value, 12);
}

TEST(LeadingNumber, FractionsAndMixedNumbers) {
  EXPECT_DOUBLE_EQ(leading_number("5/8").value, 0.625);
  EXPECT_DOUBLE_EQ(leading_number("35 7/16").value, 35.4375);
  EXPECT_DOUBLE_EQ(leading_number("1-1/2").value, 1.5);
  EXPECT_DOUBLE_EQ(leading_number("-1-1/2").value, -1.5) << "the sign covers both parts";
  EXPECT_DOUBLE_EQ(leading_number("-2 1/4 in").value, -2.25);
}

TEST(LeadingNumber, RestHasNoLeadingSpaces) {
  EXPECT_EQ(leading_number("900   mm").rest, "mm");
  EXPECT_EQ(leading_number("35 7/16 in").rest, "in");
  EXPECT_EQ(leading_number("1-1/2in").rest, "in");
  EXPECT_EQ(leading_number("3e").rest, "e") << "an e without digits belongs to what follows";
  EXPECT_EQ(leading_number("12-gauge").rest, "-gauge");
  EXPECT_EQ(leading_number("7").rest, "");
}

TEST(LeadingNumber, RejectsInvalidNumbers) {
  EXPECT_EQ(leading_number("mm").trouble, "it does not begin with a number");
  EXPECT_EQ(leading_number("").trouble, "it does not begin with a number");
  EXPECT_EQ(leading_number("nan mm").trouble, "a number must be finite");
  EXPECT_EQ(leading_number("-inf mm").trouble, "a number must be finite");
  EXPECT_EQ(leading_number("1e999 m").trouble, "the number \"1e999\" is too large or too small");
  EXPECT_EQ(leading_number("1e-999 m").trouble, "the number \"1e-999\" is too large or too small");
  EXPECT_EQ(leading_number("5/0 in").trouble, "the fraction has a zero denominator");
  EXPECT_EQ(leading_number("1 9/8 in").trouble, "the fraction of a mixed number must be less than one");
  EXPECT_EQ(leading_number("1.5/8 in").trouble, "numerator and denominator must be whole numbers, as in \"5/8\"");
  EXPECT_EQ(leading_number("5/8/2 in").trouble, "numerator and denominator must be whole numbers, as in \"5/8\"");
  EXPECT_EQ(leading_number("1,5 mm").trouble, "decimals take a point, and thousands no separator");
}

} // namespace
} // namespace bedbow
