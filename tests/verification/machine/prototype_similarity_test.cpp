// A scaled prototype of another material against the closed form of the beam.
#include "solver/study/prototype.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

namespace bedbow::verification {

// A2: bar on end supports, force in the middle: 0.2755732 mm by bending and 0.00303571 mm by shear, times the ratios.
// Douglas-fir (J12): E = 1.10 x 13.4 GPa (J15), G = (0.064 + 0.078)/2 E; its nominal nu of 0.35 enters Cowper's shear
// coefficient (A8). Half the size under scale^2 E'/E of the force.
TEST(RoarkBeamAsPrototype, DouglasFirAtHalfSize) {
  const char* source = "Roark, Formulas for Stress and Strain, Table 8.1: PL^3/48EI + PL/(4 kappa G A)";
  const Machine m = machine_of(sample_bar(support("left", 0, "\"x\", \"y\", \"z\", \"rx\"") +
                                          support("right", 1000, "\"y\", \"z\"") + force_at(500, -1000)));
  const double scale = 0.5, bending = 0.2755732, shear = 0.00303571;
  const PrototypeResult r = prototype(m, builtin_registries(), *find_material("Douglas-fir"), scale);
  const auto kappa = [](double nu) { return 10 * (1 + nu) / (12 + 11 * nu); };
  const double e = 1.10 * 13.4 / 210, g = 0.071 * 1.10 * 13.4 / 80.7692;
  record("A2", source, "force of the prototype over that of the machine", r.load_scale, scale * scale * e, 1e-6);
  record("A2", source, "share of the bow by bending", r.bows[0].shares.bending, bending / (bending + shear), 1e-5);
  record("A2", source, "share of the bow by shear", r.bows[0].shares.shear, shear / (bending + shear), 1e-4);
  record("A2", source, "share of the bow by joints", r.bows[0].shares.joints, 0, 1e-5);
  record("J12", source, "ratio of what comes by shear, Douglas-fir for steel", r.parts.shear, scale * e / g, 1e-5);
  record("A2", source, "bow of the machine", r.bows[0].machine * 1e3, bending + shear, 1e-4, "mm");
  record("J12", source, "bow of the prototype", r.bows[0].prototype * 1e3,
         scale * (bending + shear * e / g * kappa(0.3) / kappa(0.35)), 1e-4, "mm");
  record("J12", source, "ratio by parts", r.parts.of(r.bows[0].shares),
         scale * (bending + shear * e / g) / (bending + shear), 1e-4);
  // sigma = M/W = (P/4) L / (b h^2/6), at forces of scale^2 e and sizes of scale: times e.
  record("J12", source, "stress in the prototype", r.stress / 1e6, 1000.0 / 4 * 1000 / (20 * 60 * 60 / 6.0) * e, 1e-3,
         "MPa");
  record("J12", source, "a quarter of the modulus of rupture", r.allowed.value / 1e6, 85 / 4.0, 1e-9, "MPa");
}

} // namespace bedbow::verification
