// `setup` by paper and pencil: DIN 6935, springback, hand force, set-back, nuts, cams.
#include "mesh/piece/fastener.h"
#include "mesh/piece/si.h"
#include "solver/study/setup.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {

namespace {

using si::degree;

std::vector<Setting> settings(const char* name, const std::vector<double>& thicknesses) {
  Machine m = machine_of(project_file(std::string("cases/") + name + "/case.toml"));
  m.sheet->moment_law = "rigid-plastic";
  return find_settings(m, builtin_registries(), thicknesses, 0.4);
}

} // namespace

// Hive-lid folder, DC01 (Rm 410 MPa, Re 280 MPa, E 210 GPa, nu 0.3), inside radius 2 mm, flange 25 mm, 600 mm wide.
TEST(SettingsByHand, BendOfTheHiveLid) {
  const auto s = settings("hive-lid", {1e-3, 1.5e-3, 2e-3});
  const double least[] = {1.2, 2, 3};
  for (std::size_t i = 0; i < 3; ++i)
    record("H13", "DIN 6935 (1975-10), Rm 390 to 490 MPa", "least inside radius", s[i].least_radius.value * 1e3,
           least[i], 1e-12, "mm");
  record("H11", "DIN 6935, as in a German book of tables, scribd.com/document/401383818",
         "flat length correction, r = 3, s = 2, 90 deg", s[2].correction * 1e3, -4.1283, 2e-5, "mm");
  record("H10", "DIN 6935", "k at r/s = 1.5", s[2].k, 0.7380, 7e-5);
  const double m = 162.3798 * 280 / 250; // H2: S t^2/4 per width [N mm/mm]
  // Of the arc by Gardiner, of flange and grip 4 m l/(E' t^3).
  // Gardiner: 4x^3 - 3x + 1 with x = rho S/(E' t), S and E' in plane strain.
  const double x = 2.75 * 280 * 2 / std::sqrt(3) / (210e3 / (1 - 0.09) * 1.5);
  record("H5", "Gardiner, Trans. ASME 79 (1957), in plane strain (H1)", "springback of 90 deg, t = 1.5, r = 2",
         s[1].springback / degree,
         90 * (1 / (4 * x * x * x - 3 * x + 1) - 1) + 4 * m * (25 + 15) / (210e3 / 0.91 * 3.375) / degree, 1e-6, "deg");
  // On two hands at 400 mm: at 90 deg the push acts on the flange alone, less on the flange and the set-back before.
  record("H2", "moments about the bend line", "hand force, t = 1.5", s[1].hand_force, m * 600 / 400 / 2, 2e-3, "N");
  record("", "geometry: thickness + inside radius", "set-back, t = 1.5", s[1].setback * 1e3, 3.5, 1e-12, "mm");
  record("", "sum of its parts", "apron swings to, t = 1.5", s[1].apron_angle / degree,
         90 + s[1].springback / degree + s[1].lag / degree, 1e-12, "deg");
}

TEST(SettingsByHand, NutsAndCams) {
  const auto roof = settings("roof-flashing", {0.6e-3});
  // Each nut adds 0.4 d on the nominal area and 0.5 d on that of the core (VDI 2230), both of M16.
  record("I5", "F/E (L/A_s + nuts): 4 kN on 90 mm of M16", "stretch of the stud", roof[0].nuts[0].stretch * 1e3,
         4000 / 205e3 * (90 / 156.7 + 2 * (0.4 * 16 / 201.06 + 0.5 * 16 / 144.1)), 3e-4, "mm");
  record("", "turn of a nut: (stretch + down) over the pitch of 2 mm", "turn", roof[0].nuts[0].turn / degree,
         360 * (roof[0].nuts[0].stretch + roof[0].nuts[0].down) / 2e-3, 1e-12, "deg");
  // The nose touches 0.3 mm of sheet earlier: the tail by 0.3 (112 - 70)/(70 - 11) = 0.2136 mm, throw 1.5 mm.
  const auto rocking = settings("rocking-clamp", {1.5e-3, 1.8e-3});
  const double up = 0.3 * (112 - 70) / (70 - 11);
  record("", "lever and eccentric", "cam angle for 1.8 mm", rocking[1].cam_angle / degree,
         std::acos(std::cos(140 * degree) + up / 0.75) / degree, 1e-9, "deg");
  record("", "pitch of M20, 2.5 mm", "nut turns for 1.8 mm", rocking[1].nut_turns, 0.3 / 2.5, 1e-9);
}

} // namespace bedbow::verification
