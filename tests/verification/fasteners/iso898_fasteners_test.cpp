#include "mesh/piece/fastener.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace bedbow::verification {

namespace {
constexpr double in2 = 0.0254 * 0.0254, ksi = 6.894757e6;

// Relative size of half of the last printed digit.
double printed(double value, double last_digit) {
  return 0.5001 * last_digit / value;
}
} // namespace

TEST(Iso898, ProofYieldTensile) {
  struct Row {
    const char *id, *grade;
    double d_mm, proof, yield, tensile;
  };
  const Row rows[] = {{"I1", "8.8", 16, 580, 640, 800},   {"I1", "8.8", 20, 600, 660, 830},
                      {"I2", "10.9", 20, 830, 940, 1040}, {"I2", "12.9", 20, 970, 1100, 1220},
                      {"I3", "4.6", 10, 225, 240, 400},   {"I3", "5.8", 10, 380, 420, 520},
                      {"I3", "6.8", 10, 440, 480, 600},   {"I3", "9.8", 10, 650, 720, 900}};
  for (const Row& r : rows) {
    const Grade g = *find_grade(r.grade, r.d_mm * 1e-3);
    const std::string of = std::string(" of ") + r.grade + ", d = " + std::to_string(static_cast<int>(r.d_mm));
    record(r.id, "ISO 898-1:2013 Table 3", "proof stress" + of, g.proof / 1e6, r.proof, 1e-12, "MPa");
    if (std::string(r.id) == "I3") continue; // only the proof stress is in the row
    record(r.id, "ISO 898-1:2013 Table 3", "Rp0.2" + of, g.yield / 1e6, r.yield, 1e-12, "MPa");
    record(r.id, "ISO 898-1:2013 Table 3", "Rm" + of, g.tensile / 1e6, r.tensile, 1e-12, "MPa");
  }
}

TEST(Iso724, StressAndCoreAreas) {
  struct Row {
    const char *id, *thread;
    double area, digit;
  };
  const Row stress[] = {{"I4", "M3", 5.03, .01},   {"I4", "M4", 8.78, .01},  {"I4", "M5", 14.18, .01},
                        {"I4", "M6", 20.12, .01},  {"I4", "M8", 36.61, .01}, {"I4", "M10", 57.99, .01},
                        {"I4", "M12", 84.27, .01}, {"I5", "M14", 115.4, .1}, {"I5", "M16", 156.7, .1},
                        {"I5", "M20", 244.8, .1},  {"I5", "M24", 352.5, .1}};
  for (const Row& r : stress)
    record(r.id, "ISO 898-1 / ISO 724", std::string("stress area of ") + r.thread,
           stress_area(*find_thread(r.thread)) * 1e6, r.area, printed(r.area, r.digit), "mm^2");
  const Row core[] = {{"I6", "M6", 17.89, .01},  {"I6", "M8", 32.84, .01}, {"I6", "M10", 52.29, .01},
                      {"I6", "M12", 76.25, .01}, {"I6", "M16", 144.1, .1}, {"I6", "M20", 225.2, .1}};
  for (const Row& r : core)
    record(r.id, "ISO 724 geometry", std::string("core area of ") + r.thread, core_area(*find_thread(r.thread)) * 1e6,
           r.area, printed(r.area, r.digit), "mm^2");
}

TEST(Iso898, ProofLoads) {
  struct Row {
    const char* thread;
    double load, digit;
  };
  for (const Row& r : {Row{"M6", 11.67, .01},
                       {"M8", 21.23, .01},
                       {"M10", 33.63, .01},
                       {"M12", 48.87, .01},
                       {"M16", 90.87, .01},
                       {"M20", 146.9, .1}}) {
    const Thread t = *find_thread(r.thread);
    record("I7", "proof stress of 8.8 x stress area", std::string("proof load of 8.8 ") + r.thread,
           proof_load(t, *find_grade("8.8", t.d)) / 1e3, r.load, printed(r.load, r.digit), "kN");
  }
}

TEST(AsmeB11, UnifiedStressAreas) {
  const std::pair<const char*, double> rows[] = {{"1/4-20", .0318}, {"5/16-18", .0524}, {"3/8-16", .0775},
                                                 {"1/2-13", .1419}, {"5/8-11", .2260},  {"3/4-10", .3345}};
  for (const auto& [thread, area] : rows)
    record("I8", "ASME B1.1, 0.7854 (D - 0.9743/n)^2, in ASTM A574, stsindustrial.com/services-resources",
           std::string("stress area of ") + thread, stress_area(*find_thread(thread)) / in2, area, printed(area, .0001),
           "in^2");
}

TEST(SaeJ429, ProofYieldTensile) {
  struct Row {
    const char *id, *source, *grade;
    double d_in, proof, yield, tensile;
    const char* of_yield = nullptr; ///< its source, where another
  };
  const char* a574 = "ASTM A574, stsindustrial.com/services-resources/fastener-specifications";
  const Row rows[] = {{"I9", "SAE J429", "SAE 2", 0.75, 55, 57, 74},
                      {"I9", "SAE J429", "SAE 5", 1, 85, 92, 120},
                      {"I9", "SAE J429", "SAE 5", 1.25, 74, 81, 105},
                      {"I9", "SAE J429", "SAE 8", 0.625, 120, 130, 150},
                      {"I10", a574, "A574", 0.5, 140, 162, 180, "ASTM A574 (from memory; the tables read have 153)"},
                      {"I10", a574, "A574", 0.625, 135, 153, 170}};
  for (const Row& r : rows) {
    const Grade g = *find_grade(r.grade, r.d_in * 0.0254);
    const std::string of = std::string(" of ") + r.grade + ", d = " + std::to_string(r.d_in).substr(0, 5) + " in";
    record(r.id, r.source, "proof" + of, g.proof / ksi, r.proof, 1e-6, "ksi");
    record(r.id, r.of_yield ? r.of_yield : r.source, "yield" + of, g.yield / ksi, r.yield, 1e-6, "ksi");
    record(r.id, r.source, "tensile" + of, g.tensile / ksi, r.tensile, 1e-6, "ksi");
  }
}

// forums.thscc.com/forum/viewtopic.php, t = 1991: pi n K (1/(2 n) + 0.57735 (E - K)) per length; the nut's threads
// alike at d.
TEST(FedStdH28, ThreadShearAreas) {
  const char* strips = "FED-STD-H28 as in Machinery's Handbook, 24th ed., at forums.thscc.com; basic sizes";
  struct Row {
    const char* thread;
    double bolt, nut;
  };
  for (const Row& r :
       {Row{"M6", 11.587, 16.493}, {"M8", 15.661, 21.991}, {"M10", 19.736, 27.489}, {"M12", 23.811, 32.987}}) {
    const ThreadShear s = thread_shear(*find_thread(r.thread));
    record("I23", strips, std::string("bolt threads of ") + r.thread, s.bolt * 1e3, r.bolt, printed(r.bolt, .001),
           "mm^2/mm");
    record("I23", strips, std::string("nut threads of ") + r.thread, s.nut * 1e3, r.nut, printed(r.nut, .001),
           "mm^2/mm");
  }
}

} // namespace bedbow::verification
