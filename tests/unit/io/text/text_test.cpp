#include "io/text/text.h"

#include <gtest/gtest.h>

namespace bedbow {

TEST(Text, WidthCountsWhatATerminalShows) {
  EXPECT_EQ(display_width("bow"), 3);
  EXPECT_EQ(display_width("Abkantbank für Bleche"), 21);
  EXPECT_EQ(display_width("e\xCC\x81"), 1) << "e with a combining accent";
  EXPECT_EQ(display_width("折曲"), 4);
  EXPECT_EQ(display_width("\xFF\xFE"), 2) << "bytes that are no UTF-8";
}

TEST(Text, PrintableKeepsLettersAndStopsControls) {
  EXPECT_EQ(printable("Bienenhaus-Deckel, ½ in"), "Bienenhaus-Deckel, ½ in");
  EXPECT_EQ(printable("a\033[31mred\n\tb\x7F"), "a?[31mred??b?");
  EXPECT_EQ(printable("\xC2\x9B"
                      "31m"),
            "?31m")
      << "the one-byte escape of C1";
  EXPECT_EQ(printable("x\xE2\x80\xAEy"), "x?y") << "right-to-left override";
  EXPECT_EQ(printable("\xC0\xAF"), "??") << "overlong slash";
  EXPECT_EQ(printable("\xED\xA0\x80"), "???") << "half of a surrogate pair";
  EXPECT_EQ(printable("\xE2\x82"), "??") << "cut off";
}

TEST(Text, PadsByDisplayWidth) {
  EXPECT_EQ(pad("ü", 3), "ü  ");
  EXPECT_EQ(pad("ü", 3, true), "  ü");
  EXPECT_EQ(pad("long", 2), "long");
}

TEST(Text, WrapsAtSpaces) {
  EXPECT_EQ(wrap("one two  three", 7), (std::vector<std::string>{"one two", "three"}));
  EXPECT_EQ(wrap("unbreakable a", 4), (std::vector<std::string>{"unbreakable", "a"}));
  EXPECT_TRUE(wrap("  ", 4).empty());
}

TEST(Text, ListItemsHang) {
  EXPECT_EQ(list_item("one two three", 9), "- one two\n  three\n");
}

} // namespace bedbow
