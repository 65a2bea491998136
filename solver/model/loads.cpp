#include "solver/model/loads.h"

#include "mesh/build/places.h"
#include "mesh/build/stations.h"
#include "mesh/machine/frame.h"
#include "solver/assembly/displacement_functional.h"
#include "solver/assembly/mass_walk.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr double g = 9.80665; // standard acceleration of free fall, ISO 80000-3 [m/s^2]

} // namespace

LoadBuilder::LoadBuilder(const Machine& machine, const Mesh& mesh, const DofMap& map, const ElementData& data)
    : machine_(machine)
    , mesh_(mesh)
    , map_(map)
    , data_(data) {}

StepLoads LoadBuilder::empty() const {
  StepLoads l;
  l.nodal.assign(mesh_.nodes.size(), Vector6d::Zero());
  l.beams.resize(mesh_.beams.size());
  return l;
}

void LoadBuilder::add_node(int node, const Eigen::Vector3d& arm, const Eigen::Vector3d& force,
                           const Eigen::Vector3d& moment, StepLoads& loads) const {
  const NodeLink& l = map_.links[node];
  Vector6d& p = loads.nodal[l.ref];
  p.head<3>() += force;
  p.tail<3>() += moment + (arm + l.arm).cross(force);
  note_arm(node, arm + l.arm, force, loads);
}

void LoadBuilder::note_arm(int node, const Eigen::Vector3d& arm, const Eigen::Vector3d& force, StepLoads& loads) const {
  if (!arm.isZero(0) && !force.isZero(0)) loads.arms.push_back({map_.links[node].ref, arm, force});
}

void LoadBuilder::add_point(const Place& place, const Eigen::Vector3d& force, const Eigen::Vector3d& moment,
                            StepLoads& loads) const {
  Vector6d given;
  given << force, moment;
  for (const PlaceTerm& t : place.terms) {
    const NodeLink& l = map_.links[t.node];
    loads.nodal[l.ref] += carry(l.arm).transpose() * (t.movement.transpose() * given);
    if (t.weight != 0) note_arm(t.node, l.arm + t.lever() / t.weight, t.weight * force, loads);
  }
  loads.greatest = std::max(loads.greatest, force.norm());
}

void LoadBuilder::add_element_line(int element, const Eigen::Vector3d& q, const Eigen::Vector3d& couple,
                                   const Eigen::Vector3d& arm, StepLoads& loads) const {
  const BeamElement& e = mesh_.beams[element];
  BeamLineLoad local{q, couple + arm.cross(q)};
  if (!data_.plain[element]) local = {e.axes * local.force, e.axes * local.moment};
  loads.beams[element].force += local.force;
  loads.beams[element].moment += local.moment;
  Vector12d f = beam_local_load(mesh_, data_, element, local);
  if (const BeamReleases releases = releases_of(e); releases.any)
    f = beam_release(beam_local_stiffness(mesh_, data_, element), f, releases.dofs).load;
  if (!data_.plain[element]) f = beam_to_global(f, e.axes);
  for (int k = 0; k < 2; ++k) {
    add_node(e.nodes[k], Eigen::Vector3d::Zero(), f.segment<3>(6 * k), f.segment<3>(6 * k + 3), loads);
    note_arm(e.nodes[k], arm, q * (e.length / 2), loads);
  }
}

void LoadBuilder::add_strip_line(const BarLayout& l, int first, int last, double y, double z, const Eigen::Vector3d& q,
                                 StepLoads& loads) const {
  const Bar& bar = machine_.bar(l.owner);
  const Eigen::Matrix3d axes = FlatAxes{l.standing}.matrix();
  const Eigen::Vector3d at = axes * Eigen::Vector3d(0, y - bar.at.x(), z - bar.at.y());
  const AcrossFunctions& functions = mesh_.across[mesh_.strips[l.first_strip].across];
  const double c = std::clamp(at.y(), -functions.width() / 2, functions.width() / 2);
  const AcrossValues across = functions.at(c);
  const Eigen::Vector3d force = axes * q;
  const Eigen::Vector3d moment = Eigen::Vector3d(0, at.y() - c, at.z()).cross(force);
  for (int element = first; element < last; ++element) {
    const StripElement& strip = mesh_.strips[data_.strip_of(element)];
    const Eigen::VectorXd f =
        strip_line_load(data_.strips[strip.across], across, mesh_.beams[element].length, force, moment);
    for (int end = 0; end < 2; ++end)
      for (int k = 0; k < strip.flat.nodes; ++k)
        loads.nodal[strip.first[end] + k] += f.segment<6>(12 + 6 * (end * strip.flat.nodes + k));
  }
}

void LoadBuilder::add_bar_line(const Ref& ref, double from, double to, double y, double z, const Eigen::Vector3d& q,
                               StepLoads& loads) const {
  const BarLayout& l = layout_of(mesh_, ref);
  const Bar& bar = machine_.bar(ref);
  const bool beam = l.across.empty();
  int first = 0, last = 0; // elements of a beam
  for (std::size_t i = 0; i + 1 < l.stations.size(); ++i) {
    const double a = l.stations[i];
    const double b = l.stations[i + 1];
    if (a < from - same_place || b > to + same_place) continue;
    if (beam) {
      const int element = l.first_element + static_cast<int>(i);
      add_element_line(element, q, Eigen::Vector3d::Zero(), {0, y - bar.at.x(), z - bar.at.y()}, loads);
      if (last == 0) first = element;
      last = element + 1;
      continue;
    }
    for (double x : {a, b})
      add_point(place_on_bar(machine_, mesh_, ref, {x, y, z}), q * ((b - a) / 2), Eigen::Vector3d::Zero(), loads);
  }
  if (l.first_strip >= 0) add_strip_line(l, first, last, y, z, q, loads);
}

void LoadBuilder::add_nose_line(double from, double to, double y, double z, const Eigen::Vector3d& q,
                                StepLoads& loads) const {
  if (!machine_.fingers) {
    add_bar_line({Ref::Kind::bar, BodyKind::clamp, machine_.nose.bar}, from, to, y, z, q, loads);
    return;
  }
  for (const FingerLayout& f : mesh_.fingers) {
    const double a = std::max(f.from, from);
    const double b = std::min(f.to, to);
    if (b - a <= same_place) continue;
    if (!f.plate()) {
      const Eigen::Vector3d at((a + b) / 2, y, z + finger_lift(machine_, mesh_, f));
      add_point({{PlaceTerm::on_arm(f.tip, 1, at - mesh_.nodes[f.tip].x)}, at, Frame::fixed}, q * (b - a),
                Eigen::Vector3d::Zero(), loads);
      continue;
    }
    for (std::size_t i = 0; i + 1 < f.x.size(); ++i) {
      const double from_x = std::max(f.x[i], a);
      const double to_x = std::min(f.x[i + 1], b);
      if (to_x > from_x)
        add_point(place_on_finger(machine_, mesh_, f, {(from_x + to_x) / 2, y, z}), q * (to_x - from_x),
                  Eigen::Vector3d::Zero(), loads);
    }
  }
}

std::vector<SheetLine> LoadBuilder::sheet_lines(const SheetLoads& s, double angle) const {
  const Sheet& sheet = *machine_.sheet;
  const double edge = machine_.nose.setback;
  const Eigen::Vector3d n = apron_turn(angle) * Eigen::Vector3d::UnitZ();
  const Eigen::Vector3d grip(0, 0, s.grip);
  const double push = s.apron(angle);
  // The nose's edge takes the apron's force; its moment about that edge is balanced at every angle by the grip's couple
  // between the edge and g behind it.
  std::vector<SheetLine> lines{{"push on the nose", BodyKind::clamp, s.edge, push * n},
                               {"grip on the nose", BodyKind::clamp, edge, grip}};
  if (machine_.body(BodyKind::bed).present())
    lines.push_back({"grip on the bed", BodyKind::bed, edge + sheet.grip, -grip});
  if (machine_.body(BodyKind::apron).present())
    lines.push_back({"push on the apron", BodyKind::apron, -sheet.flange, {0, 0, -push}});
  return lines;
}

void LoadBuilder::add_sheet_line(const SheetLine& line, StepLoads& loads) const {
  const double from = machine_.sheet->left();
  const double to = machine_.sheet->right();
  loads.greatest = std::max(loads.greatest, line.q.norm() * (to - from));
  if (line.on == BodyKind::clamp)
    add_nose_line(from, to, line.y, 0, line.q, loads);
  else
    add_bar_line({Ref::Kind::bar, line.on, machine_.body(line.on).edge_bar}, from, to, line.y, 0, line.q, loads);
}

void LoadBuilder::add_sheet(const SheetLoads& sheet, double angle, StepLoads& loads) const {
  for (const SheetLine& line : sheet_lines(sheet, angle)) add_sheet_line(line, loads);
}

void LoadBuilder::add_gravity(double angle, StepLoads& loads) const {
  const Eigen::Vector3d down(0, 0, -g);
  const Eigen::Vector3d in_apron = apron_turn(angle).transpose() * down;
  const auto of = [&](int node) { return mesh_.nodes[node].frame == Frame::apron ? in_apron : down; };
  const Eigen::Vector3d none = Eigen::Vector3d::Zero();
  double weight = 0;
  for_each_mass(machine_, mesh_, data_, [&](const MassItem& item) {
    weight += g * item.mass();
    switch (item.kind) {
    case MassItem::Kind::beam:
      add_element_line(item.index, of(mesh_.beams[item.index].nodes[0]) * item.per_extent, none, none, loads);
      break;
    case MassItem::Kind::shell: {
      const auto& nodes = mesh_.shells[item.index].nodes;
      const Vector24d f = shell_load_of(machine_, mesh_, data_, item.index, of(nodes[0]) * item.per_extent);
      for (int k = 0; k < 4; ++k) add_node(nodes[k], none, f.segment<3>(6 * k), f.segment<3>(6 * k + 3), loads);
      break;
    }
    case MassItem::Kind::rod: // a spring between its ends: half of its weight at each
      for (const Place* p : {&mesh_.joints[item.index].a, &mesh_.joints[item.index].b})
        add_point(*p, of(p->terms.front().node) * (item.mass() / 2), none, loads);
    }
  });
  loads.greatest = std::max(loads.greatest, weight);
}

Ref LoadBuilder::carrier_of(const Load& load) const {
  if (load.on.kind != Ref::Kind::none) return load.on;
  const Eigen::Vector3d middle = (load.from + load.to) / 2;
  for (std::size_t i = 0; i < machine_.members.size(); ++i) {
    const Member& m = machine_.members[i];
    const Eigen::Vector3d d = m.to - m.from;
    const double t = std::clamp((middle - m.from).dot(d) / d.squaredNorm(), 0.0, 1.0);
    if ((middle - m.from - t * d).norm() < 1e-6) return {Ref::Kind::member, BodyKind::bed, static_cast<int>(i)};
  }
  for (std::size_t i = 0; i < machine_.panels.size(); ++i) {
    const Panel& p = machine_.panels[i];
    const Eigen::Vector3d r = middle - p.corner;
    const double a = r.dot(p.edge_a) / p.edge_a.squaredNorm();
    const double b = r.dot(p.edge_b) / p.edge_b.squaredNorm();
    if ((r - a * p.edge_a - b * p.edge_b).norm() < 1e-6 && a > -1e-9 && a < 1 + 1e-9 && b > -1e-9 && b < 1 + 1e-9)
      return {Ref::Kind::panel, BodyKind::bed, static_cast<int>(i)};
  }
  for (std::size_t i = 0; i < machine_.own.parts.size(); ++i)
    if (nearest_on_part(machine_.own, static_cast<int>(i), middle).distance < 1e-6)
      return {Ref::Kind::own, BodyKind::bed, static_cast<int>(i)};
  throw std::invalid_argument("[[load]] in line " + std::to_string(load.pos.line) +
                              " acts on no member, panel or mesh at its place; name its bar with `on`, or move it");
}

void LoadBuilder::add_given_line(const Load& load, const Ref& on, const Eigen::Vector3d& q, StepLoads& loads) const {
  const Eigen::Vector3d d = load.to - load.from;
  const double length = d.norm();
  loads.greatest = std::max(loads.greatest, q.norm() * length);
  if (on.kind == Ref::Kind::bar) {
    const double left = std::min(load.from.x(), load.to.x());
    const double right = std::max(load.from.x(), load.to.x());
    if (length - (right - left) < 1e-9 * length) {
      add_bar_line(on, left, right, load.from.y(), load.from.z(), q, loads);
      return;
    }
  }
  if (on.kind == Ref::Kind::member) {
    const Member& m = machine_.members[on.index];
    const Eigen::Vector3d dir = (m.to - m.from).normalized();
    const double s0 = (load.from - m.from).dot(dir);
    const double s1 = (load.to - m.from).dot(dir);
    const BarLayout& l = layout_of(mesh_, on);
    for (std::size_t i = 0; i + 1 < l.stations.size(); ++i)
      if (l.stations[i] > std::min(s0, s1) - 1e-6 && l.stations[i + 1] < std::max(s0, s1) + 1e-6)
        add_element_line(l.first_element + static_cast<int>(i), q, Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero(),
                         loads);
    return;
  }
  // Across a bar or along a panel: many short pieces, each a force at its middle carried by the nearest nodes.
  const int pieces = std::max(8, static_cast<int>(std::ceil(length / machine_.solve.element_size)) * 2);
  for (int i = 0; i < pieces; ++i) {
    const Eigen::Vector3d at = load.from + d * ((i + 0.5) / pieces);
    const Place p =
        on.kind == Ref::Kind::bar ? place_on_bar(machine_, mesh_, on, at) : place_on_structure(mesh_, on, at);
    add_point(p, q * (length / pieces), Eigen::Vector3d::Zero(), loads);
  }
}

void LoadBuilder::add_pressure(const Load& load, StepLoads& loads) const {
  const bool panel = load.panel >= 0;
  const Ref on = panel ? Ref{Ref::Kind::panel, BodyKind::bed, load.panel} : load.on;
  Eigen::Vector3d normal = Eigen::Vector3d::Zero();
  double pressed = 0; // the forces of all elements: of a closed surface the resultant is none
  if (panel) normal = machine_.panels[load.panel].edge_a.cross(machine_.panels[load.panel].edge_b).normalized();
  for (std::size_t i = 0; i < mesh_.shells.size(); ++i) {
    const ShellElement& e = mesh_.shells[i];
    if (!(e.owner == on)) continue;
    if (!panel) normal = shell_axes(corners_of(mesh_, e)).row(2);
    const Vector24d f = shell_load_of(machine_, mesh_, data_, static_cast<int>(i), normal * load.pressure);
    for (int k = 0; k < 4; ++k)
      add_node(e.nodes[k], Eigen::Vector3d::Zero(), f.segment<3>(6 * k), f.segment<3>(6 * k + 3), loads);
    for (int k = 0; k < 4; ++k) pressed += f.segment<3>(6 * k).norm();
  }
  loads.greatest = std::max(loads.greatest, pressed);
}

void LoadBuilder::add_set(const Load& load, double angle, StepLoads& loads) const {
  const PointSet& set = machine_.own.sets.at(load.set);
  const Eigen::Matrix3d back = apron_turn(angle).transpose();
  loads.greatest = std::max(loads.greatest, load.force.norm()); // the shares add up to 1
  for (std::size_t i = 0; i < set.points.size(); ++i) {
    const int node = mesh_.own_nodes.at(set.points[i]);
    const Node& n = mesh_.nodes[node];
    const Eigen::Matrix3d to_frame = n.frame == Frame::apron ? back : Eigen::Matrix3d(Eigen::Matrix3d::Identity());
    add_point({{PlaceTerm::on_arm(node, 1, Eigen::Vector3d::Zero())}, n.x, n.frame},
              to_frame * load.force * set.shares[i], to_frame * load.moment * set.shares[i], loads);
  }
}

void LoadBuilder::add_given(const Load& load, double angle, StepLoads& loads) const {
  if (load.kind == Load::Kind::pressure) return add_pressure(load, loads);
  if (load.kind == Load::Kind::set) return add_set(load, angle, loads);
  const Ref on = carrier_of(load);
  const Place at = on.kind == Ref::Kind::bar ? place_on_bar(machine_, mesh_, on, load.from)
                   : on.kind == Ref::Kind::member && machine_.members[on.index].tension_only
                       ? throw std::invalid_argument("member " + machine_.members[on.index].name +
                                                     " is tension-only: it can't carry a load")
                       : place_on_structure(mesh_, on, load.from);
  // The force keeps its direction in space while the apron turns under it.
  const Eigen::Matrix3d to_frame =
      at.frame == Frame::apron ? Eigen::Matrix3d(apron_turn(angle).transpose()) : Eigen::Matrix3d::Identity();
  if (load.kind == Load::Kind::point)
    add_point(at, to_frame * load.force, to_frame * load.moment, loads);
  else
    add_given_line(load, on, to_frame * load.force, loads);
}

void LoadBuilder::add_applied_loads(double angle, StepLoads& loads) const {
  if (machine_.gravity) add_gravity(angle, loads);
  for (const Load& l : machine_.loads) add_given(l, angle, loads);
}

Eigen::VectorXd gather(const DofMap& map, const Substructure& comp, const StepLoads& loads) {
  Eigen::VectorXd f(comp.size);
  for (int n : comp.nodes)
    for (int k = 0; k < 6; ++k)
      if (map.dofs[n][k] >= 0) f[map.dofs[n][k]] = loads.nodal[n][k];
  return f;
}

Vector6d resultant(const Mesh& mesh, const Substructure& comp, const StepLoads& loads) {
  Vector6d r = Vector6d::Zero();
  for (int n : comp.nodes) {
    const Vector6d& p = loads.nodal[n];
    if (!mesh.nodes[n].moves()) continue; // in equilibrium by itself
    r.head<3>() += p.head<3>();
    r.tail<3>() += p.tail<3>() + (mesh.nodes[n].x - comp.centre).cross(Eigen::Vector3d(p.head<3>()));
  }
  return r;
}

} // namespace bedbow
