#include "solver/model/prescribed_travel.h"

#include "mesh/build/places.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

constexpr double least_arm = 0.005; // a post beside its cam is no pivot [m]

/// Effect of the cams, and their pivot.
struct Lifts {
  double most = 0;  ///< greatest magnitude of a lift [m]
  double arm = 0;   ///< shortest distance along y from a cam to its pivot [m]
  double slope = 0; ///< difference of the outermost lifts over their distance along x
};

Lifts lifts_of(const Model& m) {
  Lifts out;
  const Joint *left = nullptr, *right = nullptr;
  const auto lift = [&](const Joint& j) { return m.machine.cams[static_cast<std::size_t>(j.index)].lift; };
  for (const Joint& j : m.mesh.joints) {
    if (j.kind != JointKind::cam) continue;
    const double y = j.b.at.y();
    double arm = std::abs(y - m.machine.nose.setback - m.machine.nose.land / 2);
    for (const Joint& post : m.mesh.joints)
      if (const double to = std::abs(post.b.at.y() - y); post.kind == JointKind::post && to > least_arm)
        arm = std::min(arm, to);
    out.most = std::max(out.most, std::abs(lift(j)));
    out.arm = left ? std::min(out.arm, arm) : arm;
    if (!left || j.b.at.x() < left->b.at.x()) left = &j;
    if (!right || j.b.at.x() > right->b.at.x()) right = &j;
  }
  if (left && right->b.at.x() - left->b.at.x() > least_arm)
    out.slope = std::abs(lift(*right) - lift(*left)) / (right->b.at.x() - left->b.at.x());
  return out;
}

Travel travel_of(const Model& m, const Substructure& comp, const Lifts& lifts) {
  Eigen::AlignedBox3d box;
  for (const int n : comp.nodes) box.extend(m.mesh.nodes[n].x);
  const Eigen::Vector3d size = box.sizes();
  // A single cam, or one at one end only, also tilts the part along x.
  const double along = std::max(lifts.slope, size.x() > least_arm ? lifts.most / size.x() : 0);
  const double across = lifts.arm > least_arm ? lifts.most / lifts.arm : 0;
  return {lifts.most + across * (size.tail<2>().norm() + lifts.arm) + along * size.x(), across + along};
}

} // namespace

std::vector<Travel> prescribed_travel(const Model& m) {
  std::vector<Travel> out(m.map.substructures.size());
  const Lifts lifts = lifts_of(m);
  for (const Joint& j : m.mesh.joints) {
    if (j.kind != JointKind::cam) continue;
    for (const Place* place : {&j.a, &j.b}) {
      if (place->ground()) continue;
      const auto c = static_cast<std::size_t>(m.map.substructure[main_node(*place)]);
      out[c] = travel_of(m, m.map.substructures[c], lifts);
    }
  }
  for (const Joint& j : m.mesh.joints) // the apron may slide until a hinge's play along x is used up
    if (j.kind == JointKind::hinge && j.gap[ux] > 0) {
      double& slide = out[static_cast<std::size_t>(m.map.substructure[main_node(j.b)])].displacement;
      slide = std::max(slide, j.gap[ux]);
    }
  double shims = 0;
  for (const Body& b : m.machine.bodies)
    for (const double h : b.crown.height) shims = std::max(shims, std::abs(h));
  for (Travel& t : out) t.displacement += shims;
  return out;
}

} // namespace bedbow
