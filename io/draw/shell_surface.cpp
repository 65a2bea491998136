#include "io/draw/surface.h"

#include <Eigen/Geometry>

#include <limits>
#include <map>
#include <utility>

namespace bedbow {

namespace {

enum class Side { top, bottom };

SurfacePoint face_point(const ShellField& shell, std::size_t i, Side side) {
  const Eigen::Vector3d arm = shell.normals[i] * (side == Side::top ? shell.thickness / 2 : -shell.thickness / 2);
  const Vector6d& motion = shell.motion[i];
  SurfacePoint p;
  p.at = shell.points[i] + arm;
  p.rotation = motion.tail<3>();
  p.displacement = motion.head<3>() + p.rotation.cross(arm);
  if (i < shell.von_mises.size()) {
    p.von_mises = shell.von_mises[i][side == Side::top ? 0 : 2];
    p.von_mises_middle = shell.von_mises[i][1];
  }
  if (i < shell.principal.size()) {
    p.principal_1 = shell.principal[i][side == Side::top ? 0 : 2];
    p.principal_2 = shell.principal[i][side == Side::top ? 1 : 3];
  }
  p.utilisation = shell.yield > 0 ? p.von_mises / shell.yield : std::numeric_limits<double>::quiet_NaN();
  return p;
}

/// The quad's corners counter-clockwise as seen against its normal.
std::array<int, 4> towards_normal(const ShellField& shell, std::array<int, 4> q) {
  const auto at = [&](int i) -> const Eigen::Vector3d& {
    return shell.points[static_cast<std::size_t>(q[static_cast<std::size_t>(i)])];
  };
  const Eigen::Vector3d turn = (at(2) - at(0)).cross(at(3) - at(1));
  if (turn.dot(shell.normals[static_cast<std::size_t>(q[0])]) < 0) std::swap(q[1], q[3]);
  return q;
}

} // namespace

void add_shell(Surface& surface, const ShellField& shell) {
  if (shell.quads.empty()) return;
  const int top = static_cast<int>(surface.points.size());
  const int count = static_cast<int>(shell.points.size());
  const int bottom = top + count;
  const int first_cell = static_cast<int>(surface.cells.size());
  for (const Side side : {Side::top, Side::bottom})
    for (std::size_t i = 0; i < shell.points.size(); ++i) surface.points.push_back(face_point(shell, i, side));

  std::map<std::pair<int, int>, int> edges; // directed edges and how often they are met
  for (const auto& quad : shell.quads) {
    const auto [a, b, c, d] = towards_normal(shell, quad);
    surface.cells.push_back({top + a, top + b, top + c, top + d});
    surface.cells.push_back({bottom + d, bottom + c, bottom + b, bottom + a});
    for (const auto& edge : {std::pair(a, b), std::pair(b, c), std::pair(c, d), std::pair(d, a)}) ++edges[edge];
  }
  for (const auto& [edge, times] : edges) {
    const auto [a, b] = edge;
    if (edges.contains({b, a})) continue; // a neighbour on the other side
    surface.cells.push_back({bottom + a, bottom + b, top + b, top + a});
  }
  surface.parts.push_back(
      {shell.name, shell.body, top, 2 * count, first_cell, static_cast<int>(surface.cells.size()) - first_cell});
}

} // namespace bedbow
