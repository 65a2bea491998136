/// \file
/// The condensed contact system with a given set of active rows: its solution, whether they restrain every part, and
/// the effect of opening one of the rows.
#pragma once

#include "solver/contact/contact.h"

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include <vector>

namespace bedbow {

/// Forces of all rows [N or N m], zero where a row is inactive, and amplitudes of rigid-body modes [m or rad].
struct ContactState {
  Eigen::VectorXd force, rigid_amplitudes;
};

class CondensedSprings {
public:
  /// \param system is referred to, not copied.
  explicit CondensedSprings(const CondensedSystem& system);

  /// Takes the active rows as bilateral springs, and those that slide as known forces. \param active RowState by row.
  /// \return whether they restrain all rigid-body modes; \ref solve and \ref gap_sensitivity need that.
  bool set_active(const std::vector<char>& active);

  /// Forces and rigid-body modes with these rows active.
  [[nodiscard]] ContactState solve() const;

  /// Sensitivity of forces and rigid-body modes to the gap of an active row, without loads: its gap decreases by one
  /// metre (or radian).
  [[nodiscard]] ContactState gap_sensitivity(Eigen::Index row) const;

  /// The same as \ref set_active and \ref solve with the rigid-body modes tied to `rigid_amplitudes` by soft springs:
  /// always solvable.
  ContactState solve_regularised(const std::vector<char>& active, const Eigen::VectorXd& rigid_amplitudes);

  [[nodiscard]] Eigen::VectorXd elongation(const ContactState& x) const;

  /// State of each row by the given stretches. \param active their states so far, which rounding alone does not change.
  [[nodiscard]] std::vector<char> closed(const Eigen::VectorXd& elongation, const std::vector<char>& active) const;

  /// Stretch below which opening or overlap of a row is rounding.
  [[nodiscard]] static double tolerance(const Eigen::VectorXd& elongation);

  /// Step from a to b, 0 to 1, that makes the energy least. \param tied b comes from \ref solve_regularised.
  [[nodiscard]] double line_search(const ContactState& a, const ContactState& b, bool tied) const;

  /// A row's force scaled by its own compliance, so that forces and couples can be compared [sqrt(N m)].
  [[nodiscard]] double scaled(double force, Eigen::Index row) const { return force / scale_[row]; }

private:
  void factor(const std::vector<char>& active);
  [[nodiscard]] Eigen::VectorXd rhs() const;
  [[nodiscard]] Eigen::VectorXd load() const;
  [[nodiscard]] ContactState settled(Eigen::VectorXd h, const Eigen::VectorXd& load) const;
  [[nodiscard]] Eigen::VectorXd scatter(const Eigen::VectorXd& scaled) const;

  const CondensedSystem& s_;
  Eigen::Index m_;
  Eigen::VectorXd scale_, extra_;
  Eigen::VectorXd known_; // forces of the rows that slide
  double gamma_ = 1;
  Eigen::MatrixXd whole_, rigid_; // all rows, scaled: augmented compliance (lower triangle) and rigid elongation
  std::vector<Eigen::Index> index_;
  Eigen::MatrixXd rows_, held_; // rigid elongation of the held rows, scaled; the same after L^-1
  Eigen::LLT<Eigen::MatrixXd> llt_;
  Eigen::LDLT<Eigen::MatrixXd> schur_;
};

} // namespace bedbow
