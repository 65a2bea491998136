#include "solver/strength/allowable.h"

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
  EXPECT_EQ(surface_of(*find_material("S275JR")), BearingSurface::steel);
  EXPECT_EQ(surface_of(*find_material("304")), BearingSurface::steel);
  EXPECT_EQ(surface_of(*find_material("bolt steel 12.9")), BearingSurface::hardened_steel);
  EXPECT_EQ(surface_of(*find_material("6061-T6")), BearingSurface::aluminium);
  EXPECT_EQ(surface_of(*find_material("sugar maple")), BearingSurface::timber);
  Material bronze;
  bronze.E = 110e9;
  bronze.yield = 180e6;
  EXPECT_EQ(surface_of(bronze), BearingSurface::bronze);
  // Grey iron is as stiff as bronze and was taken for it, which bears twice as much; it has no yield.
  Material grey_iron;
  grey_iron.E = 110e9;
  grey_iron.tensile = 250e6;
  EXPECT_EQ(surface_of(grey_iron), BearingSurface::cast_iron);
  Material plastic;
  plastic.E = 3e9;
  plastic.yield = 60e6;
  EXPECT_EQ(surface_of(plastic), BearingSurface::polymer);
}

TEST(Allowable, EveryPairHasAPressureAndASource) {
  for (int pin = 0; pin <= static_cast<int>(BearingSurface::timber); ++pin)
    for (int hole = 0; hole <= static_cast<int>(BearingSurface::timber); ++hole) {
      const Allowable a = swinging_pressure(static_cast<BearingSurface>(pin), static_cast<BearingSurface>(hole));
      EXPECT_GE(a.value, 1e6);
      EXPECT_LE(a.value, 15e6);
      EXPECT_FALSE(a.source.empty());
    }
  EXPECT_EQ(swinging_pressure(BearingSurface::timber, BearingSurface::steel).value,
            swinging_pressure(BearingSurface::steel, BearingSurface::timber).value);
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
