// Requirements of a sheet moment law.
#include "solver/conformance/conformance.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

/// A mild sheet steel; round values, not from a standard.
Material sample_material() {
  Material m;
  m.name = "sample";
  m.E = 210e9;
  m.nu = 0.3;
  m.G = 81e9;
  m.yield = 200e6;
  m.tensile = 320e6;
  m.K = 520e6;
  m.n = 0.23;
  return m;
}

Sheet sample_sheet(double thickness, double width) {
  Sheet s;
  s.thickness = thickness;
  s.width = width;
  s.flange = 0.025;
  s.inside_radius = 0.002;
  s.angle = std::numbers::pi / 2;
  s.grip = 0.015;
  return s;
}

} // namespace

Conformance check_law(const MomentLawEntry& law) {
  Conformance out;
  const Material m = sample_material();
  double weakest = INFINITY, strongest = 0, width = 0, repeat = 0, growth = INFINITY, before = NAN;
  for (const double mm : {1.0, 1.25, 1.5, 1.75, 2.0}) {
    const double t = mm * 1e-3;
    const double moment = law.moment(sample_sheet(t, 0.5), m);
    repeat = std::max(repeat, std::abs(law.moment(sample_sheet(t, 0.5), m) - moment));
    width = std::max(width, std::abs(law.moment(sample_sheet(t, 1), m) / moment - 1));
    weakest = std::min(weakest, moment / (m.yield / 2 * t * t / 6));
    strongest = std::max(strongest, moment / (m.tensile * t * t / 4));
    if (!std::isnan(before)) growth = std::min(growth, moment / before);
    before = moment;
  }
  out.at_most("repeatable", repeat, 0);
  out.at_most("per width: independent of the width", width, 1e-9);
  out.at_least("grows with thickness: least ratio of neighbours", growth, 1);
  out.at_least("over first yield at half the yield strength", weakest, 1);
  out.at_most("over the plastic moment of the tensile strength", strongest, 3);
  return out;
}

} // namespace bedbow
