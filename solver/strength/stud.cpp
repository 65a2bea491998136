#include "solver/strength/stud.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace bedbow {

namespace {
using std::numbers::pi;

void require(const Stud& s) {
  if (!(s.diameter > 0) || !(s.free_length > 0))
    throw std::invalid_argument("stud: diameter and free length must be greater than 0");
}
} // namespace

double stud_moment(const Stud& stud, double offset, double tilt, bool seat_follows) {
  require(stud);
  const double EI = stud.E * pi / 64 * std::pow(stud.diameter, 4), L = stud.free_length;
  if (seat_follows) return 3 * EI * std::abs(offset) / (L * L);
  return 6 * EI * std::abs(offset) / (L * L) + 4 * EI * std::abs(tilt) / L;
}

double stud_moment(const Stud& stud, const StudEnds& ends, bool seat_follows) {
  require(stud);
  const double EI = stud.E * pi / 64 * std::pow(stud.diameter, 4), L = stud.free_length;
  std::array<double, 2> M{};
  for (std::size_t k = 0; k < 2; ++k) {
    const double offset = ends.offset[k], tilt = ends.tilt[k];
    M[k] = seat_follows ? 3 * EI * offset / (L * L) : 6 * EI * std::abs(offset) / (L * L) + EI * std::abs(tilt) / L;
  }
  return std::hypot(M[0], M[1]);
}

double stud_stress(const Stud& stud, double tension, double shear, double moment) {
  require(stud);
  const double area = pi / 4 * stud.diameter * stud.diameter, modulus = pi / 32 * std::pow(stud.diameter, 3);
  const double direct = std::abs(tension) / area;
  const double at_rim = direct + std::abs(moment) / modulus;
  const double on_axis = std::hypot(direct, std::sqrt(3.0) * 4.0 / 3 * shear / area);
  return std::max(at_rim, on_axis);
}

Check check_stud(const Stud& stud, double tension, double shear, double moment, double yield,
                 std::optional<double> own) {
  return {"stud", stud_stress(stud, tension, shear, moment), overridden(own, {yield, "yield of the stud"})};
}

} // namespace bedbow
