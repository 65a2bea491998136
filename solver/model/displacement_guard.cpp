#include "solver/model/displacement_guard.h"

#include "mesh/piece/si.h"
#include "solver/model/describe.h"
#include "solver/model/prescribed_travel.h"
#include "solver/model/step_name.h"
#include "solver/strength/comparison.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <limits>
#include <map>
#include <tuple>

namespace bedbow {

namespace {

/// A bar, member, panel, part of the user's mesh or the fingers, as a list of nodes.
struct Part {
  std::string name;
  int component = -1;
  double length = 0; ///< reference length for its displacement [m]
  std::vector<int> nodes;
};

/// Greatest displacement and rotation of a part.
struct Farthest {
  double displacement = 0, rotation = 0; ///< beyond its travel [m], [rad]; NaN where a node's is NaN
  int moved = -1, turned = -1;           ///< nodes
};

/// Diagonal of the box around nodes [m].
template <class Nodes> double extent(const Mesh& mesh, const Nodes& nodes) {
  Eigen::AlignedBox3d box;
  for (const int n : nodes) box.extend(mesh.nodes[n].x);
  return box.isEmpty() ? 0 : box.diagonal().norm();
}

/// Nodes by owner: bars body by body, members, panels, parts of the user's mesh.
std::map<std::tuple<Ref::Kind, BodyKind, int>, std::vector<int>> nodes_by_owner(const Mesh& mesh) {
  std::map<std::tuple<Ref::Kind, BodyKind, int>, std::vector<int>> out;
  const auto add = [&](const Ref& ref, const auto& nodes) {
    std::vector<int>& all = out[{ref.kind, ref.body, ref.index}];
    all.insert(all.end(), nodes.begin(), nodes.end());
  };
  for (const BarLayout& l : mesh.layouts) add(l.owner, l.nodes);
  for (const ShellElement& e : mesh.shells)
    if (e.owner.kind == Ref::Kind::panel || e.owner.kind == Ref::Kind::own) add(e.owner, e.nodes);
  return out;
}

/// A short piece of a larger part moves with it, and its small length is not the relevant one.
std::vector<Part> parts_of(const Model& m) {
  std::vector<Part> out;
  std::vector<double> size(m.map.substructures.size());
  for (std::size_t c = 0; c < size.size(); ++c) size[c] = extent(m.mesh, m.map.substructures[c].nodes);
  for (auto& [owner, nodes] : nodes_by_owner(m.mesh)) {
    const auto& [kind, body, index] = owner;
    if (nodes.empty() || m.map.substructure[nodes.front()] < 0) continue;
    Part part{m.machine.plain_name({kind, body, index}), m.map.substructure[nodes.front()], 0, std::move(nodes)};
    part.length = kind == Ref::Kind::bar
                      ? m.machine.body(body).length
                      : std::max(extent(m.mesh, part.nodes), size[static_cast<std::size_t>(part.component)]);
    out.push_back(std::move(part));
  }
  for (const FingerLayout& f : m.mesh.fingers) {
    Part part{"clamp.fingers", -1, m.machine.body(BodyKind::clamp).length, {}};
    part.nodes = f.plate() ? f.nodes : std::vector<int>{f.root, f.pad, f.tip};
    part.component = m.map.substructure[part.nodes.front()];
    out.push_back(std::move(part));
  }
  return out;
}

Farthest farthest(const Part& part, const Travel& travel, const StepSolution& step) {
  Farthest out;
  for (const int n : part.nodes) {
    const Vector6d& v = step.motion[n];
    const double moved = v.head<3>().norm(), turned = v.tail<3>().norm();
    if (!std::isfinite(moved + turned)) return {moved + turned, moved + turned, n, n};
    if (out.moved < 0 || moved > out.displacement) out.displacement = moved, out.moved = n;
    if (out.turned < 0 || turned > out.rotation) out.rotation = turned, out.turned = n;
  }
  out.displacement = std::max(out.displacement - travel.displacement, 0.0);
  out.rotation = std::max(out.rotation - travel.rotation, 0.0);
  return out;
}

/// Displacement or rotation over its permitted range: above 1 beyond it.
double range_used(const Part& part, const Farthest& f) {
  const double moved = f.displacement / (most_displaced * part.length), turned = f.rotation / most_turned;
  return std::isfinite(moved + turned) ? std::max(moved, turned) : std::numeric_limits<double>::infinity();
}

/// Mean displacement and rotation of a component, and the deformation of its nodes.
struct MeanMotion {
  Vector6d mean = Vector6d::Zero(); ///< of the component's centre
  double besides = 0;               ///< share of the displacements that is bending: 0 rigid
};

MeanMotion mean_motion(const Model& m, const Substructure& comp, const StepSolution& step) {
  MeanMotion out;
  Eigen::Vector3d middle = Eigen::Vector3d::Zero();
  const auto moving = std::ranges::count_if(comp.nodes, [&](int n) { return m.mesh.nodes[n].moves(); });
  for (const int n : comp.nodes) {
    if (!m.mesh.nodes[n].moves()) continue;
    out.mean += step.motion[n] / static_cast<double>(moving);
    middle += m.mesh.nodes[n].x / static_cast<double>(moving);
  }
  const Eigen::Vector3d turn = out.mean.tail<3>();
  double whole = 0, rest = 0;
  for (const int n : comp.nodes) {
    if (!m.mesh.nodes[n].moves()) continue;
    const Eigen::Vector3d u = step.motion[n].head<3>();
    const Eigen::Vector3d rigid = out.mean.head<3>() + turn.cross(m.mesh.nodes[n].x - middle);
    whole += u.squaredNorm();
    rest += (u - rigid).squaredNorm();
  }
  out.besides = whole > 0 ? rest / whole : 0;
  return out;
}

std::string listed(const std::vector<std::string>& names) {
  std::string out;
  for (std::size_t i = 0; i < names.size() && i < 6; ++i) out += (i > 0 ? ", " : "") + names[i];
  return names.size() > 6 ? out + " and " + std::to_string(names.size() - 6) + " more" : out;
}

std::string label_of(const Joint& j) {
  return with_kind(info(j.kind).key, j.name);
}

bool touches(const Model& m, const JointSpring& row, int component) {
  return std::any_of(row.terms.begin(), row.terms.end(),
                     [&](const auto& t) { return m.rows.functionals()[t.first].component == component; });
}

/// The joint of a component that deflects most, where that is a large part of its displacement: "support right deflects
/// by 34 mm"; else empty.
std::string softest_joint(const Model& m, int component, const StepSolution& step, double displacement) {
  double most = displacement / 2;
  const Joint* softest = nullptr;
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const JointSpring& row = step.rows[r];
    if (row.direction >= 3 || !step.active[r] || !touches(m, row, component)) continue;
    const double give = std::abs(step.force[static_cast<Eigen::Index>(r)]) * row.compliance;
    if (!(give > most)) continue;
    most = give;
    softest = &m.mesh.joints[row.joint];
  }
  if (!softest) return "";
  char text[64];
  std::snprintf(text, sizeof text, " deflects by %.3g mm", most * 1e3);
  return label_of(*softest) + text;
}

/// The one-sided joints of a component, by whether they carry; pads of the nose as one.
std::string held_by(const Model& m, int component, const StepSolution& step) {
  std::array<std::vector<std::string>, 2> names; // open, carrying
  double from = std::numeric_limits<double>::infinity(), to = -from;
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const JointSpring& row = step.rows[r];
    const Joint& j = m.mesh.joints[row.joint];
    if (row.sense == UnilateralType::both || !touches(m, row, component)) continue;
    if (j.kind == JointKind::pad) {
      if (step.active[r]) from = std::min(from, j.b.at.x()), to = std::max(to, j.b.at.x());
      continue;
    }
    std::vector<std::string>& list = names[step.active[r] ? 1 : 0];
    if (std::string name = label_of(j); std::ranges::find(list, name) == list.end()) list.push_back(std::move(name));
  }
  if (from <= to) {
    char text[64];
    std::snprintf(text, sizeof text, "the nose from x = %.4g to %.4g mm", from * 1e3, to * 1e3);
    names[1].emplace_back(text);
  }
  if (names[0].empty() && names[1].empty()) return "";
  return (names[0].empty() ? "" : "open: " + listed(names[0]) + "; ") +
         (names[1].empty() ? "none of its one-sided joints carries load" : "carrying: " + listed(names[1]));
}

std::string trouble_with(const Model& m, const Part& part, const Farthest& f, const StepSolution& step) {
  const Substructure& comp = m.map.substructures[static_cast<std::size_t>(part.component)];
  if (!std::isfinite(f.displacement))
    return "step " + step.name + ": " + "the displacement of " + part.name +
           " is not a number: a size, stiffness or load of the case "
           "is too large";
  MeanMotion motion = mean_motion(m, comp, step);
  // The middle of a lever that turns about one end shifts by half the displacement of the other end: it turns.
  if (motion.mean.tail<3>().norm() * extent(m.mesh, comp.nodes) / 2 > motion.mean.head<3>().norm() / 2)
    motion.mean.head<3>().setZero();
  char text[256];
  std::snprintf(text, sizeof text, "%s is displaced by %.3g mm and turned by %.3g deg at x = %.4g mm",
                part.name.c_str(), f.displacement * 1e3, si::in_degrees(f.rotation), m.mesh.nodes[f.moved].x.x() * 1e3);
  std::string out = "step " + step.name + ": ";
  out += motion.besides < 0.25 ? describe_rigid(comp, motion.mean) + ": " + text
                               : std::string(text) + ", since it bends or twists";
  std::snprintf(text, sizeof text,
                "; beyond %.3g mm (1/30 of its length) or 10 deg small-displacement theory does not "
                "apply, and no result is valid",
                most_displaced * part.length * 1e3);
  out += text;
  for (const std::string& why :
       {softest_joint(m, part.component, step, f.displacement), held_by(m, part.component, step)})
    if (!why.empty()) out += ". " + why;
  return out;
}

} // namespace

std::optional<std::string> beyond_small_displacements(const Model& m, const StepSolution& step) {
  const std::vector<Travel> travel = prescribed_travel(m);
  const Part* worst = nullptr;
  Farthest how;
  double most = 1;
  const std::vector<Part> parts = parts_of(m);
  for (const Part& p : parts) {
    const Farthest f = farthest(p, travel[static_cast<std::size_t>(p.component)], step);
    const double used = range_used(p, f);
    if (!(used > most)) continue;
    worst = &p;
    how = f;
    most = used;
  }
  if (!worst) return std::nullopt;
  return trouble_with(m, *worst, how, step);
}

std::vector<Reason> roughly_displaced(const Model& m, const StepSolution& step) {
  const std::vector<Travel> travel = prescribed_travel(m);
  const double far =
      m.machine.sheet ? rough_thicknesses * m.machine.sheet->thickness : std::numeric_limits<double>::infinity();
  std::map<int, Reason> worst; // by component
  for (const Part& p : parts_of(m)) {
    const Farthest f = farthest(p, travel[static_cast<std::size_t>(p.component)], step);
    const bool turned = f.rotation / roughly_turned > f.displacement / far;
    const std::string& name = m.map.substructures[static_cast<std::size_t>(p.component)].name;
    Reason r = turned ? Reason{Failure::moves, name, "rotation", f.rotation, roughly_turned, Quantity::angle}
                      : Reason{Failure::moves, name, "displacement", f.displacement, far, Quantity::length};
    r.step = step.name;
    r.x = m.mesh.nodes[turned ? f.turned : f.moved].x.x();
    if (!(r.over() > 1)) continue;
    const auto known = worst.find(p.component);
    if (known == worst.end() || clearly_greater(r.over(), known->second.over())) worst[p.component] = r;
  }
  std::vector<Reason> out;
  for (auto& [component, r] : worst) out.push_back(std::move(r));
  return out;
}

} // namespace bedbow
