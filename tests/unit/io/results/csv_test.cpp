#include "io/results/csv.h"

#include "tests/unit/support/findings_fixture.h"
#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

namespace bedbow {

namespace {

std::vector<std::string> lines(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> out;
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}

TEST(Csv, FieldsAreQuotedWhereTheyMust) {
  EXPECT_EQ(csv_row({"a", "b,c", "say \"x\"", "two\nlines"}), "a,\"b,c\",\"say \"\"x\"\"\",\"two\nlines\"\n");
  EXPECT_EQ(csv_number(0.1 + 0.2), "0.3");
  EXPECT_EQ(csv_number(std::nan("")), "");
}

TEST(Csv, BendLineHasOneRowPerStepAndStation) {
  const auto rows = lines(bend_line_csv(test::findings()));
  ASSERT_EQ(rows.size(), 1U + 2 * 3);
  EXPECT_EQ(rows[0], "step,angle_deg,x_mm,nose_y_mm,nose_z_mm,bed_z_mm,apron_n_mm,angle_deviation_deg,clamp_N_per_mm,"
                     "lifted,clamp_reserve_N_per_mm,nose_opening_mm");
  EXPECT_EQ(rows[1], "clamp,0,150,0.001,0.01,-0.01,,,8,0,8,0") << "no apron figures while clamping";
  EXPECT_EQ(rows[5], "bend 90 deg,90,450,0.002,0.04,-0.02,-0.3,0.85,19,1,0,0.1");
}

TEST(Csv, NoBendLineLeavesTheHead) {
  EXPECT_EQ(lines(bend_line_csv(test::frame_findings())).size(), 1U);
}

} // namespace

} // namespace bedbow
