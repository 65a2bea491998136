// The user's mesh: nodes for the points that its cells use, beams for lines, shells for quads.
#include "mesh/build/mesh_builder.h"

namespace bedbow::mesher {

namespace {

void add_nodes(Builder& b, NodeFinder& finder) {
  const UserMesh& own = b.machine.own;
  const std::vector<bool> used = own.used();
  b.mesh.own_nodes.assign(own.points.size(), -1);
  for (std::size_t i = 0; i < own.points.size(); ++i)
    if (used[i])
      b.mesh.own_nodes[i] = own.joined ? end_node(b, finder, own.points[i]) : b.add_node(own.points[i], Frame::fixed);
}

/// Whether a line continues the one before it in a straight line, so that both make one run.
bool goes_on(const OwnLine& before, const OwnLine& line, const Eigen::Matrix3d& axes_before,
             const Eigen::Matrix3d& axes) {
  constexpr double straight = 1e-9;
  return before.points[1] == line.points[0] && before.part == line.part && before.section == line.section &&
         before.material == line.material && (axes - axes_before).cwiseAbs().maxCoeff() < straight;
}

void add_lines(Builder& b) {
  const UserMesh& own = b.machine.own;
  std::vector<std::pair<int, int>> made; // mesh section by user section and material: nu affects the shear areas
  std::vector<int> sections;
  const auto section_of = [&](const OwnLine& l) {
    for (std::size_t i = 0; i < made.size(); ++i)
      if (made[i] == std::pair(l.section, l.material)) return sections[i];
    made.emplace_back(l.section, l.material);
    sections.push_back(b.add_section(own.sections.at(l.section).shape, b.material(l.material).nu));
    return sections.back();
  };
  const OwnLine* before = nullptr;
  for (const OwnLine& line : own.lines) {
    BeamElement e;
    e.nodes = {b.mesh.own_nodes[line.points[0]], b.mesh.own_nodes[line.points[1]]};
    const Eigen::Vector3d along = own.points[line.points[1]] - own.points[line.points[0]];
    e.axes = beam_axes(along, own.sections.at(line.section).up, "line " + std::to_string(line.cell) + " of [mesh]");
    e.length = along.norm();
    e.section = section_of(line);
    e.material = line.material;
    e.owner = {Ref::Kind::own, BodyKind::bed, line.part};
    const int index = static_cast<int>(b.mesh.beams.size());
    if (before && goes_on(*before, line, b.mesh.beams.back().axes, e.axes)) {
      BarLayout& run = b.mesh.layouts.back();
      run.stations.push_back(run.stations.back() + e.length);
      run.nodes.push_back(e.nodes[1]);
    } else {
      BarLayout run;
      run.owner = e.owner;
      run.section = e.section;
      run.stations = {0, e.length};
      run.nodes = {e.nodes[0], e.nodes[1]};
      run.first_element = index;
      b.mesh.layouts.push_back(std::move(run));
    }
    b.mesh.beams.push_back(e);
    before = &line;
  }
}

void add_quads(Builder& b) {
  // Elements of one part follow each other, whatever the file's order: stress is averaged part by part.
  for (int part = 0; part < static_cast<int>(b.machine.own.parts.size()); ++part)
    for (const OwnQuad& q : b.machine.own.quads) {
      if (q.part != part) continue;
      ShellElement e;
      for (std::size_t k = 0; k < 4; ++k) e.nodes[k] = b.mesh.own_nodes[q.points[k]];
      e.thickness = q.thickness;
      e.material = q.material;
      e.owner = {Ref::Kind::own, BodyKind::bed, part};
      b.mesh.shells.push_back(e);
    }
}

} // namespace

void mesh_own(Builder& b, NodeFinder& finder) {
  if (!b.machine.own.present()) return;
  add_nodes(b, finder);
  add_lines(b);
  add_quads(b);
}

} // namespace bedbow::mesher
