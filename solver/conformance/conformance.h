/// \file
/// Conformance suites for all registered entries: built-in ones pass them, and those of plugins must.
/// `bedbow list --prove NAME` runs them.
#pragma once

#include "solver/registry/registries.h"

#include <string>
#include <vector>

namespace bedbow {

/// One check.
struct ProofCheck {
  std::string what;
  double value = 0;   ///< the worst found
  double allowed = 0; ///< greatest (or least) permitted value
  bool pass = false;
  std::string note; ///< where it was found, or why it can't be determined
};

struct Conformance {
  std::string kind, name, origin;
  std::vector<ProofCheck> checks;
  [[nodiscard]] bool pass() const;
  /// Adds a check that passes where value <= allowed (NaN does not).
  void at_most(std::string what, double value, double allowed, std::string note = {});
  /// Adds a check that passes where value >= allowed.
  void at_least(std::string what, double value, double allowed, std::string note = {});
  /// Adds a failure instead of a number.
  void failed(std::string what, std::string note);
};

/// Over the element's example shapes: finite, symmetric, exactly six free rigid-body modes, no negative eigenvalue,
/// turned and moved with the body, patch test of the constant states (line: stretch, two curvatures, twist; surface:
/// three membrane strains, three curvatures) and their energy against E A, E I, G J and the plate's constants; where
/// present, mass and geometric stiffness. Sources: MacNeal & Harder 1985 (patch); Przemieniecki 1968.
Conformance check_element(const ElementEntry& element);

/// A section of the example sizes: area, centroid and second moments against the integral over its outline (Green's
/// theorem), constants of sizes twice as great, J below Iyy + Izz and, without a hole, below A^2 / 2 pi (Polya 1948),
/// shear areas within the area, extreme points that reach the outline's box.
Conformance check_shape(const ShapeEntry& shape);

/// A moment of 1 to 2 mm DC01: repeatable, per width, growing with thickness, between the first yield of half the
/// strength and three times the plastic moment of the tensile strength.
Conformance check_law(const MomentLawEntry& law);

/// Residual on a grid's matrix and on a ladder's, several right-hand sides at once, condensed compliance, negative
/// pivots of a shifted grid whose eigenvalues are known in closed form, a singular matrix that must be refused, two
/// threads at once.
Conformance check_solver(const LinearSolverEntry& solver);

/// Everything registered under that name. Throws std::invalid_argument, listing the names, for an unknown one.
std::vector<Conformance> check_conformance(const std::string& name, const Registries& registries);

} // namespace bedbow
