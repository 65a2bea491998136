// What the trade knows from experience: common practice, no source.
#include "tests/verification/record.h"
#include "tests/verification/whole_program.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

/// The hive-lid folder bending a narrow piece of 3 mm in its middle, posts at x [mm].
std::string thick_piece(const std::vector<double>& posts, double width) {
  std::string text = replaced(project_file("cases/hive-lid/case.toml"), "width = \"600 mm\"", "width = " + mm(width));
  text = replaced(text, "thickness = \"1.5 mm\"", "thickness = \"3 mm\"");
  const std::size_t from = text.find("[[post]]"), to = text.find("[[cam]]");
  std::string row;
  for (const double x : posts)
    row += "[[post]]\njoins = [\"bed.top\", \"clamp.plate\"]\nx = " + mm(x) +
           "\ny = \"70 mm\"\ndiameter = \"M20\"\nclass = \"8.8\"\nfree_length = \"120 mm\"\npreload = \"15 kN\"\n";
  return text.substr(0, from) + row + text.substr(to);
}

/// How far the bend falls short of what was set, where it does so most over the piece [deg]. Negative where the force
/// of the posts has closed the nose further than the bend opens it.
double shortfall(const StepResult& step) {
  const auto& d = step.bend_line.angle_deviation;
  return -*std::ranges::min_element(d) * 180 / std::numbers::pi;
}

// The piece stays in the middle and the posts move, 400 mm apart in both machines, so that nothing but their place
// differs: bed, clamp, apron, hinges and cams are the same.
TEST(TradeExperience, ThickSheetBendsTruerInLineWithAPost) {
  for (const double width : {60.0, 120.0, 200.0}) {
    const Findings in_line = solved(thick_piece({50, 450, 850}, width));
    const Findings midway = solved(thick_piece({250, 650}, width));
    for (std::size_t i = 1; i < in_line.steps.size(); ++i)
      record_less("", "common practice, no source",
                  in_line.steps[i].name + ": angle missing, " + std::to_string(int(width)) +
                      " mm of 3 mm sheet in line with a post, less than midway",
                  shortfall(in_line.steps[i]), shortfall(midway.steps[i]), "deg");
  }
}

} // namespace
} // namespace bedbow::verification
