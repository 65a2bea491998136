// Two bars on a row of screws, simply supported: partial composite action between two bars that only lie on each other
// and one that is welded.
#include "io/case/case_reader.h"

#include "tests/verification/beams/composite_beam.h"
#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>

namespace bedbow::verification::composite {
namespace {

// Mid deflection under a uniform load q, and under a force P at mid-span (F4, F5: solutions of Newmark's equation).
double mid_under_uniform(double k, double q) {
  const double b = alpha(k), a = b * L;
  return 5 * q * std::pow(L, 4) / (384 * EIfull) +
         (EIfull / EI0 - 1) * q / (std::pow(b, 4) * EIfull) * (1 / std::cosh(a / 2) - 1 + a * a / 8);
}

double mid_under_force(double k, double P) {
  const double b = alpha(k);
  return P * std::pow(L, 3) / (48 * EIfull) +
         (EIfull / EI0 - 1) * P / (b * b * EIfull) * (L / 4 - std::tanh(b * L / 2) / (2 * b));
}

const std::string weld = "[[weld]]\njoins = [\"bed.flange\", \"bed.web\"]\n";

double mid_deflection(const Findings& f) {
  return sunk(f, "mid");
}

// Welds join the bars at their stations, here every L/80: a quarter of what rigid screws at L/40 leave (1.4e-3).
constexpr double welded_at_stations = 5e-4;

TEST(NewmarkComposite, UniformLoad) {
  record("F7", source, "w mid, T-section on screws at L/40",
         mid_deflection(solved(t_section(screws(slip), uniform_load()))), 7.55990, discrete, "mm");
  for (const double k : {5., 500.})
    record("F4", source, "w mid, uniform load, k = " + std::to_string(k),
           mid_deflection(solved(t_section(screws(k), uniform_load()))), mid_under_uniform(k, 1), discrete, "mm");
}

TEST(NewmarkComposite, MidForce) {
  for (const double k : {5., 50., 500.})
    record("F5", source, "w mid, force at mid-span, k = " + std::to_string(k),
           mid_deflection(solved(t_section(screws(k), force_down("2000 mm", 1000)))), mid_under_force(k, 1000),
           discrete, "mm");
}

TEST(NewmarkComposite, Limits) {
  record("F7", source, "w mid, screws that hardly hold",
         mid_deflection(solved(t_section(screws(1e-4), uniform_load()))), 22.2222, discrete, "mm");
  record("F7", source, "w mid, very stiff screws", mid_deflection(solved(t_section(screws(1e7), uniform_load()))),
         5.55556, discrete, "mm");
  record("F7", source, "w mid, welded", mid_deflection(solved(t_section(weld, uniform_load()))), 5.55556,
         welded_at_stations, "mm");
}

// The gamma method is exact for a half sine (F6): there it must give what Newmark's equation (F3) gives.
TEST(En1995AnnexB, GammaMethodForAHalfSine) {
  const double p = std::numbers::pi / L;
  for (const double k : {5., 50., 500.}) {
    const double w = mid_deflection(solved(t_section(screws(k), wave_load(-1, 0, std::numbers::pi))));
    record("F1", "EN 1995-1-1:2004 Annex B, eqs B.1-B.6", "w mid, half sine, k = " + std::to_string(k), w,
           1 / (std::pow(p, 4) * gamma_stiffness(k, L)), discrete, "mm");
    const double a = alpha(k);
    record("F6", source, "w mid, half sine, k = " + std::to_string(k), w,
           (p * p / EI0 + a * a / EIfull) / ((p * p + a * a) * std::pow(p, 4)), discrete, "mm");
  }
}

// The bracket beside the answer: all limits from one call, whatever the screws' stiffness.
TEST(NewmarkComposite, Bracket) {
  const Registries registries = builtin_registries();
  AnalysisOptions options;
  options.slip_bounds = true;
  const Findings f =
      analyse(read_case_text(t_section(screws(slip), uniform_load()), registries).machine, registries, options);
  ASSERT_TRUE(f.slip_bounds);
  ASSERT_EQ(f.slip_bounds->no_slip.status, Status::ok) << f.slip_bounds->no_slip.trouble;
  ASSERT_EQ(f.slip_bounds->no_shear.status, Status::ok) << f.slip_bounds->no_shear.trouble;
  record("F7", source, "w mid, bracket, no slip", -f.slip_bounds->no_slip.steps[0].dials[0].movement.z() * 1e3, 5.55556,
         welded_at_stations, "mm");
  ASSERT_EQ(f.slip_bounds->no_slip_rolling.status, Status::ok) << f.slip_bounds->no_slip_rolling.trouble;
  record("F7", source, "w mid, bracket, no slip but free to roll",
         -f.slip_bounds->no_slip_rolling.steps[0].dials[0].movement.z() * 1e3, 5.55556, discrete, "mm");
  record("F7", source, "w mid, bracket, no shear connection",
         -f.slip_bounds->no_shear.steps[0].dials[0].movement.z() * 1e3, 22.2222, welded_at_stations, "mm");
  EXPECT_FALSE(solved(t_section(screws(slip), uniform_load())).slip_bounds) << "only where asked for";
}

// Shear in the screws is the shear flow of the welded section, q x / EIfull (EA)* r, where slip hardly matters: the
// screw next to the end bears most, and the row says so.
TEST(NewmarkComposite, WorstScrew) {
  const Findings f = solved(t_section(screws(1e5), uniform_load()));
  ASSERT_EQ(joints_of(f.steps[0], JointKind::screw).size(), 1U);
  const JointResult& row = joints_of(f.steps[0], JointKind::screw)[0];
  // The end screw passes the flow of its first 100 mm: V from 2000 to 1900 N, mean 1950.
  const double flow = 1950 * E1 * A1 * E2 * A2 / (E1 * A1 + E2 * A2) * r / EIfull;
  record("", "shear flow V (EA)* r / EI of the welded section, Newmark, Siess & Viest (1951)", "shear of the end screw",
         row.value, flow * pitch, 0.02, "N");
  EXPECT_TRUE(row.figure("screw") == 1 || row.figure("screw") == 40);
  EXPECT_NEAR(std::abs(row.at.x() * 1e3 - 2000), 1950, 1e-6);
  EXPECT_DOUBLE_EQ(row.figure("greatest_shear"), row.value);
}

// The flange hangs on two screws, which share its load by equilibrium alone; lying on the web it pulls at neither. The
// flange stands on no support of its own.
TEST(NewmarkComposite, TensionOfHangingFlange) {
  const auto greatest_tension = [](const char* joins, double per_length, const char* more = "") {
    std::string text = t_section("[[screws]]\njoins = " + std::string(joins) +
                                     R"(
size = "M10"
first = "1000 mm"
pitch = "2000 mm"
count = 2
)" + more,
                                 uniform_load(per_length));
    const std::string support = "[[support]]\nbar = \"bed.flange\"";
    for (std::size_t at = 0; (at = text.find(support)) != std::string::npos;)
      text.replace(at, support.size(), "[[support]]\nbar = \"bed.web\"");
    return joints_of(solved(text).steps.at(0), JointKind::screw)[0].figure("greatest_tension");
  };
  for (const char* joins : {"[\"bed.flange\", \"bed.web\"]", "[\"bed.web\", \"bed.flange\"]"}) {
    record("", "equilibrium: 4000 N on 2 screws", "tension, joins = " + std::string(joins), greatest_tension(joins, 1),
           2000, 1e-9, "N");
    EXPECT_EQ(greatest_tension(joins, -1), 0) << joins;
  }
  // Which way a screw pulled was once told from where it was stiffest, which is along the faces where nothing slips.
  EXPECT_NEAR(greatest_tension("[\"bed.flange\", \"bed.web\"]", 1, "shear_stiffness = \"1e7 kN/mm\"\n"), 2000, 1e-5);
}

} // namespace
} // namespace bedbow::verification::composite
