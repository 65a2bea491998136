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
  for (const Substructure& c : m.map.substructures)
    parts.push_back({gather(m.map, c, step.loads), resultant(m.mesh, c, step.loads)});
  for (std::size_t r = 0; r < step.rows.size(); ++r)
    for (auto [f, v] : step.rows[r].terms) {
      const DisplacementFunctional& functional = m.rows.functionals()[f];
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
  /// Residual of the equilibrium conditions of a machine in the plane or in space [N]. \param size of the machine [m].
  [[nodiscard]] double rest(bool plane, double size) const {
    double most = 0;
    for (int k = 0; k < 6; ++k)
      if (moves(plane, k)) most = std::max(most, std::abs(k < 3 ? force_[k] : moment_[k - 3] / size));
    return most;
  }

private:
  Eigen::Vector3d centre_, force_ = Eigen::Vector3d::Zero(), moment_ = Eigen::Vector3d::Zero();
};

/// Forces of all joints on the joined parts, without holds: the sum is that of the ground. Two sides at different
/// places, as of a tie between apron and bed once the apron is up, leave a couple, which results from the case and is
/// not an error of the solution; so all of it counts.
void add_joints(const Model& m, const StepSolution& step, const Eigen::Matrix3d& turn, Whole& whole) {
  const Eigen::Vector3d none = Eigen::Vector3d::Zero();
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const JointSpring& row = step.rows[r];
    const Joint& j = m.mesh.joints[row.joint];
    if (j.kind == JointKind::hold || (j.a.frame == j.b.frame && !j.a.ground() && !j.b.ground())) continue;
    // A row's tension pulls its two places together.
    const Eigen::Vector3d pull = step.force[static_cast<Eigen::Index>(r)] * j.axes.row(row.direction % 3).transpose();
    for (const auto& [place, sign] : {std::pair{&j.a, 1.0}, std::pair{&j.b, -1.0}}) {
      if (place->ground()) continue;
      const Eigen::Vector3d at = place->frame == Frame::apron ? Eigen::Vector3d(turn * place->at) : place->at;
      const Eigen::Vector3d on = sign * pull;
      whole.add(at, row.direction < 3 ? on : none, row.direction < 3 ? none : on);
    }
  }
}

/// Residual of loads and reactions on the whole machine [N]. The reactions of holds are those in the results, so that
/// a wrong one is detected.
double whole_machine(const Model& m, const StepSolution& step, const StepResult& out) {
  if (m.map.plane && step.angle != 0)
    return 0; // in the plane, a swung apron's forces are not in equilibrium with the rest
  Eigen::AlignedBox3d box;
  for (const Node& n : m.mesh.nodes) box.extend(n.x);
  Whole whole(box.center());
  const Eigen::Matrix3d turn = apron_turn(step.angle);
  for (std::size_t n = 0; n < m.mesh.nodes.size(); ++n) {
    const Vector6d& p = step.loads.nodal[n];
    if (p.isZero(0) || !m.mesh.nodes[n].moves()) continue;
    const Eigen::Matrix3d t = m.mesh.nodes[n].frame == Frame::apron ? turn : Eigen::Matrix3d::Identity();
    whole.add(t * m.mesh.nodes[n].x, t * p.head<3>(), t * p.tail<3>());
  }
  add_joints(m, step, turn, whole);
  const auto standing = joints_of(out, JointKind::support); // the machine's supports, then its holds; or none yet
  for (std::size_t i = m.machine.supports.size(); i < standing.size(); ++i)
    whole.add(standing[i].at, standing[i].force, standing[i].moment);
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
  for (std::size_t n = 0; n < step.motion.size(); ++n)
    if (m.mesh.nodes[n].moves()) deflection = std::max(deflection, step.motion[n].head<3>().cwiseAbs().maxCoeff());
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const JointSpring& row = step.rows[r];
    if (row.sense == UnilateralType::both) continue;
    const auto i = static_cast<Eigen::Index>(r);
    const double sign = row.sense == UnilateralType::tension ? 1 : -1;
    // Deviation from the spring's law: stretch less force times compliance.
    const double over = sign * (step.elongation[i] - row.gap - row.compliance * step.force[i]);
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
  if (force < least_force) return; // no forces: nothing to balance
  const auto parts = part_loads(m, step);
  double residual = 0;
  double scale = 0;
  for (std::size_t c = 0; c < parts.size(); ++c) {
    const Substructure& comp = m.map.substructures[c];
    if (comp.size > 0) {
      const Eigen::VectorXd r =
          m.factored.stiffness[c].selfadjointView<Eigen::Lower>() * step.displacements.elastic[c] - parts[c].unknowns;
      residual += r.squaredNorm();
      scale += parts[c].unknowns.squaredNorm();
    }
    // Modes that the holds leave free must be in equilibrium; without holds these are all six.
    const Eigen::VectorXd work = comp.rigid.transpose() * parts[c].resultant;
    if (work.size()) checks.equilibrium = std::max(checks.equilibrium, work.cwiseAbs().maxCoeff() / force);
  }
  if (force > 0) checks.equilibrium = std::max(checks.equilibrium, whole_machine(m, step, out) / force);
  checks.residual = scale > 0 ? std::sqrt(residual / scale) : 0;
  check_one_sided(m, step, force, checks);
}

} // namespace bedbow
