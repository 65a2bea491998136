/// \file
/// All unilateral joints solved together on their condensed compliance: a semismooth Newton method (active sets) with
/// an exact line search on the energy, and where that does not converge, a dual active-set method, which always
/// terminates. Rows that slide at a known force are part of the same energy. Theory: docs/theory/contact.md.
#pragma once

#include "mesh/machine/machine.h"

#include <Eigen/Core>

#include <limits>
#include <string>
#include <vector>

namespace bedbow {

/// Law of a row.
struct SpringLaw {
  double compliance = 0; ///< [m/N], 0 rigid (bilateral rows only)
  double gap = 0;        ///< force = (elongation - gap) / compliance while active
  UnilateralType sense = UnilateralType::both;
  /// Of a row of sense `both`: greatest force either way, with which it slides [N] (Coulomb friction under a known
  /// normal force). Its compliance is then > 0.
  double bound = std::numeric_limits<double>::infinity();
};

/// Whether a row carries force. `pulled`, `pushed`: it slides with its bound in tension, in compression.
enum RowState : char { row_open = 0, row_active = 1, row_pulled = 2, row_pushed = 3 };

/// elongation = free_elongation - compliance force + rigid_elongation rigid_amplitudes, and rigid_elongation' force =
/// rigid_load: elastic parts condensed to their joints, with the amplitudes rigid_amplitudes of their rigid-body modes
/// as further unknowns.
struct CondensedSystem {
  Eigen::MatrixXd compliance;       ///< m x m, positive semidefinite
  Eigen::MatrixXd rigid_elongation; ///< m x r
  Eigen::VectorXd free_elongation;  ///< m
  Eigen::VectorXd rigid_load;       ///< r
  std::vector<SpringLaw> laws;      ///< m
};

enum class ContactStatus { ok, mechanism, no_convergence };

struct ContactSolution {
  ContactStatus status = ContactStatus::ok;
  Eigen::VectorXd force;            ///< m, tension positive
  Eigen::VectorXd elongation;       ///< m
  Eigen::VectorXd rigid_amplitudes; ///< r
  std::vector<char> active;         ///< m: RowState
  int iterations = 0;
  Eigen::VectorXd mechanism; ///< r: an unrestrained mode, when status is mechanism
  std::vector<std::string> history;
};

/// Far more iterations than needed: usually a few suffice.
inline constexpr int most_contact_iterations = 2000;

/// Solves the system. \param start active rows to begin with (empty: all).
/// \param most_iterations greatest number of iterations; then status is no_convergence, with a history.
ContactSolution solve_contact(const CondensedSystem& system, const std::vector<char>& start = {},
                              int most_iterations = most_contact_iterations);

/// Rigid-body modes that no row resists, even with every unilateral row closed: columns of an r x d matrix, scaled to a
/// greatest entry of 1; single modes where possible.
Eigen::MatrixXd rigid_body_modes(const CondensedSystem& system);

} // namespace bedbow
