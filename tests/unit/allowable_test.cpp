#include "solver/bearing/allowable.h"

#include <gtest/gtest.h>

namespace bedbow {

TEST(Allowable, CaseOverridesAndSaysSo) {
  EXPECT_EQ(overridden(7e6, {5e6, "book"}).value, 7e6);
  EXPECT_EQ(overridden(7e6, {5e6, "book"}).source, "case");
  EXPECT_EQ(overridden({}, {5e6, "book"}).source, "book");
}

TEST(Allowable, UnknownGivesNoUtilisation) {
  EXPECT_EQ((Check{"x", 5, {0, ""}}).utilisation(), 0);
  EXPECT_EQ((Check{"x", 5, {10, ""}}).utilisation(), 0.5);
}

TEST(Allowable, SurfaceIsGuessedFromTheMaterial) {
  EXPECT_EQ(surface_of(*find_material("S275JR")), Surface::steel);
  EXPECT_EQ(surface_of(*find_material("304")), Surface::steel);
  EXPECT_EQ(surface_of(*find_material("bolt steel 12.9")), Surface::hardened_steel);
  EXPECT_EQ(surface_of(*find_material("6061-T6")), Surface::aluminium);
  EXPECT_EQ(surface_of(*find_material("sugar maple")), Surface::timber);
  Material bronze;
  bronze.E = 110e9;
  EXPECT_EQ(surface_of(bronze), Surface::bronze);
  Material plastic;
  plastic.E = 3e9;
  plastic.yield = 60e6;
  EXPECT_EQ(surface_of(plastic), Surface::polymer);
}

TEST(Allowable, EveryPairHasAPressureAndASource) {
  for (int pin = 0; pin <= static_cast<int>(Surface::timber); ++pin)
    for (int hole = 0; hole <= static_cast<int>(Surface::timber); ++hole) {
      const Allowable a = swinging_pressure(static_cast<Surface>(pin), static_cast<Surface>(hole));
      EXPECT_GE(a.value, 1e6);
      EXPECT_LE(a.value, 15e6);
      EXPECT_FALSE(a.source.empty());
    }
  EXPECT_EQ(swinging_pressure(Surface::timber, Surface::steel).value,
            swinging_pressure(Surface::steel, Surface::timber).value);
}

TEST(Allowable, RestingPressureTakesTheSofterPartner) {
  const Material &pin = *find_material("bolt steel 8.8"), &hole = *find_material("S275JR");
  EXPECT_DOUBLE_EQ(resting_pressure(pin, hole).value, 0.6 * 275e6);
  EXPECT_DOUBLE_EQ(resting_pressure(hole, pin).value, 0.6 * 275e6);
  EXPECT_DOUBLE_EQ(resting_pressure(Material{}, hole).value, 0.6 * 275e6);
  EXPECT_EQ(resting_pressure(Material{}, Material{}).value, 0);
}

TEST(Allowable, SeatOfTimberIsCrushedAcrossTheGrain) {
  // Wood Handbook, sugar maple across the grain: 10.1 MPa (from memory); the built-in ratio stays on the safe side.
  const double maple = seat_pressure(*find_material("sugar maple")).value;
  EXPECT_LT(maple, 10.1e6);
  EXPECT_GT(maple, 5e6);
  EXPECT_EQ(seat_pressure(*find_material("S275JR")).value, 275e6);
  EXPECT_EQ(seat_pressure(Material{}).value, 0);
}

} // namespace bedbow
