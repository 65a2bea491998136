#include "solver/element/shell4.h"
#include "solver/findings/results.h"
#include "solver/findings/surface_stress.h"

#include <Eigen/Geometry>

#include <map>

namespace bedbow {

namespace {

/// Resultants turned into axes whose x lies along `along` in the element's plane, so that neighbours may be averaged.
ShellResultants turned(const ShellResultants& r, double c, double s) {
  const auto turn = [&](const Eigen::Vector3d& t) {
    return Eigen::Vector3d(c * c * t[0] + s * s * t[1] + 2 * c * s * t[2],
                           s * s * t[0] + c * c * t[1] - 2 * c * s * t[2],
                           c * s * (t[1] - t[0]) + (c * c - s * s) * t[2]);
  };
  return {turn(r.n), turn(r.m), {c * r.q[0] + s * r.q[1], -s * r.q[0] + c * r.q[1]}};
}

/// Whether stress of one element may be averaged with that of another of the same owner: a part of the user's mesh may
/// have folds, steps in thickness and quads with opposite normals.
bool alike(const Model& m, const ShellElement& a, const ShellElement& b) {
  constexpr double least = 0.866; // cosine of 30 degrees; common practice, no source
  if (!(a.owner == b.owner)) return false;
  if (a.owner.kind != Ref::Kind::own) return true;
  return a.thickness == b.thickness && a.material == b.material &&
         shell_axes(corners_of(m.mesh, a)).row(2).dot(shell_axes(corners_of(m.mesh, b)).row(2)) > least;
}

/// Cosine and sine of the angle from an element's x axis to a direction, in the element's plane.
std::array<double, 2> angle_to(const Eigen::Matrix3d& axes, const Eigen::Vector3d& along) {
  const Eigen::Vector2d in_plane(axes.row(0).dot(along), axes.row(1).dot(along));
  return {in_plane.x() / in_plane.norm(), in_plane.y() / in_plane.norm()};
}

std::vector<ShellStress> recover_shells(const Model& m, const StepSolution& step, bool judged) {
  std::vector<ShellStress> out;
  std::vector<std::pair<std::size_t, std::size_t>> runs; // elements of one owner follow each other
  const bool plate_fingers = !m.mesh.fingers.empty() && m.mesh.fingers.front().plate();
  const std::size_t first_finger =
      plate_fingers ? static_cast<std::size_t>(m.mesh.fingers.front().first_element) : m.mesh.shells.size();
  for (std::size_t i = 0; i < m.mesh.shells.size(); ++i) {
    if (runs.empty() || i == first_finger || !alike(m, m.mesh.shells[runs.back().first], m.mesh.shells[i]))
      runs.emplace_back(i, i);
    runs.back().second = i + 1;
  }
  for (auto [first, last] : runs) {
    ShellStress s;
    const ShellElement& head = m.mesh.shells[first];
    s.owner = head.owner;
    s.fingers = first >= first_finger;
    s.thickness = head.thickness;
    s.material = head.material;
    const Material& material = m.machine.materials.at(head.material);
    std::map<int, int> local;
    std::vector<std::array<ShellResultants, 4>> at_corners;
    Eigen::Vector3d along = Eigen::Vector3d::Zero();
    for (std::size_t i = first; i < last; ++i) {
      const ShellElement& e = m.mesh.shells[i];
      const Corners c = corners_of(m.mesh, e);
      Vector24d u;
      for (int k = 0; k < 4; ++k) u.segment<6>(6 * k) = step.motion[e.nodes[k]];
      const Eigen::Matrix3d axes = shell_axes(c);
      if (i == first) along = axes.row(0);
      const auto [cosine, sine] = angle_to(axes, along);
      auto r = shell_corner_resultants(c, {material.E, material.nu, e.thickness, material.density}, u);
      for (ShellResultants& corner : r) corner = turned(corner, cosine, sine);
      std::array<int, 4> quad{};
      for (int k = 0; k < 4; ++k) {
        const auto [it, fresh] = local.try_emplace(e.nodes[k], static_cast<int>(s.points.size()));
        if (fresh) {
          s.points.push_back(m.mesh.nodes[e.nodes[k]].x);
          s.motion.push_back(step.motion[e.nodes[k]]);
          s.normals.emplace_back(axes.row(2));
        }
        quad[k] = it->second;
      }
      s.quads.push_back(quad);
      at_corners.push_back(r);
    }
    s.frame = m.mesh.nodes[head.nodes[0]].frame;
    fill_surface(std::move(at_corners), judged, s);
    out.push_back(std::move(s));
  }
  return out;
}

} // namespace

std::vector<ShellStress> shell_stresses(const Model& m, const StepSolution& step) {
  return recover_shells(m, step, false);
}

std::vector<ShellStress> judged_shell_stresses(const Model& m, const StepSolution& step) {
  return recover_shells(m, step, true);
}

} // namespace bedbow
