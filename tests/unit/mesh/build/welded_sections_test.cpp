#include "io/case/case_reader.h"
#include "mesh/build/mesher.h"
#include "mesh/build/places.h"
#include "solver/registry/registries.h"

#include <gtest/gtest.h>

namespace bedbow {

// A flat of 100 x 10 on a rib of 20 x 60 welded over its middle, and a strip of 40 x 10 welded on the flat over the
// last fifth: where the seams run, the bars are one section of 70 mm, then 80 mm; elsewhere they stand alone.
TEST(WeldedSections, DepthOfWhatIsWeldedTogether) {
  const Registries registries = builtin_registries();
  const Case c = read_case_text(R"(
[bed]
length = "1000 mm"
material = "S275JR"
edge = { bar = "flat" }
bar = [
{ name = "flat", shape = "rectangle", width = "100 mm", height = "10 mm", at = ["50 mm", "-5 mm"] },
{ name = "rib", shape = "rectangle", width = "20 mm", height = "60 mm", at = ["50 mm", "-40 mm"] },
{ name = "strip", shape = "rectangle", width = "40 mm", height = "10 mm", at = ["50 mm", "5 mm"] },
]
[[weld]]
joins = ["bed.flat", "bed.rib"]
from = "200 mm"
[[weld]]
joins = ["bed.strip", "bed.flat"]
from = "800 mm"
[[support]]
bar = "bed.rib"
x = "0 mm"
holds = ["x", "y", "z", "rx", "ry", "rz"]
[solve]
element_size = "50 mm"
)",
                                registries);
  const Mesh mesh = make_mesh(c.machine, registries.shapes, {});
  const auto depth = [&](int bar, double x) {
    const BarLayout& l = layout_of(mesh, {Ref::Kind::bar, BodyKind::bed, bar});
    if (l.welded_depth.empty()) return 0.0;
    std::size_t i = 0;
    while (l.stations[i + 1] < x) ++i;
    return l.welded_depth[i];
  };
  for (const int bar : {0, 1, 2}) {
    EXPECT_EQ(depth(bar, 0.175), 0) << bar;
    EXPECT_NEAR(depth(bar, 0.225), bar == 2 ? 0 : 0.07, 1e-12) << bar;
    EXPECT_NEAR(depth(bar, 0.775), bar == 2 ? 0 : 0.07, 1e-12) << bar;
    EXPECT_NEAR(depth(bar, 0.825), 0.08, 1e-12) << bar;
  }
}

} // namespace bedbow
