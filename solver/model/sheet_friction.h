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
  /// Takes a solved round: what would need more than its bound slides, what would need less sticks again (block principal
  /// pivoting, Judice & Pires, Computers & Operations Research 21 (1994) 587-596, from memory). Once all agree, the
  /// bounds follow the normal forces. \return whether they then changed by no more than 1e-8 of all.
  bool take(const StepSolution& solved);
  /// Whether it has not settled in most_friction_rounds changes of the bounds.
  [[nodiscard]] bool exhausted() const;

private:
  bool bounds_settled(const StepSolution& solved);
  [[nodiscard]] std::vector<std::size_t> wrong(const StepSolution& solved) const;

  struct Spot {
    Eigen::Index row = 0;
    std::vector<Eigen::Index> pads;
    double lever = 0;            ///< normal force of the sheet's own lever [N]
    std::optional<double> slide; ///< force while it slides
    double bound = 0;            ///< greatest friction [N]
  };
  double coefficient_;
  std::size_t rows_;
  std::vector<Spot> spots_;
  int rounds_ = 0, solutions_ = 0, patience_ = 0;
  std::size_t best_ = static_cast<std::size_t>(-1); ///< fewest spots that were wrong at once
};

/// Rows of the sheet's friction held at no force: it slides freely.
Forced without_friction(const Model& model, const std::vector<JointSpring>& rows);

} // namespace bedbow
