#include "solver/structure.h"

#include <Eigen/Geometry>

#include <stdexcept>

namespace bedbow {

namespace {

/// The functionals' coefficients as sparse columns.
Eigen::SparseMatrix<double> loads_of(const Component& comp, const std::vector<Functional>& functionals,
                                     const std::vector<int>& list) {
  std::vector<Eigen::Triplet<double>> entries;
  for (std::size_t j = 0; j < list.size(); ++j)
    for (auto [dof, value] : functionals[list[j]].terms) entries.emplace_back(dof, static_cast<int>(j), value);
  Eigen::SparseMatrix<double> p(comp.size, static_cast<Eigen::Index>(list.size()));
  p.setFromTriplets(entries.begin(), entries.end());
  return p;
}

void factor_component(std::size_t c, const Mesh& mesh, const DofMap& map, const LinearSolverEntry& solver,
                      Structure& s) {
  const Component& comp = map.components[c];
  if (comp.size == 0) return; // a part of one node: nothing elastic in it
  FactorOutcome outcome = solver.factor(s.stiffness[c], hints_of(comp, map.plane));
  if (outcome.factorization) {
    s.factors[c] = std::move(outcome.factorization);
    return;
  }
  PartMechanism m;
  m.part = comp.name;
  for (int n : comp.nodes)
    for (int k = 0; k < 6; ++k)
      if (map.dofs[n][k] == outcome.zero_pivot) {
        m.at = mesh.nodes[n].x;
        m.dof = k;
      }
  s.mechanisms.push_back(m);
}

/// Compliance and rigid movements of the functionals of one component.
void condense(std::size_t c, const Component& comp, const std::vector<Functional>& functionals, Structure& s) {
  const auto& list = s.functionals_of[c];
  if (list.empty()) return;
  if (s.factors[c]) s.compliance(list, list) = s.factors[c]->compliance(loads_of(comp, functionals, list));
  for (int f : list)
    s.rigid.block(f, s.rigid_start[c], 1, comp.rigid.cols()) = functionals[f].rigid.transpose() * comp.rigid;
}

} // namespace

Structure make_structure(const Machine& machine, const Mesh& mesh, const DofMap& map, const ElementData& data,
                         const std::vector<Functional>& functionals, const Registry<LinearSolverEntry>& solvers) {
  const std::string& wanted = machine.solve.linear_solver;
  const LinearSolverEntry& solver = solvers.get(wanted.empty() ? "auto" : wanted);
  Structure s;
  s.solver = solver.name;
  s.stiffness = assemble_stiffness(machine, mesh, map, data);
  const std::size_t n = map.components.size();
  s.factors.resize(n);
  s.functionals_of.resize(n);
  Eigen::Index r = 0;
  for (const Component& c : map.components) {
    s.rigid_start.push_back(r);
    r += c.rigid.cols();
    s.unknowns += c.size;
  }
  for (std::size_t c = 0; c < n; ++c) factor_component(c, mesh, map, solver, s);
  if (!s.mechanisms.empty()) return s;
  const auto nf = static_cast<Eigen::Index>(functionals.size());
  s.compliance = Eigen::MatrixXd::Zero(nf, nf);
  s.rigid = Eigen::MatrixXd::Zero(nf, r);
  for (std::size_t f = 0; f < functionals.size(); ++f)
    if (functionals[f].component >= 0) s.functionals_of[functionals[f].component].push_back(static_cast<int>(f));
  for (std::size_t c = 0; c < n; ++c) condense(c, map.components[c], functionals, s);
  return s;
}

Vector6d node_motion(const Mesh& mesh, const DofMap& map, const Structure& s, const Displacements& d, int node) {
  const NodeLink& l = map.links[node];
  const int c = map.component[node];
  const Component& comp = map.components[c];
  const Vector6d rigid = comp.rigid * d.alpha.segment(s.rigid_start[c], comp.rigid.cols());
  const Eigen::Vector3d omega = rigid.tail<3>();
  Vector6d m = rigid;
  m.head<3>() += omega.cross(Eigen::Vector3d(mesh.nodes[l.ref].x - comp.centre));
  for (int k = 0; k < 6; ++k)
    if (map.dofs[l.ref][k] >= 0) m[k] += d.elastic[c][map.dofs[l.ref][k]];
  const Eigen::Vector3d theta = m.tail<3>();
  m.head<3>() += theta.cross(l.arm);
  return m;
}

std::vector<Vector6d> node_motions(const Mesh& mesh, const DofMap& map, const Structure& s, const Displacements& d) {
  std::vector<Vector6d> out(mesh.nodes.size());
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = node_motion(mesh, map, s, d, static_cast<int>(i));
  return out;
}

} // namespace bedbow
