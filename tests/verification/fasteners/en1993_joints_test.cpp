#include "solver/strength/nut.h"
#include "solver/strength/screw.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <string>

namespace bedbow::verification {

// Design tables for non-preloaded bolts round to three digits. Node 50 prints 0.85 of the shear for M12, by 3.6.1 (5).
TEST(En199318, ShearAndTensionOfClass88) {
  const char* source =
      "EN 1993-1-8 Table 3.4, orangebook.arcelormittal.com: nodes 50 (8.8, shear), 45 (4.6, half the tension)";
  struct Row {
    const char* thread;
    double shear, tension;
  };
  for (const Row& r : {Row{"M12", 32.4, 48.6}, {"M16", 60.3, 90.4}, {"M20", 94.1, 141}, {"M24", 136, 203}}) {
    const Thread t = *find_thread(r.thread);
    const Grade g = *find_grade("8.8", t.d);
    record("", source, std::string("shear in threads, ") + r.thread, shear_resistance(t, g) / 1e3, r.shear, 0.005,
           "kN");
    record("", source, std::string("tension, ") + r.thread, tension_resistance(t, g) / 1e3, r.tension, 0.005, "kN");
  }
}

// Rule of thumb: about 1.0 d, 1 to 1.5 d. The middle of that range and its half-width are reference and tolerance.
TEST(ThreadEngagementRule, SteelInSteel) {
  for (const char* size : {"M10", "M16", "M20"}) {
    const Thread t = *find_thread(size);
    const double needed = engagement_needed(t, find_grade("8.8", t.d)->tensile, find_material("S275JR")->tensile);
    record("I24", "rule of thumb, steel in steel: 1 to 1.5 d", std::string("engagement / d, 8.8 in S275JR, ") + size,
           needed / t.d, 1.25, 0.2);
  }
}

} // namespace bedbow::verification
