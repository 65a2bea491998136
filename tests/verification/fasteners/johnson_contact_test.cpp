#include "solver/strength/hertz.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

namespace bedbow::verification {

TEST(JohnsonContactMechanics, CylinderOnFlat) {
  const char* source = "Hertz, as in Rao, Engineering Optimization, 4th ed., problem 5.5 (issuhub.com/view/index/4432)";
  const LineContact c = line_contact(100e3, {0.010, 207e9, 0.3}, {.E = 207e9, .nu = 0.3});
  record("I21", source, "E*", c.modulus / 1e6, 113736.3, 1e-6, "MPa");
  record("I21", source, "half-width a", c.half_width * 1e3, 0.105805, 5e-6, "mm");
  record("I21", source, "peak pressure p0", c.peak / 1e6, 601.69, 1e-5, "MPa");
  record("I21", source, "greatest shear", c.shear / 1e6, 180.7, 3e-4, "MPa");
  record("I21", source, "its depth", c.depth * 1e3, 0.08318, 6e-5, "mm");
  record("I20", source, "p0 = 2 F'/(pi a)", c.peak, 2 * 100e3 / (3.14159265358979 * c.half_width), 1e-12, "Pa");
  record("I20", source, "first yield p0 = 1.67 yield", check_line_contact(c, 1).allowed.value, 1.67, 0.003);
}

} // namespace bedbow::verification
