/// \file
/// Natural frequencies and buckling load factors. The joints are in the state of a step: active ones are bilateral
/// springs, open ones are absent. Theory: docs/theory/modes.md, buckling.md.
#pragma once

#include "solver/model/steps.h"
#include "solver/modes/eigen/symmetric_product.h"
#include "solver/modes/free_map.h"
#include "solver/modes/jointed_matrix.h"

#include <string>
#include <vector>

namespace bedbow {

/// The joints that carry, at an apron angle.
struct JointState {
  std::string name; ///< of the step, or "all joints closed"
  double angle = 0;
  std::vector<JointSpring> rows;
};
JointState state_of(const Model& model, const StepSolution& step);
/// For machines that are a mechanism in the clamp step: every joint counts as closed.
JointState all_closed(const Model& model);

/// Shapes by number, over all unknowns of a free map.
struct Modes {
  Eigen::VectorXd values;  ///< omega^2 [1/s^2], ascending; or load factors
  Eigen::MatrixXd vectors; ///< unknowns x modes, u' M u = 1 (buckling: u' K u = 1)
  std::vector<std::string>
      names; ///< of the rigid-body modes, which come first with omega^2 = 0: "clamp slides along x"
  double residual = 0, orthogonality = 0; ///< see EigenPairs
  int operations = 0;                     ///< solves taken
};

/// The vibrating machine. Holds the data for modes and Sturm counts.
class VibratingMachine {
public:
  /// The model must outlive this.
  VibratingMachine(const Model& model, const JointState& state, const Registry<LinearSolverEntry>& solvers,
                   bool lumped);

  /// The lowest modes. Rigid-body modes that no joint holds come first, exactly zero.
  [[nodiscard]] Modes lowest(int wanted) const;
  /// Number of frequencies below omega^2, by counting negative pivots of K - omega^2 M.
  [[nodiscard]] int count_below(double omega2) const;
  /// K - shift M, factored, with the joints' rows.
  [[nodiscard]] JointedMatrix shifted(double shift) const;
  /// Shift by which `lowest` inverts: negative, of the size of the first elastic omega^2; 0 where every part is
  /// held to ground, so that the factorization of statics can be used.
  [[nodiscard]] double shift() const { return shift_; }
  [[nodiscard]] const FreeMap& map() const { return free_; }

private:
  [[nodiscard]] double guess_shift() const;
  /// Whether no part has anchors in statics: then its factorization is that of all unknowns.
  [[nodiscard]] bool held() const;
  [[nodiscard]] JointedMatrix inverted() const; ///< by `shift_`
  [[nodiscard]] Eigen::MatrixXd rigid_modes(std::vector<std::string>& names) const;
  void multiply_mass(const Eigen::Ref<const Eigen::MatrixXd>& x, Eigen::Ref<Eigen::MatrixXd> y) const;

  const Model& model_;
  const JointState& state_;
  const LinearSolverEntry& solver_;
  FreeMap free_;
  std::vector<SymmetricMatrix> stiffness_, mass_;
  std::vector<SymmetricProduct> products_; // of the mass
  double shift_ = 0;
};

/// Lowest positive load factors of a solved step: (K + factor K_g) u = 0. Fewer, or none, where there is no buckling.
Modes buckling_modes(const Model& model, const StepSolution& step, const Registry<LinearSolverEntry>& solvers,
                     int wanted);

/// The linear solver selected by the case.
const LinearSolverEntry& solver_of(const Machine& machine, const Registry<LinearSolverEntry>& solvers);

} // namespace bedbow
