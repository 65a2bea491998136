#include "mesh/build/places.h"
#include "mesh/machine/frame.h"
#include "solver/findings/results.h"
#include "solver/model/recovery.h"

#include <Eigen/Geometry>

#include <map>

namespace bedbow {

namespace {

struct Turner {
  Eigen::Matrix3d turn;
  [[nodiscard]] Eigen::Matrix3d of(Frame f) const { return f == Frame::apron ? turn : Eigen::Matrix3d::Identity(); }
};

/// A chain of beam elements as a field.
BarField chain(const Model& m, const StepSolution& step, const Turner& turner, const std::vector<int>& elements) {
  BarField f;
  const BeamElement& head = m.mesh.beams[elements.front()];
  const Eigen::Matrix3d t = turner.of(m.mesh.nodes[head.nodes[0]].frame);
  f.owner = head.owner;
  f.axes = head.axes * t.transpose();
  f.yield = m.machine.materials.at(head.material).yield;
  f.forces.resize(elements.size() + 1);
  for (std::size_t i = 0; i < elements.size(); ++i) {
    const BeamElement& e = m.mesh.beams[elements[i]];
    if (i == 0) {
      f.points.emplace_back(t * m.mesh.nodes[e.nodes[0]].x);
      f.motion.push_back(turned(t, step.motion[e.nodes[0]]));
    }
    f.points.emplace_back(t * m.mesh.nodes[e.nodes[1]].x);
    f.motion.push_back(turned(t, step.motion[e.nodes[1]]));
    const SectionForces first = element_forces(m, step, elements[i], 0);
    const SectionForces last = element_forces(m, step, elements[i], 1);
    if (i == 0) f.forces[0][0] = first;
    f.forces[i][1] = first;
    f.forces[i + 1] = {last, last};
  }
  return f;
}

void add_bars(const Model& m, const StepSolution& step, const Turner& turner,
              const std::vector<std::shared_ptr<const Section>>& sections, Fields& out) {
  for (const BarLayout& l : m.mesh.layouts) {
    if (!l.across.empty() || l.first_element < 0 || l.first_strip >= 0) continue;
    std::vector<int> elements;
    for (std::size_t i = 0; i + 1 < l.stations.size(); ++i) elements.push_back(l.first_element + static_cast<int>(i));
    BarField f = chain(m, step, turner, elements);
    const bool bar = l.owner.kind == Ref::Kind::bar;
    f.name = m.machine.plain_name(l.owner);
    f.body = bar ? to_string(l.owner.body) : l.owner.kind == Ref::Kind::own ? "mesh" : "member";
    f.section = sections[l.section];
    out.bars.push_back(std::move(f));
  }
  int number = 0;
  for (const FingerLayout& finger : m.mesh.fingers) {
    if (finger.plate()) continue; // among the shells
    const std::vector<int> elements = {finger.first_element, finger.first_element + 1};
    BarField f = chain(m, step, turner, elements);
    f.name = "clamp.finger " + std::to_string(++number);
    f.body = "clamp";
    f.section = sections[m.mesh.beams[elements.front()].section];
    out.bars.push_back(std::move(f));
  }
}

void add_shells(const Model& m, const StepSolution& step, const Turner& turner, Fields& out) {
  std::vector<ShellStress> surfaces;
  for (const BarLayout& l : m.mesh.layouts)
    if (l.first_strip >= 0) surfaces.push_back(strip_stress(m, step, l, false));
  std::ranges::move(shell_stresses(m, step), std::back_inserter(surfaces));
  for (const ShellStress& s : surfaces) {
    ShellField f;
    const bool bar = s.owner.kind == Ref::Kind::bar;
    f.name = s.fingers ? "clamp.fingers" : m.machine.plain_name(s.owner);
    f.body = bar ? to_string(s.owner.body) : s.owner.kind == Ref::Kind::own ? "mesh" : "panel";
    f.owner = s.owner;
    f.thickness = s.thickness;
    f.yield = m.machine.materials.at(s.material).yield;
    const Eigen::Matrix3d t = turner.of(s.frame);
    for (std::size_t i = 0; i < s.points.size(); ++i) {
      f.points.emplace_back(t * s.points[i]);
      f.motion.push_back(turned(t, s.motion[i]));
      f.normals.emplace_back(t * s.normals[i]);
    }
    f.quads = s.quads;
    f.von_mises = s.von_mises;
    f.principal = s.principal;
    out.shells.push_back(std::move(f));
  }
}

void add_forces(const Model& m, const StepSolution& step, const StepResult& result, Fields& out) {
  for (const JointResult& j : result.joints)
    if (info(j.kind).arrow) out.forces.push_back({j.name, info(j.kind).key, j.at, j.force, 0});
  std::map<int, double> across; // total stiffness of a station's pads: each bears on its share of the land
  for (const Joint& j : m.mesh.joints)
    if (j.kind == JointKind::pad) across[j.index] += j.stiffness[uz];
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const Joint& j = m.mesh.joints[step.rows[r].joint];
    if (j.kind == JointKind::friction)
      out.forces.push_back(
          {"friction", "friction", j.a.at, {0, step.force[static_cast<Eigen::Index>(r)], 0}, 0}); // on the bed
    if (j.kind != JointKind::pad) continue;
    const double area = j.tributary * m.machine.nose.land * j.stiffness[uz] / across[j.index];
    const double f = -step.force[static_cast<Eigen::Index>(r)];
    out.forces.push_back({"pad", "pad", j.a.at, {0, 0, -f}, f / area});
  }
}

} // namespace

void fill_fields(const Model& m, const StepSolution& step, const std::vector<std::shared_ptr<const Section>>& sections,
                 StepResult& out) {
  const Turner turner{apron_turn(step.angle)};
  add_bars(m, step, turner, sections, out.fields);
  add_shells(m, step, turner, out.fields);
  add_forces(m, step, out, out.fields);
}

} // namespace bedbow
