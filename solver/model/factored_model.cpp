#include "solver/model/factored_model.h"

#include "solver/model/substructure_cache.h"

#include <Eigen/Geometry>

#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

/// The functionals' coefficients as sparse columns.
Eigen::SparseMatrix<double> loads_of(const Substructure& comp, const std::vector<DisplacementFunctional>& functionals,
                                     const std::vector<int>& list) {
  std::vector<Eigen::Triplet<double>> entries;
  for (std::size_t j = 0; j < list.size(); ++j)
    for (auto [dof, value] : functionals[list[j]].terms) entries.emplace_back(dof, static_cast<int>(j), value);
  Eigen::SparseMatrix<double> p(comp.size, static_cast<Eigen::Index>(list.size()));
  p.setFromTriplets(entries.begin(), entries.end());
  return p;
}

/// The node and dof of the part at which factoring broke down.
SubstructureMechanism mechanism_at(int unknown, const Substructure& comp, const Mesh& mesh, const DofMap& map) {
  SubstructureMechanism m;
  m.part = comp.name;
  for (int n : comp.nodes)
    for (int k = 0; k < 6; ++k)
      if (map.dofs[n][k] == unknown) {
        m.at = mesh.nodes[n].x;
        m.dof = k;
      }
  return m;
}

/// Factor of one component, and the compliance of its functionals; both from the cache where available.
void factor_component(std::size_t c, const Mesh& mesh, const DofMap& map,
                      const std::vector<DisplacementFunctional>& functionals, const LinearSolverEntry& solver,
                      SubstructureCache* cache, FactoredModel& s) {
  const Substructure& comp = map.substructures[c];
  if (comp.size == 0) return; // a part of one node: not elastic
  const auto& list = s.functionals_of[c];
  const FactorHints hints = hints_of(comp, map.plane);
  const Eigen::SparseMatrix<double> loads = loads_of(comp, functionals, list);
  const PartKey key{s.stiffness[c], loads, hints, solver.name};
  if (const FactoredPart* known = cache ? cache->find(key) : nullptr) {
    s.factors[c] = known->factor;
    s.compliance(list, list) = known->compliance;
    return;
  }
  FactorOutcome outcome = solver.factor(s.stiffness[c], hints);
  if (!outcome.factorization) {
    s.mechanisms.push_back(mechanism_at(outcome.zero_pivot, comp, mesh, map));
    return;
  }
  FactoredPart part{std::move(outcome.factorization), {}};
  s.factors[c] = part.factor;
  part.compliance = part.factor->compliance(loads);
  s.compliance(list, list) = part.compliance;
  if (cache) cache->keep(key, std::move(part));
}

/// The norm of a functional's row for the rigid-body modes if all terms had the same sign.
double reach_of(const DisplacementFunctional& functional, const Substructure& comp) {
  const double forces = functional.rigid.head<3>().norm();
  const double moments = functional.rigid.tail<3>().norm();
  double square = 0;
  for (Eigen::Index k = 0; k < comp.rigid.cols(); ++k)
    square += std::pow(forces * comp.rigid.col(k).head<3>().norm() + moments * comp.rigid.col(k).tail<3>().norm(), 2);
  return std::sqrt(square);
}

} // namespace

FactoredModel factor_model(const Machine& machine, const Mesh& mesh, const DofMap& map, const ElementData& data,
                           const std::vector<DisplacementFunctional>& functionals,
                           const Registry<LinearSolverEntry>& solvers, SubstructureCache* cache) {
  const std::string& wanted = machine.solve.linear_solver;
  const LinearSolverEntry& solver = solvers.get(wanted.empty() ? "auto" : wanted);
  FactoredModel s;
  s.solver = solver.name;
  s.stiffness = assemble_stiffness(machine, mesh, map, data);
  const std::size_t n = map.substructures.size();
  s.factors.resize(n);
  s.functionals_of.resize(n);
  Eigen::Index r = 0;
  for (const Substructure& c : map.substructures) {
    s.rigid_start.push_back(r);
    r += c.rigid.cols();
    s.unknowns += c.size;
  }
  const auto nf = static_cast<Eigen::Index>(functionals.size());
  s.compliance = Eigen::MatrixXd::Zero(nf, nf);
  s.rigid = Eigen::MatrixXd::Zero(nf, r);
  for (std::size_t f = 0; f < functionals.size(); ++f)
    if (functionals[f].component >= 0) s.functionals_of[functionals[f].component].push_back(static_cast<int>(f));
  for (std::size_t c = 0; c < n; ++c) factor_component(c, mesh, map, functionals, solver, cache, s);
  if (!s.mechanisms.empty()) return s;
  s.reach.assign(functionals.size(), 0);
  for (std::size_t c = 0; c < n; ++c) {
    const Substructure& comp = map.substructures[c];
    for (int f : s.functionals_of[c]) s.reach[f] = reach_of(functionals[f], comp);
    for (int f : s.functionals_of[c])
      s.rigid.block(f, s.rigid_start[c], 1, comp.rigid.cols()) = functionals[f].rigid.transpose() * comp.rigid;
  }
  return s;
}

Eigen::RowVectorXd rigid_elongation(const FactoredModel& s, const JointSpring& row) {
  constexpr double rounding = 1e-9; // far above that of the sums, far below any lever of a machine
  Eigen::RowVectorXd out = Eigen::RowVectorXd::Zero(s.rigid.cols());
  double reach = 0;
  for (auto [f, v] : row.terms) {
    out += v * s.rigid.row(f);
    reach += std::abs(v) * s.reach[f];
  }
  if (out.norm() <= rounding * reach) out.setZero();
  return out;
}

std::vector<Vector6d> node_motions(const Mesh& mesh, const DofMap& map, const FactoredModel& s,
                                   const Displacements& d) {
  std::vector<Vector6d> rigid; // by component: (translation, rotation) about its centre
  for (std::size_t c = 0; c < map.substructures.size(); ++c) {
    const Substructure& comp = map.substructures[c];
    rigid.emplace_back(comp.rigid * d.rigid_amplitudes.segment(s.rigid_start[c], comp.rigid.cols()));
  }
  std::vector<Vector6d> out(mesh.nodes.size());
  for (std::size_t i = 0; i < out.size(); ++i) {
    const NodeLink& l = map.links[i];
    const int c = map.substructure[i];
    Vector6d& m = out[i];
    m.setZero();
    if (mesh.nodes[i].moves()) m = carry(mesh.nodes[l.ref].x - map.substructures[c].centre) * rigid[c];
    const std::array<int, 6>& dofs = map.dofs[l.ref];
    for (int k = 0; k < 6; ++k)
      if (dofs[k] >= 0) m[k] += d.elastic[c][dofs[k]];
    const Eigen::Vector3d theta = m.tail<3>();
    m.head<3>() += theta.cross(l.arm);
  }
  return out;
}

} // namespace bedbow
