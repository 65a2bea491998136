// Whole joints against values worked by hand (formulas: EN 1993-1-8, Johnson 1985 ch. 4, slope-deflection equations).
#include "io/case/case_reader.h"
#include "mesh/build/mesher.h"
#include "solver/analysis.h"
#include "solver/findings/joint_checks.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

constexpr double MPa = 1e6, millimetre = 1e-3;

struct Built {
  Case c;
  Mesh mesh;
};

Built hive() {
  const Registries r = builtin_registries();
  Case c = read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", r);
  Mesh mesh = make_mesh(c.machine, r.shapes);
  return {std::move(c), std::move(mesh)};
}

Check find(const JointChecks& all, const std::string& what) {
  for (const Check& c : all.checks)
    if (c.what == what) return c;
  throw std::runtime_error("no check " + what);
}

// EN 10025-2: S275JR yields at 265 MPa above 16 mm; the hive-lid bars are 20 mm thick.
TEST(JointChecks, YieldFollowsTheThicknessOfTheBar) {
  const Built b = hive();
  EXPECT_DOUBLE_EQ(material_of_bar(b.c.machine, b.mesh, {Ref::Kind::bar, BodyKind::clamp, 0}).yield, 265 * MPa);
}

// 1000 N on a pin of 16 mm in 20 mm: 1000/320 = 3.125 MPa; shear 4/3 1000/201.06 = 6.631 MPa; overhung bending
// 1000 x 10 mm / 402.12 mm^3 = 24.868 MPa. A mild pin in mild steel bears 5 MPa while it swings.
TEST(JointChecks, HingeByHand) {
  Built b = hive();
  Hinge h = b.c.machine.hinges.front();
  h.pin = 16 * millimetre;
  h.bearing_length = 20 * millimetre;
  h.pin_material = -1;
  const JointChecks c = check_hinge(b.c.machine, b.mesh, h, 1000, true);
  EXPECT_NEAR(find(c, "pin pressure").actual, 3.125 * MPa, 1);
  EXPECT_DOUBLE_EQ(find(c, "pin pressure").allowed.value, 5 * MPa);
  EXPECT_NEAR(find(c, "pin shear").actual, 6.6315 * MPa, 1e3);
  EXPECT_NEAR(find(c, "pin bending").actual, 24.868 * MPa, 1e3);
  // The bed holds the pin: e = 10 mm, (4 + 6/2) 3.125 MPa.
  EXPECT_NEAR(find(c, "pin's seat in bed.top").actual, 21.875 * MPa, 1e3);
  EXPECT_DOUBLE_EQ(find(c, "pin's seat in bed.top").allowed.value, 0.6 * 265 * MPa);
  EXPECT_TRUE(c.remarks.empty());
  const JointChecks oval = check_hinge(b.c.machine, b.mesh, h, 2000, true);
  ASSERT_EQ(oval.remarks.size(), 1U);
  EXPECT_NE(oval.remarks[0].find("will wear oval"), std::string::npos);
  h.both_sides = true;
  EXPECT_NEAR(find(check_hinge(b.c.machine, b.mesh, h, 1000, true), "pin shear").actual, 3.3157 * MPa, 1e3);
  h.allowed_pressure = 2 * MPa;
  const JointChecks own = check_hinge(b.c.machine, b.mesh, h, 1000, true);
  EXPECT_EQ(find(own, "pin pressure").allowed.source, "case");
  EXPECT_NEAR(own.utilisation(), 3.125 / 2, 1e-9);
}

// Johnson: E* of steel on steel 210 GPa, nu 0.3 is 115385 MPa; R 30 mm, 20 mm wide, 2000 N: F' = 100 N/mm and
// p0 = sqrt(100 x 115385 / (pi x 30)) = 349.90 MPa, greatest shear 0.3003 p0 = 105.1 MPa.
TEST(JointChecks, CamByHand) {
  Built b = hive();
  Cam cam = b.c.machine.cams.back();
  cam.allowed_pressure.reset();
  const JointChecks c = check_cam(b.c.machine, b.mesh, cam, 2000);
  EXPECT_NEAR(find(c, "cam contact").actual, 349.90 * MPa, 0.05 * MPa);
  EXPECT_NEAR(find(c, "shear below the contact").actual, 105.07 * MPa, 0.05 * MPa);
  EXPECT_NEAR(find(c, "cam contact").utilisation(), 349.90 / (1.665 * 265), 1e-3);
  // Hertz: twice the pressure takes four times the force.
  EXPECT_NEAR(find(check_cam(b.c.machine, b.mesh, cam, 8000), "cam contact").actual, 699.80 * MPa, 0.1 * MPa);
}

// M20, class 8.8: ISO 898-1 proof load 146.9 kN. Washer 37 x 3, hole 22, flats 30: min(37, 30 + 4.8) = 34.8 mm outside:
// pressure of 10 kN on pi/4 (34.8^2 - 22^2) = 571.0 mm^2 is 17.51 MPa.
TEST(JointChecks, PostByHand) {
  const Built b = hive();
  const JointChecks c = check_post(b.c.machine, b.mesh, b.c.machine.posts.front(), 10e3, 0, {});
  EXPECT_NEAR(find(c, "proof load").allowed.value, 146.9e3, 100);
  EXPECT_NEAR(find(c, "nut seat").actual, 17.51 * MPa, 0.02 * MPa);
  // ISO 4032: a nut of the same class is made to outlast its screw, so its threads bear more than the proof load.
  EXPECT_GT(find(c, "thread shear").allowed.value, 146.9e3);
  Post tapped = b.c.machine.posts.front();
  tapped.tapped = 20 * millimetre; // 1 d in S275 is about what an 8.8 screw needs (rule of thumb 1 to 1.5 d)
  const Check t = find(check_post(b.c.machine, b.mesh, tapped, 10e3, 0, {}), "tapped thread");
  EXPECT_GT(t.allowed.value, 0.8 * 244.8e-6 * 830 * MPa);
  EXPECT_LT(t.allowed.value, 1.2 * 244.8e-6 * 830 * MPa);
}

// Slope-deflection: M_ab = 2EI/L (2 ta + tb - 3 D/L), M_ba likewise, for any movement of the two ends.
TEST(JointChecks, StudMomentsAreThoseOfSlopeDeflection) {
  const Stud stud{18 * millimetre, 140 * millimetre, 205e9};
  const double EI = 205e9 * std::numbers::pi / 64 * std::pow(stud.diameter, 4), L = stud.free_length;
  for (const auto& [D, ta, tb] :
       {std::array{1e-4, 0.0, 0.0}, {1e-4, 1e-3, -5e-4}, {-2e-4, 1e-3, 2e-3}, {0.0, 0.0, 1e-3}}) {
    const double ab = 2 * EI / L * (2 * ta + tb - 3 * D / L), ba = 2 * EI / L * (2 * tb + ta - 3 * D / L);
    // What either end carries rigidly to the middle.
    const StudEnds ends{{D - (ta + tb) * L / 2, 0}, {tb - ta, 0}};
    EXPECT_NEAR(stud_moment(stud, ends), std::max(std::abs(ab), std::abs(ba)), 1e-9 * EI / L);
    // Hinged at b: M_ab = 3EI/L (ta - D/L); what either end carries rigidly to b.
    EXPECT_NEAR(stud_moment(stud, StudEnds{{D - ta * L, 0}, {tb - ta, 0}}, true), std::abs(3 * EI / L * (ta - D / L)),
                1e-9 * EI / L);
  }
}

// The checks stand behind the utilisation that the verdict is about.
TEST(JointChecks, GovernWhatSolveReports) {
  const Built b = hive();
  AnalysisOptions options;
  options.fields = false;
  const Findings f = analyse(b.c.machine, builtin_registries(), options);
  ASSERT_EQ(f.status, Status::ok);
  for (const StepResult& s : f.steps)
    for (const JointKind kind : {JointKind::post, JointKind::cam, JointKind::hinge, JointKind::screw})
      for (const JointResult& j : joints_of(s, kind)) {
        ASSERT_FALSE(j.checks.empty()) << j.name;
        double most = 0;
        for (const Check& c : j.checks) most = std::max(most, c.actual / c.allowed.value);
        EXPECT_DOUBLE_EQ(j.utilisation, most) << j.name << " in " << s.name;
      }
}

// A level crown only lifts the clamp: nothing bends by it.
TEST(Crown, LevelLiftsTheClampAndBendsNothing) {
  Built b = hive();
  AnalysisOptions options;
  options.fields = false;
  for (Cam& c : b.c.machine.cams) c.lift = 0; // moves with the clamp below
  const Findings plain = analyse(b.c.machine, builtin_registries(), options);
  b.c.machine.body(BodyKind::bed).crown = {{0.1}, {0.05 * millimetre}};
  for (Cam& c : b.c.machine.cams) c.lift += 0.05 * millimetre;
  const Findings crowned = analyse(b.c.machine, builtin_registries(), options);
  for (std::size_t s = 0; s < plain.steps.size(); ++s) {
    EXPECT_NEAR(crowned.steps[s].bow.bow[1], plain.steps[s].bow.bow[1], 1e-9);
    EXPECT_NEAR(crowned.steps[s].bend_line.nose_z[0], plain.steps[s].bend_line.nose_z[0] + 0.05 * millimetre, 1e-8);
  }
}

// Shims on the apron's face turn the flange by their height over its depth, no more: the apron's load is the sheet's.
TEST(Crown, OfTheApronTurnsTheFlange) {
  Built b = hive();
  AnalysisOptions options;
  options.fields = false;
  const Findings plain = analyse(b.c.machine, builtin_registries(), options);
  b.c.machine.body(BodyKind::apron).crown = {{0.15, 0.45, 0.75}, {0, 0.1 * millimetre, 0}};
  const Findings crowned = analyse(b.c.machine, builtin_registries(), options);
  for (std::size_t s = 1; s < plain.steps.size(); ++s) {
    const BendLine &p = plain.steps[s].bend_line, &c = crowned.steps[s].bend_line;
    for (std::size_t i = 0; i < p.x.size(); ++i) {
      const double height = 0.1 * millimetre * (1 - std::abs(p.x[i] - 0.45) / 0.3);
      EXPECT_NEAR(c.angle_deviation[i] - p.angle_deviation[i], height / 0.025, 1e-12);
    }
  }
}

} // namespace
} // namespace bedbow
