// Bars of a body that touch without weld or screws: compression-only contact.
#include "mesh/build/mesh_builder.h"
#include "mesh/build/places.h"
#include "mesh/build/stations.h"

#include <algorithm>
#include <cmath>

namespace bedbow::mesher {

namespace {

/// Faces nearer to each other than a thousandth of a millimetre touch.
constexpr double touching = 1e-6;

/// Two faces that lie on each other.
struct Face {
  Ref lower, upper;     ///< along the normal
  int normal = 2;       ///< Dof: 1 (y) or 2 (z)
  double at = 0;        ///< coordinate of the face along the normal [m]
  double from = 0;      ///< extent across the normal [m]
  double to = 0;        ///< likewise
  double stiffness = 0; ///< per area: half of either bar's depth as a column [N/m^3]
};

bool screwed_or_welded(const Machine& m, const Ref& a, const Ref& b) {
  const auto joins = [&](const JointBase& j) {
    return (j.joins[0] == a && j.joins[1] == b) || (j.joins[0] == b && j.joins[1] == a);
  };
  return std::ranges::any_of(m.screws, joins) || std::ranges::any_of(m.welds, joins);
}

/// A half of the bar's depth as a column, per area [m^3/N].
double give(const Builder& b, const Ref& r, int k) {
  const BarBox box = box_of(b.machine, b.mesh, r);
  return (box.upper[k] - box.lower[k]) / 2 / b.material(b.machine.bar(r).material).E;
}

std::optional<Face> face_between(const Builder& b, const Ref& one, const Ref& other) {
  const BarBox p = box_of(b.machine, b.mesh, one);
  const BarBox q = box_of(b.machine, b.mesh, other);
  for (int k = 0; k < 2; ++k) {
    Face f;
    f.normal = k + 1;
    f.from = std::max(p.lower[1 - k], q.lower[1 - k]);
    f.to = std::min(p.upper[1 - k], q.upper[1 - k]);
    if (f.to - f.from <= touching) continue;
    const bool one_below = std::abs(p.upper[k] - q.lower[k]) <= touching;
    if (!one_below && std::abs(q.upper[k] - p.lower[k]) > touching) continue;
    f.lower = one_below ? one : other;
    f.upper = one_below ? other : one;
    f.at = one_below ? p.upper[k] : q.upper[k];
    f.stiffness = 1 / (give(b, one, k) + give(b, other, k));
    return f;
  }
  return std::nullopt;
}

/// A row of springs along each edge of the face, so that the upper bar may tip about either.
void add_springs(Builder& b, const Face& f) {
  const Bar& lower = b.machine.bar(f.lower);
  const Bar& upper = b.machine.bar(f.upper);
  std::vector<double> x;
  for (double s : b.mesh.stations)
    if (s >= std::max(lower.start, upper.start) - same_place && s <= std::min(lower.end(), upper.end()) + same_place)
      x.push_back(s);
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double length = ((i + 1 < x.size() ? x[i + 1] : x[i]) - (i > 0 ? x[i - 1] : x[i])) / 2;
    if (length <= 0) continue;
    for (const double across : {f.from, f.to}) {
      Eigen::Vector3d at(x[i], across, across);
      at[f.normal] = f.at;
      Joint j;
      j.kind = JointKind::pressure;
      j.name = b.machine.name_of(f.upper) + " on " + b.machine.name_of(f.lower);
      j.a = place_on_bar(b.machine, b.mesh, f.lower, at);
      j.b = place_on_bar(b.machine, b.mesh, f.upper, at);
      j.stiffness[static_cast<std::size_t>(f.normal)] = f.stiffness * (f.to - f.from) / 2 * length;
      j.sense[static_cast<std::size_t>(f.normal)] = UnilateralType::compression;
      j.tributary = length;
      b.mesh.joints.push_back(std::move(j));
    }
  }
}

} // namespace

void mesh_contacts(Builder& b) {
  for (const Body& body : b.machine.bodies)
    for (std::size_t i = 0; i < body.bars.size(); ++i)
      for (std::size_t k = i + 1; k < body.bars.size(); ++k) {
        const Ref one{Ref::Kind::bar, body.kind, static_cast<int>(i)};
        const Ref other{Ref::Kind::bar, body.kind, static_cast<int>(k)};
        if (screwed_or_welded(b.machine, one, other)) continue;
        if (const auto face = face_between(b, one, other)) add_springs(b, *face);
      }
}

} // namespace bedbow::mesher
