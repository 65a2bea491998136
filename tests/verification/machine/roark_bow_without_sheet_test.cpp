// A bed alone on two supports: its bow is measured over its whole length, and a limit on it counts.
#include "io/case/case_reader.h"
#include "solver/analysis.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

const char* const bed_alone = R"(
[bed]
length = "1000 mm"
material = "test"
[material.test]
E = "210 GPa"
nu = 0.3
density = "7850 kg/m^3"
[[bed.bar]]
name = "bar"
shape = "rectangle"
model = "beam"
width = "20 mm"
height = "60 mm"
at = ["10 mm", "-30 mm"]
[[support]]
bar = "bed.bar"
x = "0 mm"
holds = ["x", "y", "z", "rx"]
[[support]]
bar = "bed.bar"
x = "1000 mm"
holds = ["y", "z"]
[[load]]
on = "bed.bar"
from = ["0 mm", "10 mm", "-30 mm"]
to = ["1000 mm", "10 mm", "-30 mm"]
per_length = ["0 N/mm", "0 N/mm", "-10 N/mm"]
[limits]
bow = "1.7 mm"
)";

TEST(RoarkBeams, BowOfABedWithoutASheet) {
  const Registries registries = builtin_registries();
  const Findings f = analyse(read_case_text(bed_alone, registries).machine, registries);
  ASSERT_EQ(f.steps.size(), 1U);
  const double bow = f.steps[0].bow.bow[static_cast<std::size_t>(BodyKind::bed)] * 1e3;
  verification::record("A1", "Roark Table 8.1", "bow of a bed alone on two supports, uniform load, with shear", bow,
                       1.722332 + 0.0151786, 1e-6, "mm");
  EXPECT_FALSE(f.verdict.pass);
}

} // namespace
} // namespace bedbow
