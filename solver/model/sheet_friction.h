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

/// The friction rows of a step: each sticks, with an unknown force, or slides, with a known one.
class FrictionRounds {
public:
  /// All stick. \param coefficient of friction >= 0. \param grip force of the sheet's own lever on the bed [N/m].
  FrictionRounds(const Model& model, const std::vector<JointSpring>& rows, double coefficient, double grip);

  [[nodiscard]] bool empty() const { return spots_.empty(); }
  /// Known forces of the next round, for the rows that slide.
  [[nodiscard]] Forced forced() const;
  /// Takes each spot's normal force from a solved round: more than the coefficient times that slides, and what slides
  /// sticks again where its spring would pull less. \return whether nothing changed by more than 1e-8 of the forces.
  bool take(const StepSolution& solved);

private:
  struct Spot {
    Eigen::Index row = 0;
    std::vector<Eigen::Index> pads;
    double lever = 0;            ///< normal force of the sheet's own lever [N]
    std::optional<double> slide; ///< force while it slides
  };
  double coefficient_;
  std::size_t rows_;
  std::vector<Spot> spots_;
};

/// Rows of the sheet's friction held at no force: it slides freely.
Forced without_friction(const Model& model, const std::vector<JointSpring>& rows);

} // namespace bedbow
