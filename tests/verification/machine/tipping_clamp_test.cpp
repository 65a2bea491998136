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

constexpr const char* statics = "statics of a lever, worked in the test";
constexpr double length = 900, preload = 4000, left_post = 60, right_post = 840, thickness = 1.5; // mm, N

std::string bar(const std::string& of, const std::string& name, double size, double y, double z,
                const std::string& more = "") {
  return "[" + of + "]\nlength = \"900 mm\"\nmaterial = \"S275JR\"\n" + more + "[[" + of + ".bar]]\nname = \"" + name +
         "\"\nshape = \"rectangle\"\nwidth = " + mm(size) + "\nheight = " + mm(size) + "\nat = [" + mm(y) + ", " +
         mm(z) + "]\n";
}

/// Studs so long that they hold next to nothing sideways.
std::string post(double x) {
  return "[[post]]\njoins = [\"bed.beam\", \"clamp.spine\"]\nx = " + mm(x) +
         "\ny = \"11 mm\"\ndiameter = \"M16\"\nclass = \"8.8\"\nfree_length = \"3 m\"\npreload = \"4 kN\"\n";
}

/// Stout bars with all forces in the plane of the land's middle.
std::string folder(double sheet_centre, double sheet_width = 100) {
  return "[sheet]\nmaterial = \"DC01\"\nthickness = \"1.5 mm\"\nwidth = " + mm(sheet_width) +
         "\ncentre = " + mm(sheet_centre) +
         "\nflange = \"25 mm\"\ninside_radius = \"2 mm\"\nangle = \"90 deg\"\ngrip = \"7.5 mm\"\n" +
         bar("bed", "beam", 100, 11, -50) + bar("clamp", "spine", 60, 33.5, 31.5, "nose = { land = \"15 mm\" }\n") +
         post(left_post) + post(right_post) +
         "[[tie]]\njoins = [\"bed.beam\", \"clamp.spine\"]\nat = [\"450 mm\", \"11 mm\", \"-9.25 mm\"]\n"
         "holds = [\"x\", \"y\", \"rx\", \"rz\"]\n"
         "[[support]]\nname = \"left\"\nbar = \"bed.beam\"\nx = \"100 mm\"\nholds = [\"x\", \"y\", \"z\", \"rx\"]\n"
         "[[support]]\nname = \"right\"\nbar = \"bed.beam\"\nx = \"800 mm\"\nholds = [\"y\", \"z\", \"rx\"]\n"
         "[[dial]]\nname = \"nose\"\non = \"clamp.spine\"\nat = [\"900 mm\", \"11 mm\", \"1.5 mm\"]\n"
         "[[dial]]\nname = \"bed\"\non = \"bed.beam\"\nat = [\"900 mm\", \"11 mm\", \"0 mm\"]\n"
         "[solve]\nangles = [\"0 deg\"]\n";
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
  const Findings f = solved(folder(150));
  const StepResult& clamp = f.steps.front();
  ASSERT_FALSE(joints_of(clamp, JointKind::touch).empty());
  const double force = by_moments(200, length);
  record("", statics, "force at the clamp's far end", sum_of_touches(clamp), force, 1e-6, "N");
  EXPECT_NEAR(joints_of(clamp, JointKind::touch).back().at.x(), length * 1e-3, 1e-12);
  EXPECT_LT(joints_of(clamp, JointKind::touch).back().force.z(), 0) << "it presses the bed down";
  const double overlap = force / per_overlap;
  record("", statics, "thickness used up there", dial(f, "bed").z() - dial(f, "nose").z(), thickness + overlap, 1e-6,
         "mm");
  double pads = 0;
  for (const ForceArrow& a : clamp.fields.forces)
    if (a.kind == "pad") pads -= a.force.z();
  record("", statics, "sheet and far end against both posts", pads + sum_of_touches(clamp), 2 * preload, 1e-9, "N");
  bool said = false;
  for (const std::string& line : f.assumptions) said = said || line.find("beyond the sheet") != std::string::npos;
  EXPECT_TRUE(said) << "the faces' stiffness is an estimate, and that is to be stated";
}

// The same to the other side; and a sheet in the middle holds the clamp off the bed by itself.
TEST(TippingClamp, ToEitherSideAndNotAtAll) {
  const Findings left = solved(folder(150)), right = solved(folder(750));
  for (std::size_t i = 0; i < left.steps.size(); ++i)
    record("", "the same machine mirrored", left.steps[i].name + ": force at the end that meets the bed",
           sum_of_touches(right.steps[i]), sum_of_touches(left.steps[i]), 1e-9, "N");
  const Findings middle = solved(folder(450));
  for (const StepResult& s : middle.steps) EXPECT_TRUE(joints_of(s, JointKind::touch).empty()) << s.name;
}

// A shim takes up part of the thickness: the end meets the bed that much earlier.
TEST(TippingClamp, MeetsAShimEarlier) {
  const std::string shim = "[bed.crown]\nx = [\"600 mm\", \"700 mm\"]\nheight = [\"0 mm\", \"0.4 mm\"]\n";
  const std::string text = replaced(folder(150), "[clamp]\n", shim + "[clamp]\n");
  const Findings f = solved(text);
  const double force = by_moments(200, length);
  record("", statics, "force at the far end, on a shim", sum_of_touches(f.steps.front()), force, 1e-6, "N");
  record("", statics, "thickness left over a shim of 0.4 mm", dial(f, "bed").z() - dial(f, "nose").z(),
         thickness - 0.4 + force / per_overlap, 1e-6, "mm");
}

// Only where there is a finger can it meet the bed: the clamp tips until the edge of the last one does.
TEST(TippingClamp, OnItsFingers) {
  const std::string fingers = "[clamp.fingers]\nwidth = \"100 mm\"\ncount = 6\nstart = \"100 mm\"\n"
                              "reach = \"15 mm\"\nthickness = \"12 mm\"\n";
  const Findings f = solved(replaced(folder(150), "[[clamp.bar]]\n", fingers + "[[clamp.bar]]\n"));
  record("", statics, "force at the edge of the last finger", sum_of_touches(f.steps.front()), by_moments(200, 700),
         1e-6, "N");
  for (const JointResult& j : joints_of(f.steps.front(), JointKind::touch)) EXPECT_NEAR(j.at.x(), 0.7, 1e-12);
}

// One mesh for several sheets: beyond each of them the faces meet by its own thickness.
TEST(TippingClamp, OnAMeshForManySheets) {
  const Machine m = machine_of(folder(150));
  const std::vector<SheetPlace> places{{0.1, 0.15}, {0.1, 0.75}, {0.5, 0.45}, {0.06, 0.33}};
  const Registries registries = builtin_registries();
  PreparedMachine prepared(m, registries, places);
  for (const double t : {0.8e-3, 1.5e-3}) {
    const auto force = [&](const SheetPlace& place) {
      return sum_of_touches(prepared.solve(place, m.sheet->material, t).steps.front());
    };
    const std::string of = ", sheet of " + std::to_string(t * 1e3).substr(0, 3) + " mm";
    record("", statics, "many sheets: left one" + of, force(places[0]), by_moments(200, length), 1e-6, "N");
    record("", statics, "many sheets: right one" + of, force(places[1]), by_moments(700, 0), 1e-6, "N");
    EXPECT_EQ(force(places[2]), 0);
    record("", statics, "many sheets: narrow one" + of, force(places[3]), by_moments(360, length), 1e-6, "N");
  }
}

} // namespace bedbow::verification
