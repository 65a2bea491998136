#include "io/text/table.h"

#include <gtest/gtest.h>

namespace bedbow {

namespace {

TextTable posts() {
  TextTable t({{"post", Align::left}, {"force"}, {"remark", Align::left}});
  t.row({"left", {"7.00", Mark::good}, ""});
  t.row({"rückwärts", {"12.35", Mark::bad}, "worst"});
  return t;
}

TEST(TextTable, ColumnsStandStraight) {
  EXPECT_EQ(posts().render(Style(false), 1), " post       force  remark\n"
                                             " left        7.00\n"
                                             " rückwärts  12.35  worst\n");
  EXPECT_EQ(posts().width(), 24);
}

TEST(TextTable, ColourDoesNotMoveColumns) {
  std::string coloured = posts().render(Style(true), 1);
  for (const std::string code : {"\033[32m", "\033[1;31m", "\033[0m"})
    for (std::size_t at = 0; (at = coloured.find(code)) != std::string::npos;) coloured.erase(at, code.size());
  EXPECT_EQ(coloured, posts().render(Style(false), 1));
}

TEST(TextTable, RowsMustFit) {
  EXPECT_THROW(posts().row({"only one"}), std::logic_error);
}

} // namespace

} // namespace bedbow
