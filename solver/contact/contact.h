/// \file
/// All one-sided joints solved together on their condensed compliance: a semismooth Newton method (active sets) with an
/// exact line search on the energy, and where that does not settle, one row opened after another, which is sure to end.
/// Theory: docs/theory/contact.md.
#pragma once

#include "mesh/machine/machine.h"

#include <Eigen/Core>

#include <string>
#include <vector>

namespace bedbow {

/// What is known of a row besides its place in the system.
struct RowLaw {
  double compliance = 0; ///< [m/N], 0 rigid (both-sided rows only)
  double gap = 0;        ///< force = (stretch - gap) / compliance while active
  Sense sense = Sense::both;
};

/// stretch = free_stretch - compliance force + rigid_stretch alpha, and rigid_stretch' force = rigid_load:
/// elastic parts seen from their joints, with the rigid movements alpha of the parts as further unknowns.
struct CondensedSystem {
  Eigen::MatrixXd compliance;    ///< m x m, positive semidefinite
  Eigen::MatrixXd rigid_stretch; ///< m x r
  Eigen::VectorXd free_stretch;  ///< m
  Eigen::VectorXd rigid_load;    ///< r
  std::vector<RowLaw> laws;      ///< m
};

enum class ContactStatus { ok, loose, no_convergence };

struct ContactSolution {
  ContactStatus status = ContactStatus::ok;
  Eigen::VectorXd force;    ///< m, tension positive
  Eigen::VectorXd stretch;  ///< m
  Eigen::VectorXd alpha;    ///< r
  std::vector<char> active; ///< m: carries
  int iterations = 0;
  Eigen::VectorXd loose; ///< r: a movement that nothing stops, when status is loose
  std::vector<std::string> history;
};

/// Far more iterations than a machine needs, whose rows settle in a handful.
inline constexpr int most_contact_iterations = 2000;

/// Solves the system. \param start active rows to begin with (empty: all).
/// \param most_iterations gives up after so many, with status no_convergence and the history of what changed.
ContactSolution solve_contact(const CondensedSystem& system, const std::vector<char>& start = {},
                              int most_iterations = most_contact_iterations);

/// Rigid movements that no row resists at all, even with every one-sided row closed: columns of an r x d matrix, scaled
/// to a greatest entry of 1; single movements where possible.
Eigen::MatrixXd loose_movements(const CondensedSystem& system);

} // namespace bedbow
