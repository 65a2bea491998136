#include "mesh/piece/material.h"
#include "solver/sheet/sheet_law.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace bedbow::verification {

namespace {

Sheet sheet(double thickness_mm, double inside_radius_mm) {
  Sheet s;
  s.thickness = thickness_mm * 1e-3;
  s.inside_radius = inside_radius_mm * 1e-3;
  return s;
}

Material yielding(double MPa) {
  Material m;
  m.E = 205e9;
  m.yield = MPa * 1e6;
  return m;
}

} // namespace

TEST(MarciniakDuncanHu2002, FullPlasticMoment) {
  const char* source = "Marciniak, Duncan & Hu 2nd ed. 2002, eqs 6.6, 6.21 (text-id.123dok.com/document/ky6pn6m7q)";
  const Material m = yielding(250);
  record("H1", source, "plane-strain factor S/Y", rigid_plastic_moment(sheet(2, 2), m) / (m.yield * 4e-6 / 4), 1.154701,
         1e-6);
  for (const auto& [t, moment] : {std::pair{1.0, 72.1688}, {1.5, 162.3798}, {2.0, 288.6751}, {3.0, 649.5191}})
    record("H2", source, "full plastic moment, Y = 250, t = " + std::to_string(t).substr(0, 3),
           rigid_plastic_moment(sheet(t, 2), m), moment, 1e-6, "N mm/mm");
}

TEST(MarciniakDuncanHu2002, PowerLawMoment) {
  const char* source = "Marciniak, Duncan & Hu eqs 6.13-6.14 with K, n of Kalpakjian & Schmid Table 2.3";
  for (const auto& [name, moment] : {std::pair{"DC01", 237.673}, {"304", 439.919}, {"5052-O", 113.125}})
    record("H4", source, std::string("moment, t = 1.5, rho = 2.25, ") + name,
           power_law_moment(sheet(1.5, 1.5), *find_material(name)), moment, 0.0005 / moment, "N mm/mm");
  Material m = *find_material("DC01");
  m.K = m.yield;
  m.n = 1e-9;
  record("H3", source, "limit n -> 0 against the full plastic moment", power_law_moment(sheet(1.5, 1.5), m),
         rigid_plastic_moment(sheet(1.5, 1.5), m), 1e-8, "N mm/mm");
}

TEST(Gardiner1957, SpringbackRatio) {
  const char* source = "F.J. Gardiner, Trans. ASME 79 (1957) 1-9; from Marciniak, Duncan & Hu eqs 6.22, 6.23 (derived)";
  record("H6", source, "Ri/Rf, Ri = 1.5, t = 1.5, Y = 250, E = 205e3", gardiner_ratio(1.5 * 250 / (205e3 * 1.5)),
         0.9963415, 1e-7);
  record("H6", source, "Ri/Rf, Ri = 10, t = 1, Y = 250, E = 205e3", gardiner_ratio(10 * 250 / (205e3 * 1)), 0.9634219,
         1e-7);
  record("H6", source, "Ri/Rf, Ri = 20, t = 1.5, Y = 193, E = 70e3", gardiner_ratio(20 * 193 / (70e3 * 1.5)), 0.8899130,
         1e-7);
  record("H5", source, "Ri/Rf where bending stays elastic, x = 1/2", gardiner_ratio(0.5), 0, 1e-15);
}

// Springback of a sharp bend tends to 3 S rho / (E' t): the elastic core that Gardiner counts shrinks with x^2.
TEST(MarciniakDuncanHu2002, SharpBendLimit) {
  const Material m = yielding(250);
  Sheet s = sheet(1.5, 0);
  s.angle = 1;
  const double S = 2 / std::sqrt(3.0) * m.yield, E = m.E / (1 - m.nu * m.nu);
  const double x = S * 0.00075 / (E * 0.0015);
  const double lost = 1 - s.angle / (s.angle + springback(s, m, "rigid-plastic", 0).arc);
  record("H8",
         "Marciniak, Duncan & Hu eq. 6.33 (text-id.123dok.com/document/dy4ml12vy): 3 S rho / (E' t), short by 4 x^3",
         "part of the angle lost", lost, 3 * x, 1.34 * x * x);
}

} // namespace bedbow::verification
