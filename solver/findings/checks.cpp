#include "mesh/machine/frame.h"
#include "solver/findings/certificate.h"
#include "solver/findings/results.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Loads and joint forces on a component: on its free unknowns, and their resultant about its centre.
struct PartLoad {
  Eigen::VectorXd unknowns;
  Vector6d resultant = Vector6d::Zero();
};

std::vector<PartLoad> part_loads(const Model& m, const StepSolution& step) {
  std::vector<PartLoad> parts;
  for (const Component& c : m.map.components)
    parts.push_back({gather(m.map, c, step.loads), resultant(m.mesh, c, step.loads)});
  for (std::size_t r = 0; r < step.rows.size(); ++r)
    for (auto [f, v] : step.rows[r].terms) {
      const Functional& functional = m.rows.functionals()[f];
      if (functional.component < 0) continue;
      PartLoad& p = parts[functional.component];
      const double force = -v * step.force[static_cast<Eigen::Index>(r)];
      for (auto [dof, value] : functional.terms) p.unknowns[dof] += force * value;
      p.resultant += force * functional.rigid;
    }
  return parts;
}

/// Forces on the whole machine and their moment about a point.
class Whole {
public:
  explicit Whole(const Eigen::Vector3d& centre)
      : centre_(centre) {}
  void add(const Eigen::Vector3d& at, const Eigen::Vector3d& force, const Eigen::Vector3d& moment) {
    force_ += force;
    moment_ += moment + (at - centre_).cross(force);
  }
  /// What is left over of those that a machine in the plane or in space can bring [N]. \param size of the machine [m].
  [[nodiscard]] double rest(bool plane, double size) const {
    double most = 0;
    for (int k = 0; k < 6; ++k)
      if (moves(plane, k)) most = std::max(most, std::abs(k < 3 ? force_[k] : moment_[k - 3] / size));
    return most;
  }

private:
  Eigen::Vector3d centre_, force_ = Eigen::Vector3d::Zero(), moment_ = Eigen::Vector3d::Zero();
};

/// What ground does to the machine through joints, holds apart.
void add_ground(const Model& m, const StepSolution& step, const Eigen::Matrix3d& turn, Whole& whole) {
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const Row& row = step.rows[r];
    const Joint& j = m.mesh.joints[row.joint];
    if (j.kind == JointKind::hold || !(j.a.ground() || j.b.ground())) continue;
    const Place& held = j.a.ground() ? j.b : j.a;
    const Eigen::Vector3d at = held.frame == Frame::apron ? Eigen::Vector3d(turn * held.at) : held.at;
    // A row's tension pulls its two places together, so ground pulls back on what it holds.
    const double sign = j.a.ground() ? -1 : 1;
    const Eigen::Vector3d pull =
        sign * step.force[static_cast<Eigen::Index>(r)] * j.axes.row(row.direction % 3).transpose();
    const Eigen::Vector3d none = Eigen::Vector3d::Zero();
    whole.add(at, row.direction < 3 ? pull : none, row.direction < 3 ? none : pull);
  }
}

/// Loads and reactions on the whole machine: what is left over [N]. The reactions of holds are those that the results
/// report, so that a wrong one shows.
double whole_machine(const Model& m, const StepSolution& step, const StepResult& out) {
  if (m.map.plane && step.angle != 0) return 0; // seen in the plane, a swung apron's forces do not add up with the rest
  Eigen::AlignedBox3d box;
  for (const Node& n : m.mesh.nodes) box.extend(n.x);
  Whole whole(box.center());
  const Eigen::Matrix3d turn = apron_turn(step.angle);
  for (std::size_t n = 0; n < m.mesh.nodes.size(); ++n) {
    const Vector6d& p = step.loads.nodal[n];
    if (p.isZero(0)) continue;
    const Eigen::Matrix3d t = m.mesh.nodes[n].frame == Frame::apron ? turn : Eigen::Matrix3d::Identity();
    whole.add(t * m.mesh.nodes[n].x, t * p.head<3>(), t * p.tail<3>());
  }
  add_ground(m, step, turn, whole);
  for (std::size_t i = m.machine.supports.size(); i < out.supports.size(); ++i)
    whole.add(out.supports[i].at, out.supports[i].force, out.supports[i].moment);
  return whole.rest(m.map.plane, box.diagonal().norm());
}

double greatest_force(const StepSolution& step) {
  double most = step.loads.greatest;
  for (std::size_t r = 0; r < step.rows.size(); ++r)
    if (step.rows[r].direction < 3) most = std::max(most, std::abs(step.force[static_cast<Eigen::Index>(r)]));
  return most;
}

void check_one_sided(const Model& m, const StepSolution& step, double force, StepChecks& checks) {
  double deflection = 0;
  for (const Vector6d& v : step.motion) deflection = std::max(deflection, v.head<3>().cwiseAbs().maxCoeff());
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const Row& row = step.rows[r];
    if (row.sense == Sense::both) continue;
    const auto i = static_cast<Eigen::Index>(r);
    const double sign = row.sense == Sense::tension ? 1 : -1;
    // Beyond the spring's own law: what the stretch has over force times compliance.
    const double over = sign * (step.stretch[i] - row.gap - row.compliance * step.force[i]);
    const bool forced = m.mesh.joints[row.joint].preload && !step.bending;
    if (!forced && deflection > 0) checks.worst_closure = std::max(checks.worst_closure, over / deflection);
    checks.worst_tension = std::max(checks.worst_tension, -sign * step.force[i] / force);
  }
}

} // namespace

void fill_checks(const Model& m, const StepSolution& step, StepResult& out) {
  StepChecks& checks = out.checks;
  checks.contact_iterations = step.iterations;
  const double force = greatest_force(step);
  if (force < least_force) return; // nothing acts: there is nothing to balance
  const auto parts = part_loads(m, step);
  double residual = 0;
  double scale = 0;
  for (std::size_t c = 0; c < parts.size(); ++c) {
    const Component& comp = m.map.components[c];
    if (comp.size > 0) {
      const Eigen::VectorXd r =
          m.structure.stiffness[c].selfadjointView<Eigen::Lower>() * step.displacements.elastic[c] - parts[c].unknowns;
      residual += r.squaredNorm();
      scale += parts[c].unknowns.squaredNorm();
    }
    // Movements that holds to ground leave free must balance; without holds that is all six.
    const Eigen::VectorXd work = comp.rigid.transpose() * parts[c].resultant;
    if (work.size()) checks.equilibrium = std::max(checks.equilibrium, work.cwiseAbs().maxCoeff() / force);
  }
  if (force > 0) checks.equilibrium = std::max(checks.equilibrium, whole_machine(m, step, out) / force);
  checks.residual = scale > 0 ? std::sqrt(residual / scale) : 0;
  check_one_sided(m, step, force, checks);
}

} // namespace bedbow
