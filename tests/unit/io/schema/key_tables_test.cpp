#include "io/schema/key_tables.h"

#include <gtest/gtest.h>

#include <sstream>

namespace bedbow {
namespace {

TEST(KeyTables, EveryKeyHasItsRow) {
  const std::string text = key_tables(case_schema());
  for (const TableSpec& t : case_schema().tables)
    for (const KeySpec& k : t.keys) {
      EXPECT_NE(text.find("| `" + k.key + "` | "), std::string::npos) << t.id << "." << k.key;
      EXPECT_FALSE(k.doc.empty()) << t.id << "." << k.key << " has no meaning";
    }
}

TEST(KeyTables, RowsHaveFourCells) {
  std::istringstream lines(key_tables(case_schema()));
  for (std::string line; std::getline(lines, line);) {
    if (!line.starts_with('|')) continue;
    int bars = 0;
    for (std::size_t i = 0; i < line.size(); ++i) bars += line[i] == '|' && (i == 0 || line[i - 1] != '\\') ? 1 : 0;
    EXPECT_EQ(bars, 5) << line;
  }
}

TEST(KeyTables, TellWhatAValueIs) {
  Schema s;
  s.tables.push_back({"case",
                      "",
                      "All.",
                      {quantity_key("width", Dim::length, "16 mm", "along y").positive().required(),
                       number_key("nu", "a|b").like("0.3").between(-0.99, 0.5),
                       choice_key("model", {"beam", "plate"}, "how").otherwise("beam"),
                       quantity_key("at", Dim::length, "8 mm", "a place").list(2, 2)}});
  EXPECT_EQ(key_tables(s), "### At the top of the file\n\nAll.\n\n| key | value | | meaning |\n|---|---|---|---|\n"
                           "| `width` | length, greater than 0: `\"16 mm\"` | required | along y |\n"
                           "| `nu` | number, -0.99 to 0.5: `0.3` |  | a\\|b |\n"
                           "| `model` | one of `beam` `plate` | default: beam | how |\n"
                           "| `at` | list of 2, length: `\"8 mm\"` |  | a place |\n");
}

} // namespace
} // namespace bedbow
