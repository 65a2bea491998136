#include "solver/sheet/sheet_law.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

namespace bedbow {

namespace {

Sheet sheet(double thickness, double inside_radius) {
  Sheet s;
  s.thickness = thickness;
  s.inside_radius = inside_radius;
  s.flange = 0.025;
  s.grip = 0.015;
  s.angle = std::numbers::pi / 2;
  return s;
}

Material steel() {
  Material m;
  m.name = "steel";
  m.E = 205e9;
  m.nu = 0.29;
  m.yield = 250e6;
  m.K = 530e6;
  m.n = 0.26;
  return m;
}

// Moment per width of a stress over the thickness: integral of stress(z) z dz, by the midpoint rule.
double moment_of(double t, const std::function<double(double)>& stress) {
  const int n = 200000;
  double sum = 0;
  for (int i = 0; i < n; ++i) {
    const double z = t * ((i + 0.5) / n - 0.5);
    sum += stress(z) * z * t / n;
  }
  return sum;
}

} // namespace

TEST(SheetLaw, PowerLawIsTheMomentOfItsStress) {
  const Material m = steel();
  const Sheet s = sheet(0.0015, 0.0015);
  const double rho = 0.00225, p = 2 / std::sqrt(3.0);
  const double numeric = moment_of(s.thickness, [&](double z) {
    return std::copysign(p * *m.K * std::pow(p * std::abs(z) / rho, *m.n), z); // strain and stress both by von Mises
  });
  EXPECT_NEAR(power_law_moment(s, m) / numeric, 1, 1e-6);
}

TEST(SheetLaw, PowerLawWithoutHardeningIsRigidPlastic) {
  Material m = steel();
  m.K = m.yield;
  m.n = 0;
  EXPECT_NEAR(power_law_moment(sheet(0.002, 0.003), m) / rigid_plastic_moment(sheet(0.002, 0.003), m), 1, 1e-12);
}

// Bends an elastic-perfectly plastic sheet, integrates its moment and lets it go: the angle that stays, by quadrature.
TEST(Springback, AgreesWithBendingAndUnloadingNumerically) {
  const Material m = steel();
  for (const double radius : {0.0015, 0.01, 0.05}) {
    const Sheet s = sheet(0.0015, radius);
    const double E = m.E / (1 - m.nu * m.nu), S = 2 / std::sqrt(3.0) * m.yield, rho = radius + s.thickness / 2;
    const double M = moment_of(s.thickness, [&](double z) { return std::clamp(E * z / rho, -S, S); });
    const double kept = 1 - M / (E * std::pow(s.thickness, 3) / 12) * rho;
    EXPECT_NEAR((s.angle + springback(s, m, 0)) * kept, s.angle, 1e-6) << radius;
  }
}

TEST(Springback, PowerLawUnloadsItsOwnMoment) {
  Sheet s = sheet(0.0015, 0.0015);
  s.moment_law = "power-law";
  const Material m = steel();
  const double M = power_law_moment(s, m);
  const double unbent = M / (m.E / (1 - m.nu * m.nu) * std::pow(s.thickness, 3) / 12); // curvature that goes
  const double under_load = s.angle + springback(s, m, M);
  EXPECT_NEAR(under_load * (1 - unbent * 0.00225), s.angle, 1e-12);
}

TEST(Springback, GrowsWithRadiusAndYield) {
  const Material soft = steel();
  Material hard = steel();
  hard.yield *= 2;
  EXPECT_GT(springback(sheet(0.001, 0.010), soft, 0), springback(sheet(0.001, 0.002), soft, 0));
  EXPECT_GT(springback(sheet(0.001, 0.002), hard, 0), springback(sheet(0.001, 0.002), soft, 0));
}

TEST(Springback, ElasticBendIsRefusedWithAdvice) {
  try {
    springback(sheet(0.001, 2.0), steel(), 0);
    FAIL();
  } catch (const std::invalid_argument& e) {
    EXPECT_NE(std::string(e.what()).find("smaller inside_radius"), std::string::npos);
  }
}

TEST(SheetLaw, MissingValuesAreNamed) {
  Registry<MomentLawEntry> laws("moment law");
  builtin_moment_laws(laws);
  Material bare;
  bare.name = "tin";
  for (const auto& [law, value] : {std::pair{"rigid-plastic", "yield"}, {"power-law", "K and n"}}) {
    try {
      laws.get(law).moment(sheet(0.001, 0.001), bare);
      FAIL() << law;
    } catch (const std::invalid_argument& e) {
      EXPECT_EQ(std::string(e.what()), std::string("moment law '") + law + "' needs " + value +
                                           " of material 'tin'; give it, or choose another moment_law");
    }
  }
  EXPECT_THROW(builtin_moment_laws(laws), std::invalid_argument);
}

// Moments about the bend line: F at the flange and the couple of the grip both balance the sheet's moment.
TEST(SheetLoads, CarryTheMomentOnFlangeAndGrip) {
  const Sheet s = sheet(0.0015, 0.002);
  const SheetLoads loads = sheet_loads(s, 160);
  EXPECT_DOUBLE_EQ(loads.moment, 160);
  EXPECT_DOUBLE_EQ(loads.apron * s.flange, 160);
  EXPECT_DOUBLE_EQ(loads.grip * s.grip, 160);
}

} // namespace bedbow
