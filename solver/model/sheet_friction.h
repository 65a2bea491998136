/// \file
/// Coulomb friction of the sheet at nose and bed in a bend step, settled by repeated solution. Theory:
/// docs/theory/sheet.md.
#pragma once

#include "solver/model/model.h"

#include <optional>
#include <vector>

namespace bedbow {

/// Forces of rows that are known beforehand [N], tension positive; the others are unknown.
using Forced = std::vector<std::optional<double>>;

/// Rounds after which the friction counts as not settling.
inline constexpr int most_friction_rounds = 20;

/// Bounds of the friction rows of a step, which follow the normal forces of the round before. With given bounds the
/// step has one answer (solver/contact); the bounds are a fixed point, approached with Aitken's relaxation.
/// Source: Panagiotopoulos, Ingenieur-Archiv 44 (1975) 421-432, for the alternation; Irons & Tuck, Int. J. Numer. Meth.
/// Engng 1 (1969) 275-277, for the relaxation (both from memory).
class FrictionRounds {
public:
  /// \param coefficient of friction >= 0. \param grip force of the sheet's own lever on the bed [N/m].
  /// \param clamped the clamp step: its normal forces and `grip` give the first bounds.
  FrictionRounds(const Model& model, double coefficient, double grip, const StepSolution& clamped);

  [[nodiscard]] bool empty() const { return spots_.empty(); }
  /// Sets the bounds of the friction rows.
  void apply(CondensedSystem& system) const;
  /// Takes a solved round: the bounds follow its normal forces. \return whether it has settled: whether the bounds that
  /// it was solved with differ from those of its own normal forces by at most friction_settled_to of their sum.
  bool take(const StepSolution& solved);
  [[nodiscard]] int rounds() const { return rounds_; }

private:
  struct Spot {
    Eigen::Index row = 0;
    std::vector<Eigen::Index> pads;
    double lever = 0; ///< normal force of the sheet's own lever [N]
  };
  [[nodiscard]] Eigen::VectorXd bounds_of(const StepSolution& solved) const;

  double coefficient_;
  std::vector<Spot> spots_;
  Eigen::VectorXd bound_; ///< by spot [N]
  Eigen::VectorXd miss_;  ///< by which the bounds were wrong in the last round [N]
  double relaxation_ = 1;
  int rounds_ = 0;
};

/// Greatest change of a bound in the last round, over the sum of all bounds.
inline constexpr double friction_settled_to = 1e-8;

/// Rows of the sheet's friction held at no force: it slides freely.
Forced without_friction(const Model& model, const std::vector<JointSpring>& rows);

} // namespace bedbow
