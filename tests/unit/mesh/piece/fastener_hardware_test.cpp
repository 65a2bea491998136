#include "mesh/piece/fastener.h"

#include <gtest/gtest.h>

namespace bedbow {

TEST(Hardware, FitsItsThread) {
  for (const char* name : {"M3", "M8", "M20", "M36", "5/8-11", "1/4-20", "M20x1.5"}) {
    const Thread t = *find_thread(name);
    const Hardware h = hardware(t);
    EXPECT_GT(h.hole, t.d) << name;
    EXPECT_GT(h.across_flats, h.hole) << name;
    EXPECT_GT(h.washer_diameter, h.across_flats) << name;
    EXPECT_GT(h.nut_height, 0.75 * t.d) << name;
    EXPECT_LE(h.nut_height, t.d) << name;
    EXPECT_FALSE(h.source.empty());
  }
  EXPECT_NEAR(hardware(*find_thread("M20")).across_flats, 0.030, 1e-12);
}

} // namespace bedbow
