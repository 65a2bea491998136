#include "mesh/machine/machine.h"
#include "mesh/piece/choice.h"

#include <gtest/gtest.h>

namespace bedbow {

TEST(Choice, WordsAndValuesGoBothWays) {
  for (const auto& c : nut_seats) {
    EXPECT_EQ(chosen(nut_seats, c.word), c.value);
    EXPECT_EQ(word_for(nut_seats, c.value), c.word);
  }
  EXPECT_EQ(words_of(bar_models), (std::vector<std::string>{"beam", "strip", "plate"}));
}

TEST(Choice, UnknownWordIsAnErrorThatNamesTheOthers) {
  try {
    (void)chosen(only_choices, "both");
    FAIL() << "no error";
  } catch (const std::invalid_argument& e) {
    EXPECT_STREQ(e.what(), "\"both\" is none of tension, compression");
  }
  EXPECT_THROW((void)word_for(only_choices, UnilateralType::both), std::out_of_range);
}

} // namespace bedbow
