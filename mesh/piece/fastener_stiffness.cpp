#include "mesh/piece/fastener_stiffness.h"

#include <cmath>
#include <numbers>
#include <stdexcept>
#include <string>

namespace bedbow {

namespace {

void require_positive(double value, const char* name) {
  if (!(value > 0) || !std::isfinite(value))
    throw std::invalid_argument(std::string("fastener stiffness: ") + name + " must be greater than 0");
}

void check_shear(const ShearJoint& j) {
  require_positive(j.t1, "t1");
  require_positive(j.t2, "t2");
  require_positive(j.d, "d");
  require_positive(j.E1, "E1");
  require_positive(j.E2, "E2");
  require_positive(j.E3, "E3");
  if (j.planes != 1 && j.planes != 2)
    throw std::invalid_argument("fastener stiffness: planes must be 1 (single shear) or 2 (double shear)");
}

} // namespace

double huth_flexibility(const ShearJoint& j, FastenerKind kind) {
  check_shear(j);
  double a = 2.0 / 3, b = 3;
  if (kind == FastenerKind::riveted_metal) {
    a = 2.0 / 5;
    b = 2.2;
  } else if (kind == FastenerKind::bolted_composite) {
    b = 4.2;
  }
  const double n = j.planes;
  return std::pow((j.t1 + j.t2) / (2 * j.d), a) * b / n *
         (1 / (j.t1 * j.E1) + 1 / (n * j.t2 * j.E2) + 1 / (2 * j.t1 * j.E3) + 1 / (2 * n * j.t2 * j.E3));
}

double swift_flexibility(const ShearJoint& j) {
  check_shear(j);
  return 5 / (j.d * j.E3) + 0.8 * (1 / (j.t1 * j.E1) + 1 / (j.t2 * j.E2));
}

double grumman_flexibility(const ShearJoint& j) {
  check_shear(j);
  return (j.t1 + j.t2) * (j.t1 + j.t2) / (j.E3 * std::pow(j.d, 3)) + 3.7 * (1 / (j.t1 * j.E1) + 2 / (j.t2 * j.E2));
}

double nut_resilience(const Thread& thread, bool tapped, double E) {
  const double d = thread.d, nominal = std::numbers::pi / 4 * d * d;
  return ((tapped ? 0.33 : 0.4) * d / nominal + 0.5 * d / core_area(thread)) / E;
}

double bolt_resilience(const TensionBolt& bolt) {
  require_positive(bolt.thread.d, "thread diameter");
  require_positive(bolt.E, "E");
  require_positive(bolt.shank + bolt.free_thread, "clamped length");
  const double d = bolt.thread.d, nominal = std::numbers::pi / 4 * d * d, core = core_area(bolt.thread);
  const double head = (bolt.socket_head ? 0.4 : 0.5) * d;
  return ((head + bolt.shank) / nominal + bolt.free_thread / core) / bolt.E +
         nut_resilience(bolt.thread, bolt.tapped, bolt.E);
}

} // namespace bedbow
