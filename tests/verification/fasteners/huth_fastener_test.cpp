#include "mesh/piece/fastener_stiffness.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <string>

namespace bedbow::verification {

TEST(Huth1986, AllSteelJoints) {
  struct Row {
    double t1, t2, d, huth, swift;
  };
  for (const Row& r : {Row{12, 12, 10, 247.95, 331.58}, {20, 10, 8, 204.60, 281.88}, {25, 25, 12, 357.61, 436.89}}) {
    const ShearJoint joint{r.t1 * 1e-3, 210e9, r.t2 * 1e-3, 210e9, r.d * 1e-3, 210e9, 1};
    const std::string at = ", t = " + std::to_string(static_cast<int>(r.t1)) + ", " +
                           std::to_string(static_cast<int>(r.t2)) + ", d = " + std::to_string(static_cast<int>(r.d));
    record("I16", "Huth, LBF FB-172 (1984), ASTM STP 927 (1986)", "1/C Huth" + at, 1e-6 / huth_flexibility(joint),
           r.huth, 0.005 / r.huth, "kN/mm");
    record("I16", "Swift, ASTM STP 486 (1971)", "1/C Swift" + at, 1e-6 / swift_flexibility(joint), r.swift,
           0.005 / r.swift, "kN/mm");
  }
}

// The formula as printed, with numbers put in by hand: (24)^2/(210000 x 1000) + 3.7 (1/(12 x 210000))(1 + 2).
TEST(Huth1986, GrummanAsQuoted) {
  const ShearJoint joint{0.012, 210e9, 0.012, 210e9, 0.010, 210e9, 1};
  record("I15", "Grumman as quoted by Huth; sources disagree", "C, t = 12, 12, d = 10",
         grumman_flexibility(joint) * 1e3, 576.0 / 210e6 + 3.7 * 3 / 2.52e6, 1e-12, "mm/N");
}

TEST(Vdi2230, ResilienceOfAnM10) {
  const char* source = "VDI 2230-1:2015 sec. 5.1.1, eqs 5.1/3 to 5.1/15, as in the public source of VD_5112";
  TensionBolt bolt;
  bolt.thread = *find_thread("M10");
  bolt.free_thread = 0.030;
  bolt.socket_head = true;
  bolt.tapped = true;
  record("I12", source, "resilience, socket screw in tapped hole", bolt_resilience(bolt) * 1e3, 3.7183e-6,
         0.00005 / 3.7183, "mm/N");
  record("I12", source, "stiffness, socket screw in tapped hole", 1e-3 / bolt_resilience(bolt), 268937, 2e-6, "N/mm");
  bolt.socket_head = bolt.tapped = false;
  record("I12", source, "resilience, hexagon screw and nut", bolt_resilience(bolt) * 1e3, 3.8239e-6, 0.00005 / 3.8239,
         "mm/N");
  record("I12", source, "stiffness, hexagon screw and nut", 1e-3 / bolt_resilience(bolt), 261511, 2e-6, "N/mm");
}

} // namespace bedbow::verification
