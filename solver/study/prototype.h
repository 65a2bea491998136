/// \file
/// A scaled prototype of another material, of wood say: what it will show of the machine. Theory:
/// docs/guide/prototype.md.
#pragma once

#include "solver/analysis.h"
#include "solver/bearing/allowable.h"

#include <string>
#include <vector>

namespace bedbow {

/// The machine with every length times `scale` [> 0], screws and studs by their diameters. Forces, preloads,
/// stiffnesses and materials stay.
Machine scaled(const Machine& machine, double scale);

/// The prototype: scaled, bars, members and panels of `material`, and all loads such that a material which differed by
/// E alone would bend to the same shape: forces times scale^2 E'/E, line loads times scale E'/E, the sheet's moment per
/// width times scale^2 E'/E; given stiffnesses times scale E'/E.
/// \param modulus E of the machine's clamp (bed where there is none) [Pa], as base of E'/E.
Machine prototype_of(const Machine& machine, const Registries& registries, const Material& material, double scale,
                     double& modulus);

/// Bow of one body in machine and prototype, and where it comes from.
struct BowShares {
  std::string body;
  double machine = 0, prototype = 0;               ///< [m]
  double machine_shear = 0, prototype_shear = 0;   ///< share of it by shear, 0 to 1
  double machine_joints = 0, prototype_joints = 0; ///< share by posts, screws and other joints that give
};

struct PrototypeDial {
  std::string name, axis;
  double machine = 0, prototype = 0; ///< [m]; the prototype's at the loads below
};

struct PrototypeLoad {
  std::string what;
  double machine = 0, prototype = 0; ///< [N]
};

struct PrototypeResult {
  std::string step;
  double load_scale = 0; ///< prototype force over machine force
  std::vector<BowShares> bows;
  std::vector<PrototypeDial> dials;
  std::vector<PrototypeLoad> loads;
  double stress = 0;    ///< greatest in the prototype at those loads [Pa]
  Allowable allowed;    ///< [Pa]
  std::string stressed; ///< the bar
  /// By how much those loads may be multiplied.
  [[nodiscard]] double safe_factor() const { return stress > 0 ? allowed.value / stress : 0; }
};

/// Throws std::invalid_argument for a scale that is none; std::runtime_error where either can't be solved.
PrototypeResult prototype(const Machine& machine, const Registries& registries, const Material& material, double scale);

} // namespace bedbow
