// The user's mesh: coordinates, invalid cells, sets of points that no cell uses.
#include "mesh/build/mesh_builder.h"
#include "mesh/build/node_finder.h"
#include "mesh/check/validate_parts.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <map>

namespace bedbow {

namespace {

using Eigen::Vector3d;

/// A quad with a corner this far off the plane of the others, as a fraction of its size, gets a warning, and is
/// refused: the error in the stiffness grows with the square. Common practice, no source.
constexpr double told_warp = 0.01, greatest_warp = 0.1;

struct Cells {
  std::vector<int> wrong;
  void check(bool bad, int cell) {
    if (bad) wrong.push_back(cell);
  }
};

std::string cells_text(const std::vector<int>& cells) {
  return (cells.size() == 1 ? "cell " : "cells ") + number_list(cells);
}

double warp(const std::array<Vector3d, 4>& c) {
  const Vector3d normal = (c[2] - c[0]).cross(c[3] - c[1]).normalized();
  const double size = std::min((c[2] - c[0]).norm(), (c[3] - c[1]).norm());
  return std::abs(normal.dot(c[1] - c[0] + c[3] - c[2])) / 4 / size;
}

bool folds(const std::array<Vector3d, 4>& c) {
  const Vector3d normal = (c[2] - c[0]).cross(c[3] - c[1]);
  for (std::size_t i = 0; i < 4; ++i)
    if (!((c[(i + 1) % 4] - c[i]).cross(c[(i + 3) % 4] - c[i]).dot(normal) > 0)) return true;
  return false;
}

bool coincide(const std::array<Vector3d, 4>& c) {
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t j = 0; j < i; ++j)
      if ((c[i] - c[j]).norm() < mesher::one_place) return true;
  return false;
}

std::array<Vector3d, 4> corners(const UserMesh& m, const OwnQuad& q) {
  std::array<Vector3d, 4> c;
  for (std::size_t i = 0; i < 4; ++i) c[i] = m.points[static_cast<std::size_t>(q.points[i])];
  return c;
}

void validate_lines(Validator& v) {
  const UserMesh& m = v.machine.own;
  Cells none, along;
  for (const OwnLine& l : m.lines) {
    const Vector3d d =
        m.points[static_cast<std::size_t>(l.points[1])] - m.points[static_cast<std::size_t>(l.points[0])];
    none.check(d.norm() < mesher::one_place, l.cell);
    if (l.section < 0) continue;
    const Vector3d& up = m.sections[static_cast<std::size_t>(l.section)].up;
    along.check(up.allFinite() && up.normalized().cross(d.normalized()).norm() < 1e-6, l.cell);
  }
  if (!none.wrong.empty())
    v.error(v.machine.own_pos, "mesh", "lines of zero length: " + cells_text(none.wrong) + "; remove them");
  if (!along.wrong.empty())
    v.error(v.machine.own_pos, "mesh.section",
            "`up` points along " + cells_text(along.wrong) + "; it must point across the lines of its section");
}

void validate_quads(Validator& v) {
  const UserMesh& m = v.machine.own;
  Cells none, folded, warped, bent;
  for (const OwnQuad& q : m.quads) {
    const auto c = corners(m, q);
    if (coincide(c)) {
      none.wrong.push_back(q.cell);
      continue;
    }
    const double off = warp(c);
    folded.check(folds(c), q.cell);
    warped.check(off > greatest_warp, q.cell);
    bent.check(off > told_warp && off <= greatest_warp, q.cell);
  }
  const SourcePos pos = v.machine.own_pos;
  if (!none.wrong.empty())
    v.error(pos, "mesh", "quads with two corners at the same place: " + cells_text(none.wrong) + "; remove them");
  if (!folded.wrong.empty())
    v.error(pos, "mesh",
            "quads that fold over: " + cells_text(folded.wrong) +
                "; corners must run in order around a convex quadrilateral");
  if (!warped.wrong.empty())
    v.error(pos, "mesh",
            "quads whose corners are far from a common plane: " + cells_text(warped.wrong) +
                "; divide them more finely");
  if (!bent.wrong.empty())
    v.warning(pos, "mesh",
              "quads whose corners are slightly off a common plane: " + cells_text(bent.wrong) +
                  "; they are treated as flat, joined to their corners by rigid arms");
}

/// Cells between the same points, where points at the same place count as one.
void validate_twice(Validator& v) {
  const UserMesh& m = v.machine.own;
  NodeFinder finder(mesher::one_place);
  std::vector<int> one(m.points.size());
  for (std::size_t i = 0; i < m.points.size(); ++i) {
    const int known = m.joined ? finder.find(m.points[i]) : -1;
    one[i] = known >= 0 ? known : static_cast<int>(i);
    if (known < 0) finder.add(one[i], m.points[i]);
  }
  std::map<std::vector<int>, int> seen;
  Cells twice;
  const auto look = [&](const auto& cell) {
    std::vector<int> points;
    for (int p : cell.points) points.push_back(one[static_cast<std::size_t>(p)]);
    std::ranges::sort(points);
    twice.check(!seen.emplace(points, cell.cell).second, cell.cell);
  };
  for (const OwnLine& l : m.lines) look(l);
  for (const OwnQuad& q : m.quads) look(q);
  if (!twice.wrong.empty())
    v.error(v.machine.own_pos, "mesh",
            "duplicate cells between the same points: " + cells_text(twice.wrong) + "; remove them");
}

void validate_sets(Validator& v) {
  const UserMesh& m = v.machine.own;
  const std::vector<bool> used = m.used();
  std::vector<bool> called(m.sets.size());
  for (const Hold& h : v.machine.holds)
    if (h.set >= 0) called[static_cast<std::size_t>(h.set)] = true;
  for (const Load& l : v.machine.loads)
    if (l.set >= 0) called[static_cast<std::size_t>(l.set)] = true;
  for (std::size_t i = 0; i < m.sets.size(); ++i) {
    if (!called[i]) continue;
    std::vector<int> loose;
    for (int p : m.sets[i].points)
      if (!used[static_cast<std::size_t>(p)]) loose.push_back(p);
    if (!loose.empty())
      v.error(v.machine.own_pos, "mesh",
              "points of the set \"" + m.sets[i].name + "\" that no cell uses: " + number_list(loose) +
                  "; they can neither be held nor loaded");
  }
}

} // namespace

void validate_user_mesh(Validator& v) {
  const UserMesh& m = v.machine.own;
  std::vector<int> nowhere;
  for (std::size_t i = 0; i < m.points.size(); ++i)
    if (!m.points[i].allFinite()) nowhere.push_back(static_cast<int>(i));
  if (!nowhere.empty()) {
    v.error(v.machine.own_pos, "mesh",
            "points whose coordinates are not numbers: " + number_list(nowhere) + "; every coordinate must be finite");
    return;
  }
  validate_lines(v);
  validate_quads(v);
  validate_twice(v);
  validate_sets(v);
}

} // namespace bedbow
