/// \file
/// Properties of an outline by Green's theorem: a way to areas and moments of inertia that no shape maker goes.
#pragma once

#include "mesh/piece/section.h"

namespace bedbow::testing {

struct Moments {
  double A = 0, Sy = 0, Sz = 0, Iyy = 0, Izz = 0, Iyz = 0;
};

/// Area and moments about the origin: outside loop less holes. Sy = integral y dA, Sz = integral z dA.
inline Moments outline_moments(const Outline& outline) {
  Moments total;
  for (std::size_t l = 0; l < outline.size(); ++l) {
    Moments m;
    const auto& loop = outline[l];
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const auto& p = loop[i];
      const auto& q = loop[(i + 1) % loop.size()];
      const double cross = p.x() * q.y() - q.x() * p.y();
      m.A += cross / 2;
      m.Sy += cross * (p.x() + q.x()) / 6;
      m.Sz += cross * (p.y() + q.y()) / 6;
      m.Iyy += cross * (p.y() * p.y() + p.y() * q.y() + q.y() * q.y()) / 12;
      m.Izz += cross * (p.x() * p.x() + p.x() * q.x() + q.x() * q.x()) / 12;
      m.Iyz += cross * (p.x() * q.y() + 2 * p.x() * p.y() + 2 * q.x() * q.y() + q.x() * p.y()) / 24;
    }
    const double sign = l == 0 ? 1 : -1;
    total.A += sign * m.A;
    total.Sy += sign * m.Sy;
    total.Sz += sign * m.Sz;
    total.Iyy += sign * m.Iyy;
    total.Izz += sign * m.Izz;
    total.Iyz += sign * m.Iyz;
  }
  return total;
}

} // namespace bedbow::testing
