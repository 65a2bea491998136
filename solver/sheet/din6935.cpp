#include "solver/sheet/din6935.h"

#include "mesh/piece/si.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace bedbow {

namespace {

using si::degree, si::mm, si::MPa;
using std::numbers::pi;

// DIN 6935 (1975-10): thickness up to [mm], least inside radius [mm] for Rm up to 390, 490, 640 MPa.
struct RadiusRow {
  double up_to;
  std::array<double, 3> radius;
};
constexpr std::array<RadiusRow, 15> steel_radii{{{1, {1, 1.2, 1.6}},
                                                 {1.5, {1.6, 2, 2.5}},
                                                 {2.5, {2.5, 3, 4}},
                                                 {3, {3, 4, 5}},
                                                 {4, {5, 5, 6}},
                                                 {5, {6, 8, 8}},
                                                 {6, {8, 10, 10}},
                                                 {7, {10, 12, 12}},
                                                 {8, {12, 16, 16}},
                                                 {10, {16, 20, 20}},
                                                 {12, {20, 25, 25}},
                                                 {14, {25, 28, 32}},
                                                 {16, {28, 32, 36}},
                                                 {18, {36, 40, 45}},
                                                 {20, {40, 45, 50}}}};
constexpr std::array<double, 3> tensile_classes{390 * MPa, 490 * MPa, 640 * MPa};

// A value given in other units may miss its step by rounding.
constexpr double slack = 1 + 1e-9;

Allowable steel_radius(double tensile, double thickness) {
  if (tensile == 0) return {0, "DIN 6935 needs the tensile strength"};
  const auto column = std::ranges::find_if(tensile_classes, [&](double up_to) { return tensile <= up_to * slack; });
  const auto row =
      std::ranges::find_if(steel_radii, [&](const RadiusRow& r) { return thickness <= r.up_to * mm * slack; });
  if (column == tensile_classes.end()) return {0, "DIN 6935 ends at a tensile strength of 640 MPa"};
  if (row == steel_radii.end()) return {0, "DIN 6935 ends at 20 mm"};
  return {row->radius[static_cast<std::size_t>(column - tensile_classes.begin())] * mm,
          "DIN 6935 (1975-10), bend up to 120 deg across the rolling direction"};
}

Allowable aluminium_5052_radius(double thickness) {
  if (thickness > 6 * mm * slack) return {0, "EN 485-2 ends at 6 mm for this temper"};
  const double ratio = thickness <= 0.5 * mm * slack ? 0.5 : thickness <= 1.5 * mm * slack ? 1.0 : 1.5;
  return {ratio * thickness, "EN 485-2, EN AW-5052 H22/H32, 90 deg"};
}

void require_sizes(double r, double s) {
  if (!(r >= 0) || !(s > 0))
    throw std::invalid_argument("DIN 6935: the inside radius must be 0 or more and the thickness greater than 0");
}

} // namespace

double din6935_k(double r, double s) {
  require_sizes(r, s);
  if (r >= 5 * s) return 1;
  return r == 0 ? 0 : std::max(0.0, 0.65 + 0.5 * std::log10(r / s));
}

double din6935_correction(double bend, double r, double s) {
  require_sizes(r, s);
  if (!(bend >= 0) || bend > pi) throw std::invalid_argument("DIN 6935: the bend must lie between 0 and 180 deg");
  if (bend < 15 * degree) return 0; // opened wider than 165 deg
  const double tangent = bend < pi / 2 ? std::tan(bend / 2) : 1;
  return bend * (r + din6935_k(r, s) * s / 2) - 2 * (r + s) * tangent;
}

double flat_length(double a, double b, double bend, double r, double s) {
  return a + b + din6935_correction(bend, r, s);
}

Allowable least_inside_radius(const Material& material, double thickness) {
  if (material.name == "5052-H32" || material.name == "5052-H22") return aluminium_5052_radius(thickness);
  const BearingSurface kind = surface_of(material);
  if (kind == BearingSurface::steel || kind == BearingSurface::hardened_steel)
    return steel_radius(material.tensile, thickness);
  return {0, "no table for this material; ask its supplier"};
}

Allowable angle_tolerance(double shorter_leg) {
  const char* source = "DIN 6935 (from memory, low confidence)";
  constexpr std::array<std::pair<double, double>, 4> steps{{{30, 2}, {50, 1.75}, {80, 1.5}, {120, 1.25}}};
  for (const auto& [up_to, tolerance] : steps)
    if (shorter_leg <= up_to * mm * slack) return {tolerance * degree, source};
  return {1 * degree, source};
}

} // namespace bedbow
