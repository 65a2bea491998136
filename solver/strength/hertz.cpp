#include "solver/strength/hertz.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace bedbow {

namespace {
// Greatest of s - s^2/sqrt(1 + s^2): where its slope is zero, s = 0.78615.
constexpr double worst_depth = 0.7861514, worst_shear = 0.3002831;
} // namespace

LineContact line_contact(double per_length, const ContactBody& one, const ContactBody& other) {
  using std::numbers::pi;
  const double curvature = 1 / one.radius + 1 / other.radius;
  if (!(curvature > 0))
    throw std::invalid_argument("line contact: the radii must make the bodies touch along a line, 1/R1 + 1/R2 > 0");
  if (!(one.E > 0) || !(other.E > 0))
    throw std::invalid_argument("line contact: Young's modulus of both bodies must be greater than 0");
  LineContact out;
  out.modulus = 1 / ((1 - one.nu * one.nu) / one.E + (1 - other.nu * other.nu) / other.E);
  out.half_width = std::sqrt(4 * per_length / (pi * out.modulus * curvature));
  out.peak = std::sqrt(per_length * out.modulus * curvature / pi); // = 2 F'/(pi a), and 0 where F' is
  out.shear = worst_shear * out.peak;
  out.depth = worst_depth * out.half_width;
  return out;
}

double shear_below(const LineContact& contact, double z) {
  const double a = contact.half_width;
  return contact.peak / a * (z - z * z / std::hypot(a, z));
}

Check check_line_contact(const LineContact& contact, double yield, std::optional<double> own) {
  const Allowable first_yield{yield / (2 * worst_shear), "first yield below the surface, Hertz and Tresca"};
  return {"contact pressure", contact.peak, overridden(own, first_yield), Quantity::stress, Failure::wears};
}

} // namespace bedbow
