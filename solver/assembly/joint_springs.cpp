#include "solver/assembly/joint_springs.h"

#include "mesh/machine/frame.h"

#include <cmath>

namespace bedbow {

JointSprings::JointSprings(const Mesh& mesh, const DofMap& map)
    : plane_(map.plane)
    , sides_(mesh.joints.size()) {
  for (std::size_t i = 0; i < mesh.joints.size(); ++i) {
    const Joint& j = mesh.joints[i];
    if (is_bonded(j) || j.between) continue;
    add_side(mesh, map, j, j.a, sides_[i][0]);
    add_side(mesh, map, j, j.b, sides_[i][1]);
  }
}

int JointSprings::add(DisplacementFunctional f) {
  functionals_.push_back(std::move(f));
  return static_cast<int>(functionals_.size()) - 1;
}

void JointSprings::add_side(const Mesh& mesh, const DofMap& map, const Joint& j, const Place& place, Side& side) {
  if (place.ground()) return;
  side.apron = place.frame == Frame::apron;
  std::array<bool, 6> wanted{};
  for (int k = 0; k < 6; ++k) {
    if (j.stiffness[k] == 0) continue;
    const int base = k < 3 ? 0 : 3;
    const bool own_axes = !j.axes.isIdentity(0);
    for (int a = 0; a < 3; ++a) {
      const bool mixes = own_axes ? j.axes(k % 3, a) != 0 : a == k % 3;
      // Places that turn with the apron mix its y and z.
      const bool turned = side.apron && !plane_ && k % 3 != 0 && a != 0;
      if (mixes || turned) wanted[base + a] = true;
    }
  }
  for (int k = 0; k < 6; ++k) {
    if (!wanted[k] || !moves(plane_, k)) continue;
    const Eigen::Vector3d d = Eigen::Vector3d::Unit(k % 3);
    side.of[k] = add(k < 3 ? translation_of(mesh, map, place, d) : rotation_of(mesh, map, place, d));
  }
}

void JointSprings::side_terms(const Side& side, const Eigen::Vector3d& direction, bool rotation, double sign,
                              JointSpring& row) const {
  for (int a = 0; a < 3; ++a) {
    const int f = side.of[(rotation ? 3 : 0) + a];
    if (f >= 0 && direction[a] != 0) row.terms.add(f, sign * direction[a]);
  }
}

std::vector<JointSpring> JointSprings::rows(const Mesh& mesh, double angle) const {
  const Eigen::Matrix3d turn = apron_turn(angle);
  std::vector<JointSpring> out;
  for (std::size_t i = 0; i < mesh.joints.size(); ++i) {
    const Joint& j = mesh.joints[i];
    if (is_bonded(j)) continue;
    // The joints whose functionals the row takes, with their shares.
    std::array<std::pair<std::size_t, double>, 2> of{{{i, 1}, {i, 0}}};
    if (j.between)
      of = {{{static_cast<std::size_t>(j.between->front), 1 - j.between->fraction},
             {static_cast<std::size_t>(j.between->rear), j.between->fraction}}};
    const Side& a = sides_[of[0].first][0];
    const Side& b = sides_[of[0].first][1];
    for (int k = 0; k < 6; ++k) {
      if (j.stiffness[k] == 0) continue;
      const bool rotation = k >= 3;
      const Eigen::Vector3d d = j.axes.row(k % 3);
      // A joint between two parts of the apron uses its axes; any other joint uses global axes.
      const bool both_apron = a.apron && b.apron;
      const auto own = [&](const Side& s) -> Eigen::Vector3d {
        if (plane_) // in the plane the apron only tilts: the normal's component along z is cos(angle)
          return a.apron == b.apron || s.apron || k % 3 == 0 ? d : Eigen::Vector3d(d * turn(2, 2));
        return s.apron && !both_apron ? Eigen::Vector3d(turn.transpose() * d) : d;
      };
      JointSpring row;
      for (const auto& [joint, share] : of) {
        if (share == 0) continue;
        side_terms(sides_[joint][0], own(a), rotation, -share, row);
        side_terms(sides_[joint][1], own(b), rotation, share, row);
      }
      if (row.terms.empty()) continue; // a degree of freedom that does not exist in the plane
      row.joint = static_cast<int>(i);
      row.direction = k;
      row.compliance = std::isinf(j.stiffness[k]) ? 0 : 1 / j.stiffness[k];
      row.sense = j.sense[k];
      row.gap = j.gap[k];
      out.push_back(row);
    }
  }
  return out;
}

} // namespace bedbow
