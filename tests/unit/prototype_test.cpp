#include "io/case_reader.h"
#include "solver/study/prototype.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

Machine hive() {
  return read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries()).machine;
}

/// The machine with everything that gives by a material's own modulus: joints rigid, studs as in both.
Machine of_one_material() {
  Machine m = hive();
  for (Screws& s : m.screws) s.shear_stiffness = 180e6;
  return m;
}

// Similarity: the same material at half size under a quarter of the forces bends to half of every movement, exactly,
// joints, studs, pads and all (Buckingham; stresses stay).
TEST(Prototype, OfTheSameMaterialIsSimilar) {
  const Machine m = of_one_material();
  const PrototypeResult r =
      prototype(m, builtin_registries(), m.materials.at(m.body(BodyKind::clamp).bars[0].material), 0.5);
  EXPECT_NEAR(r.load_scale, 0.25, 1e-12);
  for (const BowShares& b : r.bows) EXPECT_NEAR(b.prototype, 0.5 * b.machine, 0.02 * b.machine) << b.body;
  for (const PrototypeDial& d : r.dials)
    if (std::abs(d.machine) > 1e-6) {
      EXPECT_NEAR(d.prototype / d.machine, 0.5, 0.03) << d.name << d.axis;
    }
}

// Timoshenko's simple beam: shear adds 48 E I/(5 k G A L^2) to the bending. The softer G of wood raises that share by
// (E/G)' / (E/G), here 1/0.071 against 2.6.
TEST(Prototype, OfWoodBowsFurtherByShear) {
  const Machine m = of_one_material();
  const PrototypeResult r = prototype(m, builtin_registries(), *find_material("Douglas-fir"), 1);
  const BowShares& apron = r.bows.back();
  ASSERT_EQ(apron.body, "apron");
  EXPECT_GT(apron.prototype, apron.machine);
  const double one = apron.machine_shear / (1 - apron.machine_shear);
  const double other = apron.prototype_shear / (1 - apron.prototype_shear);
  EXPECT_NEAR(other / one, (1 / 0.071) / 2.6, 0.1 * 5.4);
  EXPECT_GT(r.safe_factor(), 0);
  EXPECT_NE(r.allowed.source.find("modulus of rupture"), std::string::npos);
}

TEST(Prototype, RefusesAScaleThatIsNone) {
  EXPECT_THROW(scaled(hive(), 0), std::invalid_argument);
}

} // namespace
} // namespace bedbow
