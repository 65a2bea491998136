#include "io/case/case_reader.h"
#include "solver/analysis.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace bedbow {

namespace {

std::string quoted(double value, const std::string& unit) {
  return "\"" + std::to_string(value) + " " + unit + "\"";
}

std::string bed_bar(const std::string& name, double width, double height, double y, double z,
                    const std::string& model = "beam") {
  return "[[bed.bar]]\nname = \"" + name + "\"\nshape = \"rectangle\"\nwidth = " + quoted(width, "mm") +
         "\nheight = " + quoted(height, "mm") + "\nat = [" + quoted(y, "mm") + ", " + quoted(z, "mm") +
         "]\nmodel = \"" + model + "\"\n";
}

std::string stand(const std::string& bar, double x, double y, const std::string& holds) {
  return "[[support]]\nbar = \"bed." + bar + "\"\nx = " + quoted(x, "mm") + "\ny = " + quoted(y, "mm") + "\nholds = [" +
         holds + "]\n";
}

/// Ends of a bed of a length, its bar on supports that let it bend.
std::string stands(const std::string& bar, double from, double to, double y) {
  return stand(bar, from, y, R"("x", "y", "z", "rx")") + stand(bar, to, y, R"("y", "z", "rx")");
}

std::string press(const std::string& bar, double x, double y, double z, double newton) {
  return "[[load]]\non = \"bed." + bar + "\"\nat = [" + quoted(x, "mm") + ", " + quoted(y, "mm") + ", " +
         quoted(z, "mm") + "]\nforce = [\"0 N\", \"0 N\", " + quoted(-newton, "N") + "]\n";
}

Findings solve(double length, double size, const std::string& bars, bool bracket = false) {
  static const Registries registries = builtin_registries();
  const std::string text = "[bed]\nlength = " + quoted(length, "mm") + "\nmaterial = \"S275JR\"\n" + bars +
                           "[solve]\nelement_size = " + quoted(size, "mm") + "\n";
  Findings f = analyse(read_case_text(text, registries).machine, registries, {.fields = false, .slip_bounds = bracket});
  EXPECT_EQ(f.status, Status::ok) << f.trouble;
  return f;
}

const BarResult& bar_of(const Findings& f, const std::string& name) {
  const auto& bars = f.steps.at(0).bars;
  const auto found = std::ranges::find(bars, name, &BarResult::name);
  EXPECT_NE(found, bars.end()) << name;
  return *found;
}

} // namespace

// Averaging must not make an ordinary beam look stronger: a bar by itself keeps M c/I to the last digits.
TEST(JudgedStress, ASingleBarHasTheStressOfBeamTheory) {
  const Findings f =
      solve(1000, 15, bed_bar("only", 20, 60, 10, -30) + stands("only", 0, 1000, 10) + press("only", 500, 10, 0, 3000));
  const BarResult& bar = bar_of(f, "bed.only");
  const double sigma = 3000 * 1.0 / 4 / (0.02 * 0.06 * 0.06 / 6);
  EXPECT_NEAR(bar.stress, sigma, 1e-3 * sigma); // with the shear stress beside the force
  EXPECT_NEAR(bar.sigma, sigma, 1e-9 * sigma);
  EXPECT_EQ(bar.peak_stress, bar.stress);
  EXPECT_EQ(bar.peak_x, bar.at_x);
}

// Two bars welded on each other are one bar of twice the height. On the far side of a force elasticity gives the stress
// of the moment F L/4 - F h/(3 pi); theory/validity.md.
TEST(JudgedStress, AWeldedBarHasTheStressOfElasticityOppositeToAForce) {
  for (const double size : {15.0, 5.0, 2.0}) {
    const Findings f = solve(600, size,
                             bed_bar("upper", 80, 20, 40, -10) + bed_bar("lower", 80, 20, 40, -30) +
                                 "[[weld]]\njoins = [\"bed.upper\", \"bed.lower\"]\n" + stands("lower", 0, 600, 40) +
                                 press("upper", 300, 40, 0, 10000));
    const double moment = 10000 * (0.6 / 4 - 0.04 / (3 * std::numbers::pi));
    const double sigma = moment / (0.08 * 0.04 * 0.04 / 6);
    EXPECT_NEAR(bar_of(f, "bed.lower").sigma, sigma, 0.01 * sigma) << size;
  }
}

// Of a force on one of two welded bars that bar alone carried everything over one element: its stress rose from 9.7 to
// 123 MPa between elements of 15 and 1.25 mm, and the verdict with it.
TEST(JudgedStress, OfWeldedBarsDoesNotFollowTheMesh) {
  const auto tail = [](double size) {
    return solve(1000, size,
                 bed_bar("flat", 240, 20, 120, 10) + bed_bar("rib", 20, 60, 40, -30) +
                     "[[weld]]\njoins = [\"bed.flat\", \"bed.rib\"]\n" + stands("rib", 50, 950, 40) +
                     press("flat", 300, 200, 20, 20000) + press("flat", 990, 200, 20, 20000));
  };
  const Findings coarse = tail(15);
  for (const double size : {5.0, 2.0}) {
    const Findings fine = tail(size);
    for (const std::string name : {"bed.flat", "bed.rib"}) {
      EXPECT_NEAR(bar_of(fine, name).stress / bar_of(coarse, name).stress, 1, 0.05) << name << " " << size;
      EXPECT_GE(bar_of(fine, name).peak_stress, bar_of(fine, name).stress) << name << " " << size;
    }
  }
}

// Rows of screws without slip are solved as welds: the upper bound of stress followed the mesh likewise.
TEST(JudgedStress, OfScrewsWithoutSlipDoesNotFollowTheMesh) {
  const auto bound = [](double size) {
    const Findings f =
        solve(1000, size,
              bed_bar("flat", 240, 20, 120, 10) + bed_bar("rib", 20, 60, 40, -30) +
                  "[[screws]]\njoins = [\"bed.flat\", \"bed.rib\"]\nsize = \"M8\"\nclass = "
                  "\"10.9\"\nfirst = \"25 mm\"\npitch = \"50 mm\"\n" +
                  stands("rib", 50, 950, 40) + press("flat", 300, 200, 20, 20000) + press("flat", 990, 200, 20, 20000),
              true);
    return f.slip_bounds.value().no_slip.steps.at(0).stress;
  };
  const double coarse = bound(15);
  for (const double size : {5.0, 2.0}) EXPECT_NEAR(bound(size) / coarse, 1, 0.05) << size;
}

// Whichever end of a machine its bars are numbered from, the same stress is judged: windows are cut off at both ends.
TEST(JudgedStress, AMirroredBedHasTheSame) {
  const auto bed = [](bool mirrored) {
    const auto x = [&](double at) { return mirrored ? 1000 - at : at; };
    const double from = mirrored ? 0 : 200, to = mirrored ? 800 : 1000;
    return solve(1000, 15,
                 bed_bar("flat", 100, 10, 50, 5) + bed_bar("rib", 20, 80, 40, -40) +
                     "[[weld]]\njoins = [\"bed.flat\", \"bed.rib\"]\nfrom = " + quoted(from, "mm") +
                     "\nto = " + quoted(to, "mm") + "\n" + stand("rib", x(250), 40, R"("x", "y", "z", "rx")") +
                     stand("rib", x(950), 40, R"("y", "z", "rx")") + press("flat", x(330), 85, 10, 5000) +
                     press("flat", x(990), 85, 10, 5000));
  };
  const Findings one = bed(false), other = bed(true);
  for (const std::string name : {"bed.flat", "bed.rib"}) {
    const BarResult &a = bar_of(one, name), &b = bar_of(other, name);
    EXPECT_NEAR(b.stress / a.stress, 1, 1e-7) << name;
    EXPECT_NEAR(b.peak_stress / a.peak_stress, 1, 1e-7) << name;
    EXPECT_NEAR(b.at_x, 1 - a.at_x, 1e-9) << name;
  }
}

// The moment under a point force on a plate grows by 0.07 F with every halving of the elements, and with it the peak.
TEST(JudgedStress, OfPlatesDoesNotFollowTheMesh) {
  const auto plate = [](double size) {
    return solve(600, size,
                 bed_bar("flat", 120, 20, 60, -10, "plate") + stands("flat", 0, 600, 60) +
                     press("flat", 300, 100, 0, 10000));
  };
  const BarResult coarse = bar_of(plate(10), "bed.flat"), fine = bar_of(plate(5), "bed.flat");
  EXPECT_NEAR(fine.stress / coarse.stress, 1, 0.05);
  EXPECT_GT(fine.peak_stress / coarse.peak_stress, fine.stress / coarse.stress);
}

} // namespace bedbow
