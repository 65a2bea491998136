#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

using test::expect_error;
using test::folder;

constexpr Ref bed_square{Ref::Kind::bar, BodyKind::bed, 0}, clamp_flat{Ref::Kind::bar, BodyKind::clamp, 0},
    apron_flat{Ref::Kind::bar, BodyKind::apron, 0};
constexpr double pound_force_N = 0.45359237 * 9.80665;
constexpr double one_degree = std::numbers::pi / 180;

TEST(CaseJoints, PostWithEveryKey) {
  const Machine m = test::machine(folder(R"([[post]]
name = "left"
joins = ["bed.square", "clamp.flat"]
x = "50 mm"
y = "28 mm"
diameter = "M16"
class = "8.8"
free_length = "5 in"
preload = "1000 lbf"
seat = "spherical"
washer_diameter = "30 mm"
washer_thickness = "3 mm"
engagement = "13 mm"
tapped = "25 mm"
allowed_seat = "200 MPa"
allowed_thread = "40 kN"
allowed_stress = "600 MPa"
)"));
  ASSERT_EQ(m.posts.size(), 1U);
  const Post& p = m.posts[0];
  EXPECT_EQ(p.name, "left");
  EXPECT_EQ(p.joins[0], bed_square);
  EXPECT_EQ(p.joins[1], clamp_flat);
  EXPECT_DOUBLE_EQ(p.at.x(), 0.05);
  EXPECT_DOUBLE_EQ(p.at.y(), 0.028);
  EXPECT_TRUE(std::isnan(p.at.z()));
  EXPECT_DOUBLE_EQ(p.diameter, 0.016);
  EXPECT_EQ(p.thread, "M16");
  EXPECT_EQ(p.grade, "8.8");
  EXPECT_DOUBLE_EQ(p.free_length, 0.127);
  EXPECT_NEAR(p.preload.value(), 1000 * pound_force_N, 1e-9);
  EXPECT_EQ(p.nut, NutSeat::spherical);
  EXPECT_DOUBLE_EQ(p.washer_diameter, 0.03);
  EXPECT_DOUBLE_EQ(p.washer_thickness, 0.003);
  EXPECT_DOUBLE_EQ(p.engagement, 0.013);
  EXPECT_DOUBLE_EQ(p.tapped, 0.025);
  EXPECT_DOUBLE_EQ(p.allowed_seat.value(), 200e6);
  EXPECT_DOUBLE_EQ(p.allowed_thread.value(), 40e3);
  EXPECT_DOUBLE_EQ(p.allowed_stress.value(), 600e6);
}

TEST(CaseJoints, PostDefaults) {
  const Post p = test::machine(folder(R"([[post]]
joins = ["bed.square", "clamp.flat"]
x = "50 mm"
diameter = "16 mm"
free_length = "130 mm"
)"))
                     .posts.at(0);
  EXPECT_TRUE(p.name.empty());
  EXPECT_TRUE(p.thread.empty());
  EXPECT_TRUE(p.grade.empty());
  EXPECT_FALSE(p.preload || p.allowed_seat || p.allowed_stress || p.allowed_thread);
  EXPECT_EQ(p.nut, NutSeat::washer);
  for (const double v : {p.at.y(), p.washer_diameter, p.washer_thickness, p.engagement, p.tapped})
    EXPECT_TRUE(std::isnan(v));
}

TEST(CaseJoints, CamByThrowAndAngle) {
  const Cam c = test::machine(folder(R"([[cam]]
name = "tail"
joins = ["bed.square", "clamp.flat"]
at = ["50 mm", "52 mm", "0 mm"]
throw = "3 mm"
angle = "90 deg"
radius = "15 mm"
width = "16 mm"
stiffness = "500 kN/mm"
linked = true
lag = "2 deg"
touch = "30 deg"
captive = true
material = "bolt steel 8.8"
friction = 0.12
shaft = "12 mm"
lever = "250 mm"
allowed_pressure = "600 MPa"
)"))
                    .cams.at(0);
  EXPECT_EQ(c.name, "tail");
  EXPECT_DOUBLE_EQ(c.at.y(), 0.052);
  EXPECT_DOUBLE_EQ(c.throw_.value(), 0.003);
  EXPECT_DOUBLE_EQ(c.angle.value(), 90 * one_degree);
  // An eccentric of 1.5 mm, turned from where it touches at 30 deg to 88 deg: it trails by its lag.
  EXPECT_NEAR(c.lift, 0.0015 * (std::cos(30 * one_degree) - std::cos(88 * one_degree)), 1e-15);
  EXPECT_DOUBLE_EQ(c.radius, 0.015);
  EXPECT_DOUBLE_EQ(c.width, 0.016);
  EXPECT_DOUBLE_EQ(c.stiffness.value(), 500e6);
  EXPECT_TRUE(c.linked);
  EXPECT_TRUE(c.captive);
  EXPECT_NEAR(c.lag, 2 * one_degree, 1e-15);
  EXPECT_NEAR(c.touch, 30 * one_degree, 1e-15);
  EXPECT_GE(c.material, 0);
  EXPECT_DOUBLE_EQ(c.friction, 0.12);
  EXPECT_DOUBLE_EQ(c.shaft, 0.012);
  EXPECT_DOUBLE_EQ(c.lever, 0.25);
  EXPECT_DOUBLE_EQ(c.allowed_pressure.value(), 600e6);
}

TEST(CaseJoints, CamByLift) {
  const Cam c = test::machine(folder(R"([[cam]]
joins = ["bed.square", "clamp.flat"]
x = "50 mm"
lift = "0.1 mm"
)"))
                    .cams.at(0);
  EXPECT_DOUBLE_EQ(c.lift, 1e-4);
  EXPECT_FALSE(c.throw_ || c.angle || c.stiffness || c.allowed_pressure);
  EXPECT_FALSE(c.linked || c.captive);
  EXPECT_EQ(c.material, -1);
  EXPECT_DOUBLE_EQ(c.friction, 0.15);
}

TEST(CaseJoints, HingeAndHandle) {
  const Machine m = test::machine(folder(R"([[hinge]]
name = "left"
joins = ["bed.square", "apron.flat"]
x = "0 mm"
pin = "1/2 in"
bearing_length = "30 mm"
gap = "1 mm"
both_sides = true
pin_material = "bolt steel 8.8"
allowed_pressure = "10 MPa"
allowed_stress = "300 MPa"
[[hinge]]
joins = ["bed.square", "apron.flat"]
x = "700 mm"
[[handle]]
name = "grip"
bar = "apron.flat"
x = "350 mm"
reach = "400 mm"
)"));
  ASSERT_EQ(m.hinges.size(), 2U);
  const Hinge& h = m.hinges[0];
  EXPECT_EQ(h.joins[1], apron_flat);
  EXPECT_DOUBLE_EQ(h.pin, 0.0127);
  EXPECT_DOUBLE_EQ(h.bearing_length, 0.03);
  EXPECT_DOUBLE_EQ(h.gap, 0.001);
  EXPECT_TRUE(h.both_sides);
  EXPECT_EQ(m.materials.at(h.pin_material).name, "bolt steel 8.8");
  EXPECT_DOUBLE_EQ(h.allowed_pressure.value(), 10e6);
  EXPECT_DOUBLE_EQ(h.allowed_stress.value(), 300e6);
  const Hinge& plain = m.hinges[1];
  EXPECT_TRUE(std::isnan(plain.pin) && std::isnan(plain.bearing_length));
  EXPECT_EQ(plain.gap, 0);
  EXPECT_FALSE(plain.both_sides || plain.allowed_pressure || plain.allowed_stress);
  EXPECT_EQ(plain.pin_material, -1);
  ASSERT_EQ(m.handles.size(), 1U);
  EXPECT_EQ(m.handles[0].name, "grip");
  EXPECT_EQ(m.handles[0].joins[0].index, 0);
  EXPECT_DOUBLE_EQ(m.handles[0].at.x(), 0.35);
  EXPECT_DOUBLE_EQ(m.handles[0].reach, 0.4);
}

TEST(CaseJoints, TieSupportAndWeld) {
  const Machine m = test::machine(folder(R"([[tie]]
name = "stay"
joins = ["bed.square", "clamp.flat"]
at = ["50 mm", "28 mm", "0 mm"]
holds = ["x", "rz"]
stiffness = "20 kN/mm"
rotational_stiffness = "5 kN*m/rad"
only = "compression"
[[support]]
name = "third"
bar = "bed.square"
x = "350 mm"
y = "10 mm"
holds = ["rx"]
stiffness = "100 N*m/deg"
[[weld]]
name = "seam"
joins = ["bed.square", "clamp.flat"]
from = "100 mm"
to = "20 in"
)"));
  const Tie& t = m.ties.at(0);
  EXPECT_EQ(t.holds, (DofMask{true, false, false, false, false, true}));
  EXPECT_DOUBLE_EQ(t.stiffness.value(), 20e6);
  EXPECT_DOUBLE_EQ(t.rotational_stiffness.value(), 5000);
  EXPECT_EQ(t.only, UnilateralType::compression);
  const Support& s = m.supports.at(2);
  EXPECT_EQ(s.joins[0], bed_square);
  EXPECT_DOUBLE_EQ(s.at.y(), 0.01);
  EXPECT_FALSE(s.stiffness) << "its unit makes it a rotational stiffness";
  EXPECT_NEAR(s.rotational_stiffness.value(), 100 / one_degree, 1e-9);
  EXPECT_EQ(m.supports[0].name, "left foot");
  EXPECT_FALSE(m.supports[0].stiffness || m.supports[0].rotational_stiffness) << "rigid";
  const Weld& w = m.welds.at(0);
  EXPECT_EQ(w.name, "seam");
  EXPECT_DOUBLE_EQ(w.from, 0.1);
  EXPECT_DOUBLE_EQ(w.to, 0.508);
}

TEST(CaseJoints, WrongValues) {
  const std::string post = R"([[post]]
name = "p"
joins = ["bed.square", "clamp.flat"]
x = "50 mm"
)";
  expect_error(folder(), post + "diameter = \"M17\"\n", 5, "post.p.diameter",
               {"\"M17\" is not a valid thread size", "M16"});
  expect_error(folder(), post + "diameter = \"M16\"\nclass = \"8.9\"\n", 6, "post.p.class",
               {"unknown property class \"8.9\"", "8.8"});
  expect_error(folder(), post + "diameter = \"M16\"\npreload = \"500 kg\"\n", 6, "post.p.preload",
               {"is a mass", "expected a force"});
  expect_error(folder(), post + "seat = \"flat\"\n", 5, "post.p.seat", {"is not one of washer, plain, spherical"});
  expect_error(folder(), post + "at = [\"1 mm\", \"2 mm\", \"3 mm\"]\n", 4, "post.p.x", {"not by both"});
  const std::string cam = R"([[cam]]
name = "c"
joins = ["bed.square", "clamp.flat"]
x = "50 mm"
)";
  expect_error(folder(), cam, 1, "cam.c.lift", {"missing key \"lift\"", "`throw` and `angle`"});
  expect_error(folder(), cam + "lift = \"1 mm\"\nthrow = \"3 mm\"\n", 5, "cam.c.lift", {"give either `lift`"});
  expect_error(folder(), cam + "throw = \"3 mm\"\n", 1, "cam.c.angle", {"both `throw` and `angle`"});
  expect_error(folder(), cam + "lift = \"1 mm\"\ntouch = \"5 deg\"\n", 6, "cam.c.touch", {"it needs `throw`"});
  const std::string tie = R"([[tie]]
name = "t"
joins = ["bed.square", "clamp.flat"]
x = "50 mm"
)";
  expect_error(folder(), tie + "holds = [\"x\", \"w\"]\n", 5, "tie.t.holds",
               {"\"w\" is not one of x, y, z, rx, ry, rz"});
  expect_error(folder(), tie + "holds = [\"x\"]\nstiffness = \"5 N*m/rad\"\n", 6, "tie.t.stiffness",
               {"no rotation is held"});
  expect_error(folder(), tie + "holds = [\"rx\"]\nstiffness = \"5 N/mm\"\n", 6, "tie.t.stiffness",
               {"only rotations are held"});
  expect_error(folder(), R"([[handle]]
name = "h"
bar = "apron.rib"
x = "1 mm"
)",
               3, "handle.h.bar", {"the apron has no bar \"rib\"", "nearest is \"flat\""});
}

// The check of seats takes the place of a joint from where the bars meet, as the mesher does: here at their common
// edge, where neither has an arm, so that the seat is one of both. In the middle between the two centroids the lip
// would be 15 mm away, and the seat its own alone.
TEST(CaseJoints, SeatsAreCheckedWhereTheBarsMeet) {
  const std::string lip = R"([[bed.bar]]
name = "lip"
shape = "rectangle"
width = "10 mm"
height = "10 mm"
at = ["65 mm", "-5 mm"]
[[tie]]
name = "t"
joins = ["bed.square", "bed.lip"]
x = "350 mm"
holds = ["z"]
seat = ["50 mm", "65 mm"]
)";
  expect_error(folder(), lip, 7, "tie.t", {"`seat` of 50 mm x 65 mm", "larger than bed.square", "60 mm wide"});
}

} // namespace
} // namespace bedbow
