#include "mesh/piece/shape/check.h"
#include "mesh/piece/shape/thin_wall.h"
#include "mesh/piece/shapes.h"

#include <algorithm>
#include <array>
#include <utility>

namespace bedbow {

namespace {

using Eigen::Vector2d;

// Rectangle of a decomposition: corner nearest the origin, and size.
struct Block {
  double y, z, width, height;
};

// Exact area and moments of inertia of blocks that share no area, moved to their centroid, which is returned.
Vector2d add_blocks(SectionProperties& p, const std::vector<Block>& blocks) {
  Vector2d first = Vector2d::Zero();
  for (const Block& k : blocks) {
    p.A += k.width * k.height;
    first += k.width * k.height * Vector2d(k.y + k.width / 2, k.z + k.height / 2);
  }
  const Vector2d centroid = first / p.A;
  for (const Block& k : blocks) {
    const double area = k.width * k.height;
    const Vector2d m = Vector2d(k.y + k.width / 2, k.z + k.height / 2) - centroid;
    p.Iyy += area * (m.y() * m.y() + k.height * k.height / 12);
    p.Izz += area * (m.x() * m.x() + k.width * k.width / 12);
    p.Iyz += area * m.x() * m.y();
  }
  return centroid;
}

// Both faces of each wall at its two ends and its middle. Free ends and corners are extended by half a wall, so that
// the bending stress is that of the actual corner. Open torsion: T t / J along each face.
std::vector<StressPoint> stress_points(const ThinWall& wall, const Vector2d& centroid) {
  const auto& nodes = wall.path.nodes;
  const double t = wall.path.thickness;
  std::vector<StressPoint> out;
  for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
    const Vector2d along = (nodes[i + 1] - nodes[i]).normalized(), normal(-along.y(), along.x());
    for (const double s : {0.0, 0.5, 1.0})
      for (const double face : {-1.0, 1.0}) {
        const bool free_end = (i == 0 && s == 0) || (i + 2 == nodes.size() && s == 1);
        const double beyond = s == 0.5 || free_end ? 0 : (s == 0 ? -t / 2 : t / 2);
        const Vector2d at =
            nodes[i] + s * (nodes[i + 1] - nodes[i]) + beyond * along + face * t / 2 * normal - centroid;
        const Vector2d q = shear_flow(wall, i, s);
        StressPoint p;
        p.y = at.x();
        p.z = at.y();
        p.tau_Vy = q.x() / t * along;
        p.tau_Vz = q.y() / t * along;
        p.tau_T = face * t / wall.J * Vector2d(-normal.y(), normal.x());
        out.push_back(p);
      }
  }
  return out;
}

// \param loop outline and \param blocks in the path's axes.
Section open_section(const WallPath& path, const std::vector<Block>& blocks, std::vector<Vector2d> loop) {
  const ThinWall wall = thin_wall(path);
  Section out;
  SectionProperties& p = out.props;
  const Vector2d centroid = add_blocks(p, blocks);
  p.J = wall.J;
  p.Ay = wall.Ay;
  p.Az = wall.Az;
  p.shear_centre = wall.shear_centre - centroid;
  out.points = stress_points(wall, centroid);
  for (Vector2d& corner : loop) corner -= centroid;
  p.lower = p.upper = loop.front();
  for (const Vector2d& corner : loop) {
    p.lower = p.lower.cwiseMin(corner);
    p.upper = p.upper.cwiseMax(corner);
  }
  out.outline = {std::move(loop)};
  return out;
}

} // namespace

Section angle_section(const Shape& shape, double /*nu*/) {
  require_size(shape, "width", shape.width);
  require_size(shape, "height", shape.height);
  require_wall(shape, std::min(shape.width, shape.height), "the lesser leg");
  const double b = shape.width, h = shape.height, t = shape.wall;
  const WallPath path{{{b, t / 2}, {t / 2, t / 2}, {t / 2, h}}, t};
  return open_section(path, {{0, 0, b, t}, {0, t, t, h - t}}, {{0, 0}, {b, 0}, {b, t}, {t, t}, {t, h}, {0, h}});
}

Section channel_section(const Shape& shape, double /*nu*/) {
  require_size(shape, "width", shape.width);
  require_size(shape, "height", shape.height);
  require_wall(shape, std::min(shape.width, shape.height / 2), "the flange width and half of the height");
  const double b = shape.width, h = shape.height, t = shape.wall;
  const WallPath path{{{b, t / 2}, {t / 2, t / 2}, {t / 2, h - t / 2}, {b, h - t / 2}}, t};
  return open_section(path, {{0, 0, b, t}, {0, t, t, h - 2 * t}, {0, h - t, b, t}},
                      {{0, 0}, {b, 0}, {b, t}, {t, t}, {t, h - t}, {b, h - t}, {b, h}, {0, h}});
}

} // namespace bedbow
