// A machine that is its own mirror image, under a sheet left or right of its middle. Its rigid cams, one of which comes
// clear, leave the clamp to rock on a post and the other cam by nanometres.
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

namespace bedbow::verification {
namespace {

std::string folder(const std::string& centre) {
  const auto bar = [](const char* of, const char* name, const char* size, const char* at) {
    return std::string("[") + of + "]\nlength = \"700 mm\"\nmaterial = \"S235JR\"\n[[" + of + ".bar]]\nname = \"" +
           name + "\"\nshape = \"rectangle\"\nwidth = \"" + size + "\"\nheight = \"" + size + "\"\nat = " + at + "\n";
  };
  const auto pair = [](const char* table, const char* joins, const char* left, const char* right, const char* rest) {
    std::string out;
    for (const auto& [name, x] : {std::pair{"left", left}, std::pair{"right", right}})
      out += std::string("[[") + table + "]]\nname = \"" + name + "\"\njoins = [" + joins + "]\nx = \"" + x + "\"\n" +
             rest;
    return out;
  };
  return "[sheet]\nmaterial = \"DC01\"\nthickness = \"1 mm\"\nwidth = \"175 mm\"\ncentre = \"" + centre +
         "\"\nflange = \"20 mm\"\ninside_radius = \"1.5 mm\"\nangle = \"90 deg\"\ngrip = \"15 mm\"\n" +
         bar("bed", "square", "60 mm", "[\"30 mm\", \"-30 mm\"]") +
         bar("clamp", "flat", "60 mm", "[\"32.5 mm\", \"31 mm\"]") +
         "[clamp.nose]\nbar = \"flat\"\nsetback = \"2.5 mm\"\nland = \"15 mm\"\n" +
         bar("apron", "flat", "50 mm", "[\"-26 mm\", \"-25 mm\"]") +
         pair("post", R"("bed.square", "clamp.flat")", "50 mm", "650 mm",
              "y = \"28 mm\"\ndiameter = \"M16\"\nfree_length = \"130 mm\"\npreload = \"5 kN\"\n") +
         pair("cam", R"("bed.square", "clamp.flat")", "50 mm", "650 mm", "y = \"52 mm\"\nlift = \"0.1 mm\"\n") +
         pair("hinge", R"("bed.square", "apron.flat")", "0 mm", "700 mm",
              "pin = \"12 mm\"\nbearing_length = \"30 mm\"\n") +
         "[[handle]]\nname = \"grip\"\nbar = \"apron.flat\"\nx = \"350 mm\"\n"
         "[[support]]\nname = \"left foot\"\nbar = \"bed.square\"\nx = \"100 mm\"\nholds = [\"x\", \"y\", \"z\", "
         "\"rx\"]\n"
         "[[support]]\nname = \"right foot\"\nbar = \"bed.square\"\nx = \"600 mm\"\nholds = [\"y\", \"z\", \"rx\"]\n";
}

TEST(StiffCam, SheetLeftOrRightOfTheMiddle) {
  const Findings left = solved(folder("194.4 mm"));
  const Findings right = solved(folder("505.6 mm"));
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
