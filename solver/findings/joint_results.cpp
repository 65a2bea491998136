#include "mesh/machine/frame.h"
#include "solver/findings/joint_checks.h"
#include "solver/findings/results.h"
#include "solver/findings/statics_results.h"
#include "solver/model/recovery.h"
#include "solver/strength/screw.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>

namespace bedbow {

namespace {

/// Forces of one joint, gathered from its rows. Force and moment act on the first of the case's `joins`.
struct Gathered {
  Eigen::Vector3d force = Eigen::Vector3d::Zero(), moment = Eigen::Vector3d::Zero();
  std::array<double, 6> spring{}; ///< by direction, tension positive
  bool open = false;
};

std::vector<Gathered> gather_rows(const Model& m, const StepSolution& step) {
  std::vector<Gathered> out(m.mesh.joints.size());
  const Eigen::Matrix3d turn = apron_turn(step.angle);
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const JointSpring& row = step.rows[r];
    const Joint& j = m.mesh.joints[row.joint];
    Gathered& g = out[row.joint];
    const double f = step.force[static_cast<Eigen::Index>(r)];
    Eigen::Vector3d d = j.axes.row(row.direction % 3);
    // Joints between two parts of the apron use its axes; in the plane, so do those that join it to the rest.
    const bool one = j.a.frame == Frame::apron || j.b.frame == Frame::apron;
    if (m.map.plane ? one : j.a.frame == Frame::apron && j.b.frame == Frame::apron) d = turn * d;
    (row.direction < 3 ? g.force : g.moment) += (j.swapped ? -f : f) * d;
    g.spring[row.direction] = f;
    if (row.sense != UnilateralType::both && !step.active[r]) g.open = true;
  }
  return out;
}

/// Adds the forces of a hinge's stops, joints of their own that follow it, to those of the hinge.
void add_stops(const Model& m, std::vector<Gathered>& all) {
  std::size_t hinge = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Joint& j = m.mesh.joints[i];
    if (j.kind != JointKind::hinge) continue;
    if (j.part == 0) {
      hinge = i;
    } else {
      all[hinge].force += all[i].force;
      all[hinge].moment += all[i].moment;
    }
  }
}

JointResult base_result(const Model& m, const Joint& j, const Gathered& g, double angle) {
  JointResult r;
  r.kind = j.kind == JointKind::rod || j.kind == JointKind::member_end ? JointKind::tie : j.kind;
  r.name = j.name;
  r.at = j.b.frame == Frame::apron ? Eigen::Vector3d(apron_turn(angle) * j.b.at) : j.b.at;
  r.force = g.force;
  r.moment = g.moment;
  r.open = g.open;
  r.value = g.force.norm();
  fill_joined(m, j, angle, r);
  return r;
}

void take(JointResult& r, JointChecks checks) {
  r.utilisation = checks.utilisation();
  r.checks = std::move(checks.checks);
  r.remarks = std::move(checks.remarks);
}

JointResult post_result(const Model& m, const StepSolution& step, const Joint& j, const Gathered& g) {
  JointResult r = base_result(m, j, g, step.angle);
  const Post& post = m.machine.posts[j.index];
  r.value = g.spring[uz];
  const double shear = std::hypot(g.spring[ux], g.spring[uy]);
  const Vector6d apart = place_motion(step, j.b) - place_motion(step, j.a);
  // Turning about y carries the upper end along +x, about x along -y.
  const StudEnds ends{{apart[ux], apart[uy]}, {apart[ry], -apart[rx]}};
  r.more.push_back({"apart", Quantity::length, apart[uz]});
  if (post.preload) r.more.push_back({"preload_loss", Quantity::force, *post.preload - r.value});
  r.more.push_back({"shear", Quantity::force, shear});
  r.more.push_back({"sideways", Quantity::length, std::hypot(apart[ux], apart[uy])});
  r.more.push_back({"tilt", Quantity::angle, std::hypot(apart[rx], apart[ry])});
  take(r, check_post(m.machine, m.mesh, post, r.value, shear, ends));
  return r;
}

JointResult cam_result(const Model& m, const Joint& j, const Gathered& g, double angle) {
  JointResult r = base_result(m, j, g, angle);
  r.value = -g.spring[uz];
  take(r, check_cam(m.machine, m.mesh, m.machine.cams[j.index], r.value));
  return r;
}

JointResult hinge_result(const Model& m, const StepSolution& step, const Joint& j, const Gathered& g) {
  JointResult r = base_result(m, j, g, step.angle);
  // Pin and hole are checked with the force across; along the pin there is no pressure on the hole.
  const double across = std::hypot(r.force.y(), r.force.z());
  r.more = {{"across", Quantity::force, across}, {"thrust", Quantity::force, std::abs(r.force.x())}};
  take(r, check_hinge(m.machine, m.mesh, m.machine.hinges[j.index], across, step.bending));
  return r;
}

/// The moment that stops the apron, and the hand's force where the handle's reach is known.
JointResult handle_result(const Model& m, const StepSolution& step, const Joint& j, const Gathered& g) {
  JointResult r = base_result(m, j, g, step.angle);
  const double moment = std::abs(g.spring[rx]);
  r.more = {{"moment", Quantity::moment, moment}};
  r.value = moment / m.machine.handles[j.index].reach; // NaN where the reach is omitted
  return r;
}

/// Load of one screw.
struct ScrewLoad {
  Eigen::Vector3d force = Eigen::Vector3d::Zero(); ///< on the first of `joins`, axes of the frame [N]
  double shear = 0, tension = 0;                   ///< [N], tension >= 0 including prying
};

ScrewLoad screw_load(const StepSolution& step, const Joint& j) {
  const auto f = screw_springs(step, j);
  const int across = j.normal == uy ? uz : uy;
  const Eigen::Vector3d force(f[0], f[1], f[2]);
  // The faces keep the bars from rolling by a couple over their width w (stiffness normal w^2/12): the bar tips about
  // its heel w/2 beside the screw, which resists by tension.
  const double width = std::sqrt(12 * j.stiffness[rx] / j.stiffness[j.normal]);
  const double prying = width > 0 ? prying_tension(std::abs(f[rx]), 1, width / 2) : 0; // a moment is a force at 1 m
  return {j.swapped ? Eigen::Vector3d(-force) : force, std::hypot(f[ux], f[across]),
          std::max(f[j.normal], 0.0) + prying};
}

/// The worst screw of a row, and the greatest loads of all.
struct WorstScrew {
  JointResult result;
  double tension = 0, greatest_shear = 0, greatest_tension = 0; ///< [N]
  int number = 0;                                               ///< in the row, from 1
  /// Nothing of this can change by a further screw: what it uses of its strength grows with shear and tension.
  [[nodiscard]] bool spares(const ScrewLoad& load) const {
    return load.shear <= result.value && load.tension <= tension;
  }
};

/// One result per row of screws: its worst screw, by utilisation where the class is known, else by shear.
void add_screws(const Model& m, const StepSolution& step, StepResult& out) {
  std::map<int, WorstScrew> rows;
  std::map<int, ScrewFaces> faces; // by row; finding them in a mesh is slow
  for (const Joint& j : m.mesh.joints) {
    if (j.kind != JointKind::screw) continue;
    const ScrewLoad load = screw_load(step, j);
    if (const auto worst = rows.find(j.index); worst != rows.end() && worst->second.spares(load)) continue;
    const Screws& row = m.machine.screws[j.index];
    auto known = faces.find(j.index);
    if (known == faces.end()) known = faces.emplace(j.index, screw_faces(m.machine, m.mesh, row)).first;
    JointChecks checks = check_screws(m.machine, m.mesh, row, known->second, load.shear, load.tension);
    const double utilisation = checks.utilisation();
    auto [it, fresh] = rows.try_emplace(j.index);
    WorstScrew& w = it->second;
    JointResult& r = w.result;
    const bool worse = clearly_greater(utilisation, r.utilisation) ||
                       (!clearly_greater(r.utilisation, utilisation) && clearly_greater(load.shear, r.value));
    if (fresh || worse) {
      r = base_result(m, j, {}, step.angle);
      r.force = j.a.frame == Frame::apron ? Eigen::Vector3d(apron_turn(step.angle) * load.force) : load.force;
      r.value = load.shear;
      take(r, std::move(checks));
      w.tension = load.tension;
      w.number = j.part + 1;
    }
    w.greatest_shear = std::max(w.greatest_shear, load.shear);
    w.greatest_tension = std::max(w.greatest_tension, load.tension);
  }
  for (auto& [index, w] : rows) {
    w.result.more = {{"greatest_shear", Quantity::force, w.greatest_shear},
                     {"greatest_tension", Quantity::force, w.greatest_tension},
                     {"screw", Quantity::ratio, static_cast<double>(w.number)},
                     {"tension", Quantity::force, w.tension}};
    out.joints.push_back(std::move(w.result));
  }
}

} // namespace

void fill_joints(const Model& m, const StepSolution& step, StepResult& out) {
  auto gathered = gather_rows(m, step);
  add_stops(m, gathered);
  std::vector<JointResult> of_members; // after the ties of the case
  for (std::size_t i = 0; i < m.mesh.joints.size(); ++i) {
    const Joint& j = m.mesh.joints[i];
    const Gathered& g = gathered[i];
    switch (j.kind) {
    case JointKind::post:
      out.joints.push_back(post_result(m, step, j, g));
      break;
    case JointKind::cam:
      out.joints.push_back(cam_result(m, j, g, step.angle));
      break;
    case JointKind::hinge:
      if (j.part == 0) out.joints.push_back(hinge_result(m, step, j, g));
      break;
    case JointKind::handle:
      out.joints.push_back(handle_result(m, step, j, g));
      break;
    case JointKind::touch:
      if (!(g.spring[uz] < 0)) break;
      out.joints.push_back(base_result(m, j, g, step.angle));
      out.joints.back().value = -g.spring[uz];
      break;
    case JointKind::rod:
    case JointKind::member_end:
      of_members.push_back(base_result(m, j, g, step.angle));
      break;
    case JointKind::screw:
      break; // by rows, below
    default:
      if (info(j.kind).plural) out.joints.push_back(base_result(m, j, g, step.angle));
    }
  }
  std::ranges::move(of_members, std::back_inserter(out.joints));
  add_screws(m, step, out);
  fill_holds(m, step, out);
  std::stable_sort(out.joints.begin(), out.joints.end(),
                   [](const JointResult& a, const JointResult& b) { return a.kind < b.kind; });
}

} // namespace bedbow
