#include "solver/findings/statics_results.h"

#include "mesh/machine/frame.h"

#include <algorithm>

namespace bedbow {

namespace {

int part_of(const Model& m, const Place& place) {
  return place.ground() ? ground_part : m.map.substructure[place.terms.front().node];
}

Eigen::Vector3d place_at(const Place& place, double angle) {
  return place.frame == Frame::apron ? Eigen::Vector3d(apron_turn(angle) * place.at) : place.at;
}

/// The parts that a joint joins in the case; kind `none` for a rod, which has only end points.
std::array<Ref, 2> joins_of(const Machine& m, const Joint& j) {
  if (j.kind == JointKind::pad || j.kind == JointKind::touch || j.kind == JointKind::friction)
    return {Ref{Ref::Kind::bar, BodyKind::bed, m.body(BodyKind::bed).edge_bar},
            Ref{Ref::Kind::bar, BodyKind::clamp, m.nose.bar}};
  std::array<Ref, 2> out{};
  m.each_joint_list([&](JointKind kind, const auto& list) {
    if (kind == j.kind) out = list.at(static_cast<std::size_t>(j.index)).joins;
  });
  return out;
}

/// The bar that a place of a contact lies on.
Ref bar_at(const Mesh& mesh, const Place& place) {
  const int node = place.terms.front().node;
  for (const BarLayout& l : mesh.layouts)
    if (std::ranges::find(l.nodes, node) != l.nodes.end()) return l.owner;
  return {};
}

/// Resultant of nodal loads on a part, global axes of the step: force, and moment about the origin.
Vector6d about_origin(const Model& m, const Substructure& comp, const StepLoads& loads, double angle) {
  Vector6d sum = Vector6d::Zero();
  for (int n : comp.nodes) {
    if (!m.mesh.nodes[n].moves()) continue;
    const Eigen::Vector3d force = loads.nodal[n].head<3>();
    sum.head<3>() += force;
    sum.tail<3>() += loads.nodal[n].tail<3>() + m.mesh.nodes[n].x.cross(force);
  }
  if (comp.frame == Frame::fixed) return sum;
  const Eigen::Matrix3d turn = apron_turn(angle); // about the bend line, which passes through the origin
  Vector6d out;
  out << turn * sum.head<3>(), turn * sum.tail<3>();
  return out;
}

/// Adds the load of a source on each part, as a force on its line of action at the point nearest to the origin.
void add_loads(const Model& m, const StepSolution& step, const std::string& what, const StepLoads& loads,
               StepResult& out) {
  constexpr double metre = 1; // a force whose moment on this arm is negligible beside the moment has no line of action
  for (std::size_t c = 0; c < m.map.substructures.size(); ++c) {
    const Vector6d sum = about_origin(m, m.map.substructures[c], loads, step.angle);
    if (sum.isZero(0)) continue;
    LoadResult r;
    r.what = what;
    r.part = static_cast<int>(c);
    r.force = sum.head<3>();
    r.moment = sum.tail<3>();
    if (r.force.norm() * metre > 1e-6 * r.moment.norm()) {
      r.at = r.force.cross(r.moment) / r.force.squaredNorm();
      r.moment -= r.at.cross(r.force);
    }
    out.loads.push_back(std::move(r));
  }
}

/// The contact between the same two parts along the same normal, begun where there is none yet.
ContactResult& contact_for(StepResult& out, ContactResult begun) {
  const auto same = std::ranges::find_if(out.contacts, [&](const ContactResult& c) {
    return c.what == begun.what && c.joins == begun.joins && c.parts == begun.parts && c.normal == begun.normal;
  });
  if (same != out.contacts.end()) return *same;
  return out.contacts.emplace_back(std::move(begun));
}

} // namespace

std::vector<PartResult> parts_of(const Model& m) {
  std::vector<PartResult> parts;
  for (const Substructure& c : m.map.substructures) parts.push_back({c.name, {}});
  const auto note = [&](const auto& elements) {
    Ref last;
    int last_part = ground_part;
    for (const auto& e : elements) {
      const int part = m.map.substructure[e.nodes[0]];
      if (e.owner == last && part == last_part) continue;
      last = e.owner;
      last_part = part;
      std::vector<std::string>& of = parts[static_cast<std::size_t>(part)].of;
      const std::string name = m.machine.plain_name(e.owner);
      if (std::ranges::find(of, name) == of.end()) of.push_back(name);
    }
  };
  note(m.mesh.beams);
  note(m.mesh.shells);
  return parts;
}

void fill_joined(const Model& m, const Joint& j, double angle, JointResult& out) {
  const std::array<const Place*, 2> sides = {j.swapped ? &j.b : &j.a, j.swapped ? &j.a : &j.b};
  const std::array<Ref, 2> joins = joins_of(m.machine, j);
  for (std::size_t k = 0; k < 2; ++k) {
    out.parts[k] = part_of(m, *sides[k]);
    if (joins[k].kind != Ref::Kind::none)
      out.joins[k] = m.machine.plain_name(joins[k]);
    else
      out.joins[k] = out.parts[k] == ground_part ? "ground" : m.map.substructures[out.parts[k]].name;
  }
  if (j.a.ground() || j.b.ground()) return;
  const std::array<Eigen::Vector3d, 2> at = {place_at(*sides[0], angle), place_at(*sides[1], angle)};
  if ((at[0] - at[1]).norm() > 1e-9) out.at_each = at;
}

void fill_loads(const Model& m, const StepSolution& step, const std::optional<SheetLoads>& sheet, StepResult& out) {
  const LoadBuilder builder(m.machine, m.mesh, m.map, m.data);
  const auto add = [&](const std::string& what, const auto& source) {
    StepLoads loads = builder.empty();
    source(loads);
    add_loads(m, step, what, loads, out);
  };
  if (m.machine.gravity) add("self-weight", [&](StepLoads& l) { builder.add_gravity(step.angle, l); });
  for (std::size_t i = 0; i < m.machine.loads.size(); ++i)
    add("load " + std::to_string(i + 1), [&](StepLoads& l) { builder.add_given(m.machine.loads[i], step.angle, l); });
  if (!sheet || !step.bending) return;
  for (const SheetLine& line : builder.sheet_lines(*sheet, step.angle))
    add(line.what, [&](StepLoads& l) { builder.add_sheet_line(line, l); });
}

void fill_contacts(const Model& m, const StepSolution& step, StepResult& out) {
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const Joint& j = m.mesh.joints[step.rows[r].joint];
    const bool pad = j.kind == JointKind::pad || j.kind == JointKind::friction;
    if (!pad && j.kind != JointKind::pressure) continue;
    ContactResult begun;
    begun.what = j.kind == JointKind::pad ? "nose" : pad ? "friction" : "bars";
    const std::array<Ref, 2> joins =
        pad ? joins_of(m.machine, j) : std::array<Ref, 2>{bar_at(m.mesh, j.a), bar_at(m.mesh, j.b)};
    for (std::size_t k = 0; k < 2; ++k) begun.joins[k] = m.machine.plain_name(joins[k]);
    begun.parts = {part_of(m, j.a), part_of(m, j.b)};
    begun.normal = j.axes.row(step.rows[r].direction % 3);
    if (j.a.frame == Frame::apron && j.b.frame == Frame::apron) begun.normal = apron_turn(step.angle) * begun.normal;
    ContactResult& contact = contact_for(out, std::move(begun));
    contact.at.push_back(place_at(j.a, step.angle));
    contact.force.push_back(-step.force[static_cast<Eigen::Index>(r)]);
  }
}

} // namespace bedbow
