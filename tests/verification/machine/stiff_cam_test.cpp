// A machine that is its own mirror image, under a sheet left or right of its middle. Its rigid cams, one of which comes
// clear, leave the clamp to rock on a post and the other cam by nanometres.
#include "tests/support/sample_machines.h"
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <utility>

namespace bedbow::verification {
namespace {

std::string machine_with_cams(const std::string& centre) {
  const auto pair = [](const char* table, const char* joins, const char* left, const char* right, const char* rest) {
    std::string out;
    for (const auto& [name, x] : {std::pair{"left", left}, std::pair{"right", right}})
      out += std::string("[[") + table + "]]\nname = \"" + name + "\"\njoins = [" + joins + "]\nx = \"" + x + "\"\n" +
             rest;
    return out;
  };
  const std::string machine = replaced(test::folder(), "width = \"400 mm\"\ncentre = \"350 mm\"",
                                       "width = \"175 mm\"\ncentre = \"" + centre + "\"");
  return replaced(machine, "{ land", "{ setback = \"2.5 mm\", land") +
         pair("post", R"("bed.square", "clamp.flat")", "50 mm", "650 mm",
              R"(y = "28 mm"
diameter = "M16"
free_length = "130 mm"
preload = "5 kN"
)") + pair("cam", R"("bed.square", "clamp.flat")", "50 mm", "650 mm", "y = \"52 mm\"\nlift = \"0.1 mm\"\n") +
         pair("hinge", R"("bed.square", "apron.flat")", "0 mm", "700 mm",
              "pin = \"12 mm\"\nbearing_length = \"30 mm\"\n") +
         R"([[handle]]
name = "grip"
bar = "apron.flat"
x = "350 mm"
)";
}

TEST(StiffCam, SheetLeftOrRightOfTheMiddle) {
  const Findings left = solved(machine_with_cams("194.4 mm"));
  const Findings right = solved(machine_with_cams("505.6 mm"));
  ASSERT_EQ(left.steps.size(), right.steps.size());
  const std::string source = "the same machine mirrored";
  for (std::size_t i = 0; i < left.steps.size(); ++i) {
    const auto& a = left.steps[i];
    const auto& b = right.steps[i];
    const std::string step = ", step " + std::to_string(i);
    record("", source, "force in the near post" + step, joint(joints_of(b, JointKind::post), "right").value,
           joint(joints_of(a, JointKind::post), "left").value, 1e-6, "N");
    record("", source, "force of the far cam" + step, joint(joints_of(b, JointKind::cam), "left").value,
           joint(joints_of(a, JointKind::cam), "right").value, 1e-6, "N");
  }
}

} // namespace
} // namespace bedbow::verification
