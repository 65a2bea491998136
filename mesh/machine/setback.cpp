#include "mesh/machine/setback.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

constexpr double right_angle = std::numbers::pi / 2;

double least_at(const Machine& m, double angle) {
  return least_setback(m.sheet->thickness, m.sheet->inside_radius, m.nose.radius, angle);
}

} // namespace

double least_setback(double thickness, double inside_radius, double nose_radius, double angle) {
  return (thickness + std::max(inside_radius, nose_radius)) * std::tan(angle / 2) - nose_radius;
}

double greatest_angle(const Machine& m) {
  if (!m.sheet) return 0;
  double greatest = m.sheet->angle;
  if (m.solve.angles)
    for (const double angle : *m.solve.angles) greatest = std::fmax(greatest, angle);
  return std::min(greatest, steepest_bend);
}

double default_setback(const Machine& m) {
  return m.sheet ? least_at(m, std::max(right_angle, greatest_angle(m))) : 0;
}

double required_setback(const Machine& m, double springback) {
  const double wanted = greatest_angle(m);
  const double swung = std::max(wanted, m.sheet->angle + springback);
  return least_at(m, std::min(swung, std::max(right_angle, wanted)));
}

} // namespace bedbow
