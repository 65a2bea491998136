#include "mesh/piece/fastener.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {

TEST(Thread, NamesAreRead) {
  EXPECT_DOUBLE_EQ(find_thread("M20")->pitch, 0.0025);
  EXPECT_DOUBLE_EQ(find_thread("M20x1.5")->pitch, 0.0015);
  EXPECT_DOUBLE_EQ(find_thread("M20x1.5")->d, 0.020);
  EXPECT_DOUBLE_EQ(find_thread("5/8-11")->d, 0.625 * 0.0254);
  EXPECT_DOUBLE_EQ(find_thread("5/8-11 UNC")->pitch, 0.0254 / 11);
  for (const char* d : {"M3", "M4", "M5", "M6", "M8", "M10", "M12", "M14", "M16", "M18", "M20", "M22", "M24", "M27",
                        "M30", "M33", "M36"})
    EXPECT_TRUE(find_thread(d)) << d;
}

TEST(Thread, NonsenseIsRefused) {
  for (const char* name : {"", "M", "M7.3", "M20x", "M20x0", "M20x-1", "M20x9", "Mx2", "M20x1.5x2", "m20", "5/8-12",
                           "M nan", "Minf", "20"})
    EXPECT_FALSE(find_thread(name)) << name;
}

// Pitch diameter, minor diameters of the basic profile: the fundamental triangle is H = (sqrt3/2) P high; pitch line
// 3/8 H below the crest, nut minor 5/8 H, root of the screw 17/24 H (ISO 68-1), on both sides.
TEST(Thread, DiametersOfTheBasicProfile) {
  const Thread t = *find_thread("M12");
  const double H = std::numbers::sqrt3 / 2 * t.pitch;
  EXPECT_NEAR(t.pitch_diameter(), t.d - 2 * 3.0 / 8 * H, 1e-12);
  EXPECT_NEAR(t.nut_minor(), t.d - 2 * 5.0 / 8 * H, 1e-12);
  EXPECT_NEAR(t.core(), t.d - 2 * 17.0 / 24 * H, 1e-12);
}

// The stress area is that of the mean of pitch and core diameter (ISO 898-1).
TEST(Thread, StressAreaIsThatOfTheMeanDiameter) {
  for (const char* name : {"M6", "M20", "M36", "M20x1.5"}) {
    const Thread t = *find_thread(name);
    const double mean = (t.pitch_diameter() + t.core()) / 2;
    EXPECT_NEAR(stress_area(t) / (std::numbers::pi / 4 * mean * mean), 1, 2e-5) << name;
    EXPECT_LT(core_area(t), stress_area(t));
  }
}

TEST(Thread, MessageListsWhatThereIs) {
  EXPECT_EQ(thread_names().substr(0, 14), "M3, M4, M5, M6");
  EXPECT_NE(thread_names().find("M20x1.5, or 1/4-20, "), std::string::npos);
}

} // namespace bedbow
