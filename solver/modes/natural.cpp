#include "solver/model/describe.h"
#include "solver/modes/eigen/eigenpairs.h"
#include "solver/modes/mass.h"
#include "solver/modes/modes.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <limits>

namespace bedbow {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double rounding = 1e-9; // of the shift: a smaller omega^2 is a mode without stiffness

std::vector<FactorHints> hints_for(const FreeMap& free, bool positive) {
  std::vector<FactorHints> out;
  for (const Substructure& c : free.map.substructures) {
    out.push_back(hints_of(c, free.map.plane));
    out.back().positive = positive;
  }
  return out;
}

} // namespace

const LinearSolverEntry& solver_of(const Machine& machine, const Registry<LinearSolverEntry>& solvers) {
  return solvers.get(machine.solve.linear_solver.empty() ? "auto" : machine.solve.linear_solver);
}

namespace {

void leave_out(const Model& m, std::initializer_list<JointKind> kinds, JointState& s) {
  std::erase_if(s.rows, [&](const JointSpring& r) {
    return std::ranges::find(kinds, m.mesh.joints[r.joint].kind) != kinds.end();
  });
}

} // namespace

JointState state_of(const Model& m, const StepSolution& step) {
  JointState s{step.name, step.angle, {}};
  for (std::size_t i = 0; i < step.rows.size(); ++i)
    if (step.active[i]) s.rows.push_back(step.rows[i]);
  leave_out(m, {JointKind::friction}, s);
  return s;
}

JointState all_closed(const Model& m) {
  JointState s{"all joints closed", 0, m.rows.rows(m.mesh, 0)};
  // Beyond the sheet there is a gap between nose and bed: no contact there.
  leave_out(m, {JointKind::touch, JointKind::friction}, s);
  return s;
}

VibratingMachine::VibratingMachine(const Model& model, const JointState& state,
                                   const Registry<LinearSolverEntry>& solvers, bool lumped)
    : model_(model)
    , state_(state)
    , solver_(solver_of(model.machine, solvers))
    , free_(make_free_map(model.map))
    , stiffness_(free_.anchors.empty() ? model.factored.stiffness
                                       : assemble_stiffness(model.machine, model.mesh, free_.map, model.data))
    , mass_(assemble_mass(model.machine, model.mesh, free_.map, model.data, lumped)) {
  products_.reserve(mass_.size()); // reallocation would copy them
  for (const SymmetricMatrix& m : mass_) products_.emplace_back(m);
  shift_ = held() ? 0 : guess_shift();
}

bool VibratingMachine::held() const {
  const FactoredModel& s = model_.factored;
  if (!free_.anchors.empty() || s.factors.size() != stiffness_.size()) return false;
  for (std::size_t c = 0; c < stiffness_.size(); ++c)
    if (!s.factors[c] && stiffness_[c].rows() > 0) return false;
  return true;
}

void VibratingMachine::multiply_mass(const Eigen::Ref<const MatrixXd>& x, Eigen::Ref<MatrixXd> y) const {
  for (std::size_t c = 0; c < products_.size(); ++c)
    products_[c].multiply(x.middleRows(free_.start[c], products_[c].size()),
                          y.middleRows(free_.start[c], products_[c].size()));
}

/// Rayleigh's quotient of each part's response to an uneven load along all axes, held at its anchors.
double VibratingMachine::guess_shift() const {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t c = 0; c < mass_.size(); ++c) {
    const Substructure& comp = model_.map.substructures[c];
    if (c >= model_.factored.factors.size() || !model_.factored.factors[c]) continue;
    VectorXd push(mass_[c].rows());
    for (std::size_t i = 0; i < comp.nodes.size(); ++i)
      for (int k = 0; k < 6; ++k) {
        const int dof = free_.map.dofs[comp.nodes[i]][k];
        if (dof >= 0) push[dof] = k < 3 ? 1 + static_cast<double>(i) / static_cast<double>(comp.nodes.size()) : 0;
      }
    VectorXd f(push.size()), inertia_force(push.size());
    products_[c].multiply(push, f);
    MatrixXd u(comp.size, 1);
    const auto each = [&](auto&& use) {
      for (int n : comp.nodes)
        for (int k = 0; k < 6; ++k)
          if (model_.map.dofs[n][k] >= 0) use(free_.map.dofs[n][k], model_.map.dofs[n][k]);
    };
    each([&](int free, int own) { u(own, 0) = f[free]; });
    model_.factored.factors[c]->solve(u);
    VectorXd moved = VectorXd::Zero(f.size());
    each([&](int free, int own) { moved[free] = u(own, 0); });
    products_[c].multiply(moved, inertia_force);
    const double inertia = moved.dot(inertia_force);
    if (inertia > 0 && moved.dot(f) > 0) least = std::min(least, moved.dot(f) / inertia);
  }
  if (std::isfinite(least)) return -least / 4;
  double k = 0, m = 0;
  for (std::size_t c = 0; c < mass_.size(); ++c) {
    k += stiffness_[c].diagonal().sum();
    m += mass_[c].diagonal().sum();
  }
  return m > 0 ? -1e-6 * k / m : -1;
}

JointedMatrix VibratingMachine::inverted() const {
  if (!held()) return shifted(shift_);
  return {stiffness_, joint_rows(model_.mesh, free_, state_.rows, state_.angle), model_.factored.factors};
}

JointedMatrix VibratingMachine::shifted(double shift) const {
  std::vector<SymmetricMatrix> parts = stiffness_;
  for (std::size_t c = 0; c < parts.size(); ++c) // one pattern
    Eigen::Map<VectorXd>(parts[c].valuePtr(), parts[c].nonZeros()) -=
        shift * Eigen::Map<const VectorXd>(mass_[c].valuePtr(), mass_[c].nonZeros());
  return {std::move(parts), joint_rows(model_.mesh, free_, state_.rows, state_.angle), solver_.factor,
          hints_for(free_, shift <= 0)};
}

int VibratingMachine::count_below(double omega2) const {
  return shifted(omega2).negative_eigenvalues();
}

/// Displacements that no row resists, M-orthonormal in the order of their names.
MatrixXd VibratingMachine::rigid_modes(std::vector<std::string>& names) const {
  const FactoredModel& s = model_.factored;
  Index r = 0;
  for (const Substructure& c : model_.map.substructures) r += c.rigid.cols();
  if (r == 0) return MatrixXd(free_.size, 0);
  CondensedSystem system;
  system.rigid_load = VectorXd::Zero(r);
  system.rigid_elongation = MatrixXd::Zero(static_cast<Index>(state_.rows.size()), r);
  for (std::size_t i = 0; i < state_.rows.size(); ++i)
    for (auto [f, v] : state_.rows[i].terms) {
      const DisplacementFunctional& functional = model_.rows.functionals()[f];
      if (functional.component < 0) continue;
      const Substructure& comp = model_.map.substructures[functional.component];
      system.rigid_elongation.block(static_cast<Index>(i), s.rigid_start[functional.component], 1, comp.rigid.cols()) +=
          v * functional.rigid.transpose() * comp.rigid;
    }
  const MatrixXd loose = rigid_body_modes(system);
  MatrixXd out = MatrixXd::Zero(free_.size, loose.cols());
  VectorXd weighted(free_.size);
  for (Index j = 0; j < loose.cols(); ++j) {
    names.push_back(describe_movement(model_, loose.col(j), false));
    for (std::size_t c = 0; c < model_.map.substructures.size(); ++c) {
      const Substructure& comp = model_.map.substructures[c];
      if (comp.rigid.cols() > 0)
        add_rigid_movement(model_.mesh, free_, c,
                           comp.rigid * loose.col(j).segment(s.rigid_start[c], comp.rigid.cols()), out.col(j));
    }
    for (int twice = 0; twice < 2; ++twice) {
      multiply_mass(out.col(j), weighted);
      out.col(j) -= out.leftCols(j) * (out.leftCols(j).transpose() * weighted).eval();
    }
    multiply_mass(out.col(j), weighted);
    out.col(j) /= std::sqrt(out.col(j).dot(weighted));
  }
  return out;
}

Modes VibratingMachine::lowest(int wanted) const {
  Modes modes;
  const MatrixXd rigid = rigid_modes(modes.names);
  EigenPairs pairs;
  const Index elastic = wanted - rigid.cols();
  if (elastic > 0) {
    const JointedMatrix a = inverted();
    const EigenProblem::Product mass = [&](const auto& x, auto y) { multiply_mass(x, y); };
    pairs =
        largest_pairs({free_.size, mass, mass, [&](auto b) { a.solve(b); }, true}, static_cast<int>(elastic), rigid);
  }
  const Index shown = std::min<Index>(wanted, rigid.cols());
  const Index count = shown + pairs.values.size();
  modes.values = VectorXd::Zero(count);
  modes.vectors.resize(free_.size, count);
  modes.vectors.leftCols(shown) = rigid.leftCols(shown);
  modes.names.resize(static_cast<std::size_t>(shown));
  for (Index j = 0; j < pairs.values.size(); ++j) {
    const double omega2 = 1 / pairs.values[j] + shift_;
    modes.values[shown + j] = omega2 > -rounding * shift_ ? omega2 : 0;
    modes.vectors.col(shown + j) = pairs.vectors.col(j);
  }
  modes.residual = pairs.residual;
  modes.orthogonality = pairs.orthogonality;
  modes.operations = pairs.operations;
  return modes;
}

} // namespace bedbow
