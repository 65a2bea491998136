// Hinges along their pins, on an apron of one beam bar that is loaded in bending between two hinges off its centroid.
// Closed forms (beam theory). Bar of 60 x 20 x L = 800 mm, E = 205 GPa, F = 1 kN down at its middle, hinges at a =
// 30 mm and c = 10 mm from its centroid: the end sections turn by F L^2/(16 E I_y) each, which brings the pins nearer
// by s = 2 c F L^2/(16 E I_y) = 0.0976 mm; a thrust H spreads them by H (L/(E A) + c^2 L/(E I_y) + a^2 L/(E I_z)).
#include "io/case/case_reader.h"
#include "solver/analysis.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace hinge_float {
namespace {

constexpr double F = 1000, L = 0.8, b = 0.06, h = 0.02, E = 205e9, G = 79e9, a = 0.03, c = 0.01;
constexpr double EA = E * b * h, EIy = E * b * h * h * h / 12, EIz = E * h * b * b * b / 12;
constexpr double approach = 2 * c * F * L * L / (16 * EIy);
constexpr double spread = L / EA + c * c * L / EIy + a * a * L / EIz; // per thrust
constexpr double beam_bow = F * L * L * L / (48 * EIy) + F * L / (4 * 5.0 / 6 * G * b * h);

/// Deflection of the middle that a thrust leaves: its moment H c is the same all along the bar.
double bow_under(double thrust) {
  return beam_bow - thrust * c * L * L / (8 * EIy);
}

/// The apron on two hinges with these further keys, below a bed that is held at the hinges.
Case apron_on(const std::string& left, const std::string& right, int dimension = 3) {
  std::string text = R"(
title = "apron"
[material.m]
E = "205 GPa"
G = "79 GPa"
yield = "300 MPa"
[bed]
length = "800 mm"
material = "m"
[[bed.bar]]
name = "web"
shape = "rectangle"
model = "beam"
width = "60 mm"
height = "100 mm"
at = ["30 mm", "-50 mm"]
[apron]
length = "800 mm"
material = "m"
[[apron.bar]]
name = "face"
shape = "rectangle"
model = "beam"
width = "60 mm"
height = "20 mm"
at = ["-30 mm", "-10 mm"]
[[load]]
on = "apron.face"
at = ["400 mm", "-30 mm", "-10 mm"]
force = ["0 N", "0 N", "-1000 N"]
[[dial]]
name = "middle"
on = "apron.face"
at = ["400 mm", "-30 mm", "-10 mm"]
[solve]
element_size = "20 mm"
dimension = )" + std::to_string(dimension);
  for (const auto& [name, x, keys] : {std::tuple{"left", "0 mm", left}, std::tuple{"right", "800 mm", right}})
    text += std::string("\n[[hinge]]\nname = \"") + name +
            "\"\njoins = [\"bed.web\", \"apron.face\"]\npin = \"16 mm\"\nbearing_length = \"20 mm\"\nx = \"" + x +
            "\"\n" + keys + "\n[[handle]]\nbar = \"apron.face\"\nx = \"" + x +
            "\"\n[[support]]\nbar = \"bed.web\"\nx = \"" + x +
            "\"\nholds = [\"x\", \"y\", \"z\", \"rx\", \"ry\", \"rz\"]\n";
  return read_case_text(text, builtin_registries());
}

struct Solved {
  Findings findings;
  double bow = 0;
  std::array<double, 2> thrust{};
};

Solved solved(const Case& given) {
  Solved out{analyse(given.machine, builtin_registries())};
  EXPECT_EQ(out.findings.status, Status::ok) << out.findings.trouble;
  if (out.findings.steps.empty()) return out;
  const StepResult& s = out.findings.steps.front();
  out.bow = -s.dials.front().movement.z();
  const auto hinges = joints_of(s, JointKind::hinge);
  EXPECT_EQ(hinges.size(), 2U) << "stops are no hinges of their own";
  for (std::size_t i = 0; i < 2; ++i) {
    out.thrust[i] = hinges[i].figure("thrust");
    EXPECT_NEAR(out.thrust[i], std::abs(hinges[i].force.x()), 1e-9);
    EXPECT_NEAR(hinges[i].figure("across"), F / 2, 1e-3 * F);
    EXPECT_FALSE(hinges[i].open) << "the pin carries, whether or not a stop does";
  }
  EXPECT_LT(s.checks.equilibrium, 1e-9);
  return out;
}

bool assumed(const Findings& f, const std::string& words) {
  for (const std::string& line : f.assumptions)
    if (line.find(words) != std::string::npos) return true;
  return false;
}

constexpr const char* locked = "end_float = \"0 mm\"";

// Both hinges used to be rigid along x: between them the apron was an arch, its bow a third too small, and the thrust
// of 4.3 kN along a 16 mm pin appeared nowhere.
TEST(HingeEndFloat, OnlyTheFirstHingeLocatesTheApron) {
  const Solved s = solved(apron_on("", ""));
  EXPECT_NEAR(s.bow, beam_bow, 1e-4 * beam_bow);
  EXPECT_NEAR(s.thrust[0], 0, 1e-6 * F);
  EXPECT_NEAR(s.thrust[1], 0, 1e-6 * F);
  EXPECT_TRUE(assumed(s.findings, "hinge left, the first in the file, locates the apron along x; hinge right floats"));
}

TEST(HingeEndFloat, LockedHingesMakeAnArch) {
  const double thrust = approach / spread; // 4286 N
  const Solved s = solved(apron_on("", locked));
  EXPECT_NEAR(s.thrust[0], thrust, 1e-3 * thrust);
  EXPECT_NEAR(s.thrust[1], thrust, 1e-3 * thrust);
  EXPECT_NEAR(s.bow, bow_under(thrust), 1e-3 * beam_bow);
  EXPECT_LT(s.bow, 0.7 * beam_bow);
  EXPECT_TRUE(assumed(s.findings, "hinge left, hinge right lock the apron along x"));
}

// In the x-z plane nothing bends sideways: a plays no part.
TEST(HingeEndFloat, InThePlane) {
  EXPECT_NEAR(solved(apron_on("", "", 2)).bow, beam_bow, 1e-4 * beam_bow);
  const double thrust = approach / (L / EA + c * c * L / EIy);
  EXPECT_NEAR(solved(apron_on(locked, locked, 2)).thrust[1], thrust, 1e-3 * thrust);
}

// A play of 0.05 mm in all: 0.025 mm are taken up before the right hinge stops the apron that the left one locates.
TEST(HingeEndFloat, HalfThePlayEachWay) {
  const Solved s = solved(apron_on("", "end_float = \"0.05 mm\""));
  const double thrust = (approach - 0.025e-3) / spread;
  EXPECT_NEAR(s.thrust[1], thrust, 1e-3 * thrust);
  EXPECT_NEAR(s.bow, bow_under(thrust), 1e-3 * beam_bow);
  EXPECT_TRUE(assumed(s.findings, "hinge right has an end float of 0.05 mm along its pin, half each way"));
}

// With play in every hinge nothing locates the apron; it must not count as loose, and both halves are taken up.
TEST(HingeEndFloat, PlayEverywhereLeavesTheApronInItsMiddle) {
  const Solved s = solved(apron_on("end_float = \"0.05 mm\"", "end_float = \"0.05 mm\""));
  const double thrust = (approach - 0.05e-3) / spread;
  EXPECT_NEAR(s.thrust[0], thrust, 1e-3 * thrust);
  EXPECT_NEAR(s.thrust[1], thrust, 1e-3 * thrust);
  EXPECT_TRUE(assumed(s.findings, "no hinge locates the apron along x: it stands in the middle of its end float"));
  const Solved wide = solved(apron_on("end_float = \"2 mm\"", ""));
  EXPECT_NEAR(wide.bow, beam_bow, 1e-4 * beam_bow);
  EXPECT_LT(wide.thrust[0], 1);
}

// A push along x moves the apron through its play and then through the stops, however soft what centres it.
TEST(HingeEndFloat, APushAlongXReachesTheStop) {
  Case pushed = apron_on("end_float = \"0.4 mm\"", "");
  pushed.machine.loads.front().force = {300, 0, 0};
  const Findings f = analyse(pushed.machine, builtin_registries());
  ASSERT_EQ(f.status, Status::ok) << f.trouble;
  EXPECT_NEAR(joints_of(f.steps.front(), JointKind::hinge)[0].figure("thrust"), 300, 1e-6 * 300);
  EXPECT_NEAR(f.steps.front().dials.front().movement.x(), 0.2e-3, 0.01e-3); // and the bar's own give
}

TEST(HingeEndFloat, ATieMayHoldTheApronInstead) {
  Case tied = apron_on("end_float = \"2 mm\"", "");
  Tie t;
  t.name = "stop";
  t.joins = {Ref{Ref::Kind::bar, BodyKind::bed, 0}, Ref{Ref::Kind::bar, BodyKind::apron, 0}};
  t.at = {0.4, 0, 0};
  t.holds[ux] = true;
  tied.machine.ties.push_back(t);
  EXPECT_TRUE(assumed(analyse(tied.machine, builtin_registries()),
                      "no hinge locates the apron along x: tie stop does; hinge right floats along its pin"));
}

// Only the first hinge of the file locates anything: a second flap of the apron on hinges of its own needs a lock,
// which the message says.
TEST(HingeEndFloat, ASecondFlapHasToBeLocated) {
  Case two = apron_on("", "");
  Body& apron = two.machine.body(BodyKind::apron);
  Bar flap = apron.bars.front();
  flap.name = "flap";
  flap.at.y() -= 0.03;
  apron.bars.push_back(flap);
  const Ref ref{Ref::Kind::bar, BodyKind::apron, 1};
  for (std::size_t i = 0; i < 2; ++i) {
    two.machine.hinges.push_back(two.machine.hinges[i]);
    two.machine.hinges.back().joins[1] = ref;
    two.machine.handles.push_back(two.machine.handles[i]);
    two.machine.handles.back().joins[0] = ref;
  }
  const Findings f = analyse(two.machine, builtin_registries());
  EXPECT_EQ(f.status, Status::mechanism);
  EXPECT_NE(f.trouble.find("can slide along x"), std::string::npos) << f.trouble;
  EXPECT_NE(f.trouble.find("end_float = \"0 mm\" locks one"), std::string::npos) << f.trouble;
  two.machine.hinges[2].end_float = 0;
  EXPECT_EQ(analyse(two.machine, builtin_registries()).status, Status::ok);
}

} // namespace
} // namespace hinge_float
} // namespace bedbow
