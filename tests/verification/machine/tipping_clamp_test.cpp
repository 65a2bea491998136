// A narrow sheet near one end of a machine that preloaded posts alone hold. The clamp tipped about the sheet, moved by
// metres, and the answer passed as good: nothing stopped the nose once the sheet's thickness was used up. Now nose and
// bed meet at the far end, where the force follows from moments.
#include "solver/study/prepared.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

constexpr const char* lever_statics = "statics of a lever, worked in the test";
constexpr double clamp_end = 900, preload = 4000, left_post = 60, right_post = 840, sheet_thickness = 1.5; // mm, N

std::string bar(const std::string& of, const std::string& name, double size, double y, double z,
                const std::string& more = "") {
  return "[" + of + R"(]
length = "900 mm"
material = "S275JR"
)" + more +
         "[[" + of + ".bar]]\nname = \"" + name + "\"\nshape = \"rectangle\"\nmodel = \"beam\"\nwidth = " + mm(size) +
         "\nheight = " + mm(size) + "\nat = [" + mm(y) + ", " + mm(z) + "]\n";
}

/// Studs so long that they hold next to nothing sideways, and that at the sheet.
std::string post_at(double x) {
  return "[[post]]\njoins = [\"bed.beam\", \"clamp.spine\"]\nat = [" + mm(x) +
         R"(, "11 mm", "0.75 mm"]
diameter = "M16"
class = "8.8"
free_length = "3 m"
preload = "4 kN"
)";
}

/// Stout bars with all forces in the plane of the land's middle.
std::string tipping_folder(double sheet_centre, double sheet_width = 100) {
  return R"([sheet]
material = "DC01"
thickness = "1.5 mm"
width = )" +
         mm(sheet_width) + "\ncentre = " + mm(sheet_centre) +
         R"(
flange = "25 mm"
inside_radius = "2 mm"
angle = "90 deg"
grip = "7.5 mm"
)" + bar("bed", "beam", 100, 11, -50) +
         bar("clamp", "spine", 60, 33.5, 31.5, "nose = { land = \"15 mm\" }\n") + post_at(left_post) +
         post_at(right_post) +
         R"([[tie]]
joins = ["bed.beam", "clamp.spine"]
at = ["450 mm", "11 mm", "-9.25 mm"]
holds = ["x", "y", "rx", "rz"]
[[support]]
name = "left"
bar = "bed.beam"
x = "100 mm"
holds = ["x", "y", "z", "rx"]
[[support]]
name = "right"
bar = "bed.beam"
x = "800 mm"
holds = ["y", "z", "rx"]
[[dial]]
name = "nose"
on = "clamp.spine"
at = ["900 mm", "11 mm", "1.5 mm"]
[[dial]]
name = "bed"
on = "bed.beam"
at = ["900 mm", "11 mm", "0 mm"]
[solve]
angles = ["0 deg"]
)";
}

/// The last spot stands for 15 mm, since the one before it stands at 870; both faces are of one steel of 210 GPa, 2 E
/// per length each [N/mm].
constexpr double per_overlap = 210000 * 15;

double sum_of_touches(const StepResult& step) {
  double sum = 0;
  for (const JointResult& j : joints_of(step, JointKind::touch)) sum += j.value;
  return sum;
}

/// Force of the touching end: moments about the end of the sheet on that side, on which all of the rest stands.
double by_moments(double sheet_end, double touching_end) {
  const auto arm = [&](double x) { return std::abs(x - sheet_end); };
  const double far = touching_end > sheet_end ? right_post : left_post;
  const double near = touching_end > sheet_end ? left_post : right_post;
  return preload * (arm(far) - arm(near)) / arm(touching_end);
}

} // namespace

TEST(TippingClamp, NoseAndBedMeetBeyondTheSheet) {
  const Findings f = solved(tipping_folder(150));
  const StepResult& clamp = f.steps.front();
  ASSERT_FALSE(joints_of(clamp, JointKind::touch).empty());
  const double force = by_moments(200, clamp_end);
  record("", lever_statics, "force at the clamp's far end", sum_of_touches(clamp), force, 1e-6, "N");
  EXPECT_NEAR(joints_of(clamp, JointKind::touch).back().at.x(), clamp_end * 1e-3, 1e-12);
  EXPECT_LT(joints_of(clamp, JointKind::touch).back().force.z(), 0) << "it presses the bed down";
  const double overlap = force / per_overlap;
  record("", lever_statics, "thickness used up there", dial(f, "bed").z() - dial(f, "nose").z(),
         sheet_thickness + overlap, 1e-6, "mm");
  double pads = 0;
  for (const ForceArrow& a : clamp.fields.forces)
    if (a.kind == "pad") pads -= a.force.z();
  record("", lever_statics, "sheet and far end against both posts", pads + sum_of_touches(clamp), 2 * preload, 1e-9,
         "N");
  bool said = false;
  for (const std::string& line : f.assumptions) said = said || line.find("beyond the sheet") != std::string::npos;
  EXPECT_TRUE(said) << "the faces' stiffness is an estimate, and that is to be stated";
}

// The same to the other side; and a sheet in the middle holds the clamp off the bed by itself.
TEST(TippingClamp, ToEitherSideAndNotAtAll) {
  const Findings left = solved(tipping_folder(150)), right = solved(tipping_folder(750));
  for (std::size_t i = 0; i < left.steps.size(); ++i)
    record("", "the same machine mirrored", left.steps[i].name + ": force at the end that meets the bed",
           sum_of_touches(right.steps[i]), sum_of_touches(left.steps[i]), 1e-9, "N");
  const Findings middle = solved(tipping_folder(450));
  for (const StepResult& s : middle.steps) EXPECT_TRUE(joints_of(s, JointKind::touch).empty()) << s.name;
}

// A shim takes up part of the thickness: the end meets the bed that much earlier.
TEST(TippingClamp, MeetsAShimEarlier) {
  const std::string shim = R"([bed.crown]
x = ["600 mm", "700 mm"]
height = ["0 mm", "0.4 mm"]
)";
  const std::string text = replaced(tipping_folder(150), "[clamp]\n", shim + "[clamp]\n");
  const Findings f = solved(text);
  const double force = by_moments(200, clamp_end);
  record("", lever_statics, "force at the far end, on a shim", sum_of_touches(f.steps.front()), force, 1e-6, "N");
  record("", lever_statics, "thickness left over a shim of 0.4 mm", dial(f, "bed").z() - dial(f, "nose").z(),
         sheet_thickness - 0.4 + force / per_overlap, 1e-6, "mm");
}

// Only where there is a finger can it meet the bed: the clamp tips until the edge of the last one does.
TEST(TippingClamp, OnItsFingers) {
  const std::string fingers = R"([clamp.fingers]
width = "100 mm"
count = 6
start = "100 mm"
reach = "15 mm"
thickness = "12 mm"
)";
  const Findings f = solved(replaced(tipping_folder(150), "[[clamp.bar]]\n", fingers + "[[clamp.bar]]\n"));
  record("", lever_statics, "force at the edge of the last finger", sum_of_touches(f.steps.front()),
         by_moments(200, 700), 1e-6, "N");
  for (const JointResult& j : joints_of(f.steps.front(), JointKind::touch)) EXPECT_NEAR(j.at.x(), 0.7, 1e-12);
}

// One mesh for several sheets: beyond each of them the faces meet by its own thickness.
TEST(TippingClamp, OnAMeshForManySheets) {
  const Machine m = machine_of(tipping_folder(150));
  const std::vector<SheetPlace> places{{0.1, 0.15}, {0.1, 0.75}, {0.5, 0.45}, {0.06, 0.33}};
  const Registries registries = builtin_registries();
  PreparedMachine prepared(m, registries, places);
  for (const double t : {0.8e-3, 1.5e-3}) {
    const auto force = [&](const SheetPlace& place) {
      return sum_of_touches(prepared.solve(place, m.sheet->material, t).steps.front());
    };
    const std::string of = ", sheet of " + std::to_string(t * 1e3).substr(0, 3) + " mm";
    record("", lever_statics, "many sheets: left one" + of, force(places[0]), by_moments(200, clamp_end), 1e-6, "N");
    record("", lever_statics, "many sheets: right one" + of, force(places[1]), by_moments(700, 0), 1e-6, "N");
    EXPECT_EQ(force(places[2]), 0);
    record("", lever_statics, "many sheets: narrow one" + of, force(places[3]), by_moments(360, clamp_end), 1e-6, "N");
  }
}

} // namespace bedbow::verification
