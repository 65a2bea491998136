// Bars that lie on each other unscrewed: they press, and part where nothing presses. Closed forms by beam theory
// without shear; case text in, dial out.
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace bedbow::verification {
namespace {

constexpr const char* derived = "derived: beam theory";

// Two bars of E = 210 GPa on each other, 1 m long, 40 mm wide. The lower stands on supports at both ends.
std::string two_bars(double upper, double lower, const std::string& lower_material, const std::string& rest) {
  return R"(title = "loose bars"
[material.steel]
E = "210 GPa"
G = "1e9 MPa"
[material.rock]
E = "9e5 GPa"
G = "1e9 MPa"
[bed]
length = "1000 mm"
edge = { bar = "upper" }
bar = [
{ name = "upper", material = "steel", shape = "rectangle", model = "beam", width = "40 mm", height = )" +
         mm(upper) + ", at = [\"0 mm\", " + mm(upper / 2) + "] },\n{ name = \"lower\", material = \"" + lower_material +
         "\", shape = \"rectangle\", model = \"beam\", width = \"40 mm\", height = " + mm(lower) +
         ", at = [\"0 mm\", " + mm(-lower / 2) +
         R"(] },
]
[[support]]
bar = "bed.lower"
x = "0 mm"
holds = ["x", "y", "z", "rx"]
[[support]]
bar = "bed.lower"
x = "1000 mm"
holds = ["y", "z", "rx"]
[[tie]]
joins = ["bed.upper", "ground"]
x = "500 mm"
holds = ["x", "y", "rz"]
)" + rest;
}

std::string load_along(const std::string& bar, double q) {
  return "[[load]]\non = \"bed." + bar +
         R"("
from = ["0 mm", "0 mm", "0 mm"]
to = ["1000 mm", "0 mm", "0 mm"]
per_length = ["0 N/mm", "0 N/mm", ")" +
         std::to_string(q) + " N/mm\"]\n";
}

std::string dial_on(const std::string& bar, double x) {
  return "[[dial]]\nname = \"" + std::to_string(static_cast<int>(x)) + "\"\non = \"bed." + bar + "\"\nat = [\"" +
         std::to_string(x) + " mm\", \"0 mm\", \"0 mm\"]\n";
}

/// Upward movement of the dials [mm].
std::map<std::string, double> dials_of(const std::string& text) {
  const Findings f = solved(text);
  std::map<std::string, double> out;
  if (f.steps.empty()) return out;
  EXPECT_LT(f.steps[0].checks.worst_tension, 1e-9);
  for (const DialResult& d : f.steps[0].dials) out[d.name] = d.movement.z() * 1e3;
  return out;
}

double I_of(double height) {
  return 40 * std::pow(height, 3) / 12;
}

// What lies on top is carried by both in proportion to their stiffness: the sum of EI, a quarter of a glued pair's.
TEST(LooseBars, ShareLoadAsSumOfEI) {
  const double w = dials_of(two_bars(10, 20, "steel", load_along("upper", -1) + dial_on("lower", 500)))["500"];
  record("", derived, "w mid, 10 on 20 mm, load on top", -w, 5 * 1e12 / (384 * 210e3 * (I_of(10) + I_of(20))), 1e-3,
         "mm");
}

// A load that draws the lower bar down leaves it alone: the upper one lies on its ends only and stays straight.
TEST(LooseBars, PartWhereNothingPresses) {
  auto w = dials_of(two_bars(10, 20, "steel", load_along("lower", -1) + dial_on("lower", 500)));
  record("", derived, "w mid, 10 on 20 mm, load below", -w["500"], 5 * 1e12 / (384 * 210e3 * I_of(20)), 1e-3, "mm");
  w = dials_of(two_bars(10, 20, "steel", load_along("lower", -1) + dial_on("upper", 500)));
  EXPECT_NEAR(w["500"], 0, 1e-3);
}

// A strip that lies on rock under its weight q, lifted at its end by F: it leaves the ground over a = 2F/q and rises by
// w(x) = q/EI (a x^3/12 - x^4/24 - a^3 x/12 + a^4/24).
TEST(LooseBars, LiftedEnd) {
  const double q = 0.02, F = 4, a = 2 * F / q, EI = 210e3 * I_of(5);
  const auto w = [&](double x) {
    return q / EI * (a * x * x * x / 12 - std::pow(x, 4) / 24 - a * a * a * x / 12 + std::pow(a, 4) / 24);
  };
  const std::string lift = R"([[load]]
on = "bed.upper"
at = ["0 mm", "0 mm", "2.5 mm"]
force = ["0 N", "0 N", "4 N"]
[solve]
element_size = "5 mm"
)";
  auto got = dials_of(
      two_bars(5, 100, "rock",
               load_along("upper", -q) + lift + dial_on("upper", 0) + dial_on("upper", 200) + dial_on("upper", 600)));
  // Places where it may leave the ground lie 5 mm apart: on 400 mm a shift of half of that is 4 x 0.6 %.
  record("", derived, "lift of the end", got["0"], w(0), 0.025, "mm");
  record("", derived, "lift at mid of the free length", got["200"], w(200), 0.025, "mm");
  EXPECT_NEAR(got["600"], 0, 1e-4 * got["0"]);
}

} // namespace
} // namespace bedbow::verification
