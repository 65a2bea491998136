#include "io/case/case_reader.h"
#include "solver/study/prototype.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

Machine hive_machine() {
  return read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries()).machine;
}

/// The machine with screws of a given stiffness, which scale exactly.
Machine of_one_material() {
  Machine m = hive_machine();
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
  for (const PrototypeBow& b : r.bows) {
    EXPECT_NEAR(b.prototype, 0.5 * b.machine, 1e-4 * b.machine) << b.body;
    EXPECT_NEAR(b.shares.shear, b.prototype_shares.shear, 1e-4) << b.body; // similar: the same shares
  }
  for (const PrototypeDial& d : r.dials)
    if (std::abs(d.machine) > 1e-6) {
      EXPECT_NEAR(d.prototype / d.machine, 0.5, 1e-4) << d.name << d.axis;
    }
}

// A material that differs little: the estimate by parts is the solution, but for the square of the difference.
TEST(Prototype, PartsAddUp) {
  const Machine m = of_one_material();
  Material softer = m.materials.at(static_cast<std::size_t>(m.body(BodyKind::clamp).bars[0].material));
  softer.G *= 0.995; // what parts leave out goes with the square, 2.5e-5, times the curve's few units
  const PrototypeResult r = prototype(m, builtin_registries(), softer, 1);
  for (const PrototypeBow& b : r.bows) {
    EXPECT_GT(b.prototype, b.machine) << b.body;
    EXPECT_NEAR(r.parts.of(b.shares), b.prototype / b.machine, 2.5e-4) << b.body;
  }
  const PrototypeResult wood = prototype(m, builtin_registries(), *find_material("Douglas-fir"), 1);
  EXPECT_GT(wood.safe_factor(), 0);
  EXPECT_NE(wood.allowed.source.find("modulus of rupture"), std::string::npos);
}

// Euler's theorem: the parts by E, G and lift leave to the joints what scaling their own stiffness shows.
TEST(Prototype, JointsHaveTheRest) {
  Machine m = of_one_material();
  const auto apron_bow = [&] {
    const Findings f = analyse(m, builtin_registries());
    return f.steps[f.worst_step.value()].bow.bow[2];
  };
  const PrototypeResult r =
      prototype(m, builtin_registries(), m.materials.at(m.body(BodyKind::clamp).bars[0].material), 1);
  const double whole = apron_bow();
  for (Screws& s : m.screws) *s.shear_stiffness /= 1.001;
  EXPECT_NEAR((apron_bow() - whole) / whole / 0.001, r.bows.back().shares.joints, 0.01);
}

// Without dials in the case three along each body's edge are told of.
TEST(Prototype, NamesDialsWhereThereAreNone) {
  Machine m = hive_machine();
  m.dials.clear();
  const PrototypeResult r = prototype(m, builtin_registries(), *find_material("beech"), 0.5);
  EXPECT_EQ(r.dials.size(), 18U);
  EXPECT_EQ(r.dials.front().name, "bed left");
}

TEST(Prototype, RefusesAScaleThatIsNone) {
  EXPECT_THROW(scaled(hive_machine(), 0), std::invalid_argument);
}

} // namespace
} // namespace bedbow
