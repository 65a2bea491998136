#include "solver/certificate.h"
#include "solver/results.h"

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
  checks.residual = scale > 0 ? std::sqrt(residual / scale) : 0;
  check_one_sided(m, step, force, checks);
}

} // namespace bedbow
