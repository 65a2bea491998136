// A uniformly loaded bar on two supports: where they must stand, and how much it bows. The bar is a bed of its own, the
// uniform load is what a sheet over its whole length passes to it, so that the program's own straightness and bow of
// the bed are what is measured.
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace bedbow::verification {
namespace {

constexpr double L = 1000;
// Derived from the closed form below, to more digits than are printed: theinfolist.com/html/ALL/s/B/Bessel_Points.html.
constexpr const char* least_sag = "middle and ends level (derived); 0.5536 in Wikipedia, Bessel points";
constexpr const char* zero_sag = "middle level with the supports (derived); 0.5228 in Wikipedia, Bessel points";
// curioustab.com/ensure-hogging-bending-moment-two-points-suspension-pile-67968
constexpr const char* lifting = "c = (sqrt(2) - 1)/2 L (derived); lifting points of piles, 0.207 L, in curioustab.com";

/// A clamp on springs so soft that the bend lifts it off the whole sheet: the bed then feels the grip's pressure alone.
const std::string soft_clamp =
    R"([clamp]
length = "1000 mm"
material = "sample"
nose = { setback = "1 mm", land = "10 mm" }
[[clamp.bar]]
name = "nose"
shape = "round"
diameter = "50 mm"
at = ["5 mm", "27 mm"]
[[tie]]
joins = ["clamp.nose", "ground"]
x = "0 mm"
holds = ["x", "y", "z", "rx"]
stiffness = "2 kN/mm"
[[tie]]
joins = ["clamp.nose", "ground"]
x = "1000 mm"
holds = ["y", "z"]
stiffness = "2 kN/mm"
)";

/// The bar on supports s apart, bent sheet over its whole length, that does not rub; its centroid lies where the grip
/// presses, so that it does not twist. (The force of nothing in the middle makes a station there.)
std::string supported_at(double s) {
  return slender_bar(R"([material.blank]
E = "205 GPa"
nu = 0.3
yield = "250 MPa"
[sheet]
material = "blank"
thickness = "2 mm"
width = "1000 mm"
centre = "500 mm"
flange = "20 mm"
inside_radius = "2 mm"
angle = "20 deg"
grip = "9 mm"
friction = 0
)" + soft_clamp + support("left", (L - s) / 2, "\"x\", \"y\", \"z\", \"rx\"") +
                     support("right", (L + s) / 2, "\"y\", \"z\", \"rx\"") + dial_at("end", 0) + dial_at("mid", L / 2) +
                     force_at(L / 2, 0) + R"([solve]
angles = ["0 deg"]
element_size = "10 mm"
)");
}

/// Straightness zone or bow of the bed over q L^4/EI.
struct Bent {
  Findings found;
  double unit; ///< q L^4/EI [mm]
  explicit Bent(double s)
      : found(solved(supported_at(s * L)))
      , unit(found.sheet->grip * 1e-3 * std::pow(L, 4) / sample_EI) {
    for (const bool off : found.steps.at(1).bend_line.lifted) EXPECT_TRUE(off);
    for (const double reserve : found.steps.at(1).bend_line.clamp_reserve) EXPECT_EQ(reserve, 0);
  }
  [[nodiscard]] double zone() const { return found.steps.at(1).bow.straightness[0] * 1e3 / unit; }
  [[nodiscard]] double bowed() const { return found.steps.at(1).bow.bow[0] * 1e3 / unit; }
  /// Upward movement there, over q L^4/EI.
  [[nodiscard]] double at(const std::string& name) const { return dial(found, name, 1).z() / unit; }
};

/// Least of a function with one valley, by golden sections. \return where.
double golden(const std::function<double(double)>& f, double a, double b, double width) {
  const double ratio = (std::sqrt(5.0) - 1) / 2;
  double x1 = b - ratio * (b - a), x2 = a + ratio * (b - a), f1 = f(x1), f2 = f(x2);
  while (b - a > width) {
    if (f1 < f2) {
      b = x2, x2 = x1, f2 = f1;
      x1 = b - ratio * (b - a), f1 = f(x1);
    } else {
      a = x1, x1 = x2, f1 = f2;
      x2 = a + ratio * (b - a), f2 = f(x2);
    }
  }
  return (a + b) / 2;
}

/// Deflection (down) of the same bar in closed form, Euler and Bernoulli, over q L^4/EI; x and s over L, from the end.
double deflection(double x, double s) {
  const double c = (1 - s) / 2;
  // EI w'''' = q with moments q x^2/2 from the free end and the support's half weight; w = 0 at the supports, even.
  const auto raw = [&](double t) {
    const double over = std::max(t - c, 0.0);
    return t * t * t * t / 24 - over * over * over / 12;
  };
  const double slope = -(1.0 / 48 - (0.5 - c) * (0.5 - c) / 4); // level in the middle
  x = std::min(x, 1 - x);
  return raw(x) + slope * x - raw(c) - slope * c;
}

TEST(SupportPoints, AiryHasLevelEnds) {
  const std::string source = "Airy 1846";
  const Bent b(1 / std::sqrt(3.0));
  record("A20", source, "peak to valley over q L^4/EI", b.zone(), 5.9948e-4, 1e-5);
  record("A20", source, "middle below the supports", -b.at("mid"), 5.164e-4, 1e-4);
  record("A20", source, "ends below the supports", -b.at("end"), -8.310e-5, 1e-4);
  const BarField& bar = field(b.found, "bed.bar", 1);
  record("A20", source, "slope at the ends over q L^3/EI", bar.motion.front()[4] / (b.unit / L), 0, 1e-9);
}

TEST(SupportPoints, NamedSpacings) {
  struct Row {
    const char *id, *source, *name;
    double spacing, zone;
  };
  const Row rows[] = {
      {"A21", "F.W. Bessel", "Bessel points", 0.559380, 3.3131e-4},
      {"A22", least_sag, "least sag", 0.553702, 2.7040e-4},
      {"A23", zero_sag, "middle level with the supports", 0.522774, 8.0895e-4},
      {"A24", lifting, "equal peak moments", std::sqrt(2.0) * -1 + 2, 8.1695e-4},
      {"A26", "Roark, Table 8.1", "supports at the ends", 1, 5.0 / 384},
  };
  for (const Row& r : rows) // the spacing has six digits; the zone's slope over the spacing is up to 0.03
    record(r.id, r.source, std::string("peak to valley over q L^4/EI, ") + r.name, Bent(r.spacing).zone(), r.zone,
           1e-4);
}

TEST(SupportPoints, EqualPeakMoments) {
  const double s = 2 - std::sqrt(2.0);
  const Bent b(s);
  const double q = b.found.sheet->grip * 1e-3; // N/mm
  const BarField& bar = field(b.found, "bed.bar", 1);
  const double over = forces_at(bar, (1 - s) / 2).My * 1e3, middle = forces_at(bar, 0.5).My * 1e3;
  record("A24", lifting, "moment over a support over q L^2", std::abs(over) / (q * L * L), 0.021447, 3e-5);
  record("A24", lifting, "moment in the middle over that", middle / over, -1, 1e-9);
}

TEST(SupportPoints, MiddleLevelWithSupports) {
  record("A23", zero_sag, "middle over the zone at s = 0.522774 L", Bent(0.522774).at("mid") / 8.0895e-4, 0, 1e-4);
}

// The job in small: solve over and over, move the supports, keep what bows least.
TEST(SupportPoints, LeastStraightnessZoneFoundBySolving) {
  const double best = golden([](double s) { return Bent(s).zone(); }, 0.4, 0.7, 1e-5);
  record("A22", least_sag, "spacing of least straightness zone over L", best, 0.553702, 2e-5);
  record("A22", "derived", "that zone over q L^4/EI", Bent(best).zone(), 2.7040e-4, 3e-4);
}

// Bow is measured from the chord between the ends, and another spacing makes that least.
TEST(SupportPoints, LeastBowIsAnotherPlace) {
  const auto closed = [](double s) {
    double most = 0;
    for (int i = 0; i <= 2000; ++i) most = std::max(most, std::abs(deflection(i / 2000.0, s) - deflection(0, s)));
    return most;
  };
  const double reference = golden(closed, 0.4, 0.7, 1e-8);
  const double best = golden([](double s) { return Bent(s).bowed(); }, 0.4, 0.7, 1e-5);
  EXPECT_GT(std::abs(reference - 0.553702), 1e-3) << "the two optima are different places";
  record("", "closed form of the uniformly loaded bar, minimised", "spacing of least bow from the end chord over L",
         best, reference, 2e-5);
  record("", "closed form of the uniformly loaded bar, minimised", "that bow over q L^4/EI", Bent(best).bowed(),
         closed(reference), 3e-4);
}

TEST(SupportPoints, NodesOfTheFirstFreeMode) {
  // A bar hung at the nodes of its first free mode. Near the least zone, and no better.
  record(
      "A25", "closed form at s = 0.551685 L; nodes 0.5516 L apart: Wikipedia, Bessel points",
      "peak to valley over q L^4/EI", Bent(0.551685).zone(),
      [] {
        double least = 0, most = 0;
        for (int i = 0; i <= 4000; ++i) {
          const double w = deflection(i / 4000.0, 0.551685);
          least = std::min(least, w), most = std::max(most, w);
        }
        return most - least;
      }(),
      1e-4);
}

// Airy's n supports that share the weight equally, b = L / sqrt(n^2 - 1) apart, leave the ends level: the integral of
// the moment is q L (sum x_i^2 / (2 n) - L^2 / 24), and sum x_i^2 = b^2 n (n^2 - 1) / 12. Equal shares come from the
// case as forces, so the bar hangs in space but for what stops its free movement.
TEST(SupportPoints, AiryWithManySupports) {
  for (int n = 2; n <= 6; ++n) {
    const double b = L / std::sqrt(n * n - 1.0);
    std::string text = uniform_load(L, -1);
    for (int i = 0; i < n; ++i) text += force_at(L / 2 + b * (i - (n - 1) / 2.0), L / n);
    text += support("middle", L / 2, "\"x\", \"y\", \"z\", \"rx\", \"ry\", \"rz\"");
    const Findings f = solved(slender_bar(text));
    const BarField& bar = field(f, "bed.bar");
    const double scale = std::pow(L, 3) / sample_EI;
    record("A27", "Airy 1846, b = L/sqrt(n^2 - 1): the moments add up to 0 (derived)",
           "slope at the end over q L^3/EI, n = " + std::to_string(n), bar.motion.front()[4] / scale, 0, 1e-9);
  }
}

} // namespace
} // namespace bedbow::verification
