#include "mesh/machine/stud_spring.h"

#include "mesh/piece/fastener_stiffness.h"

#include <cmath>
#include <numbers>

namespace bedbow {

Thread stud_thread(const Post& p) {
  return find_thread(p.thread).value_or(Thread{"", p.diameter, 0, false});
}

double stud_diameter(const Post& p) {
  return stress_diameter(stud_thread(p));
}

double stud_stiffness(const Post& p) {
  const Thread thread = stud_thread(p);
  return 1 / (p.free_length / (fastener_E * stress_area(thread)) + nut_resilience(thread, false) +
              nut_resilience(thread, std::isfinite(p.tapped)));
}

double stud_shear_stiffness(const Post& p) {
  const double I = std::numbers::pi / 64 * std::pow(stud_diameter(p), 4);
  return (p.nut == NutSeat::spherical ? 3 : 12) * fastener_E * I / std::pow(p.free_length, 3);
}

} // namespace bedbow
