/// \file
/// A scaled prototype of another material, such as wood, compared with the machine. Theory:
/// docs/guide/prototype.md.
#pragma once

#include "solver/analysis.h"
#include "solver/strength/allowable.h"

#include <cmath>
#include <string>
#include <vector>

namespace bedbow {

/// The machine with every length times `scale` [> 0], screws and studs by their diameters. Forces, preloads,
/// stiffnesses and materials stay.
Machine scaled(const Machine& machine, double scale);

/// The prototype: scaled, bars, members and panels of `material`, and all loads such that a material which differed by
/// E alone would bend to the same shape: forces times scale^2 E'/E, line loads times scale E'/E, the sheet's moment per
/// width times scale^2 E'/E; given stiffnesses times scale E'/E.
/// \param base out: material of the machine's clamp (bed where there is none), on which E'/E is based.
Machine prototype_of(const Machine& machine, const Registries& registries, const Material& material, double scale,
                     Material& base);

/// Contributions to a bow, as shares that sum to 1. Under given forces a displacement is proportional to all
/// compliances and prescribed displacements together, so by Euler's theorem on homogeneous functions it is the sum of
/// the parts c d(bow)/dc. A part is negative where flexibility reduces the bow.
struct BowShares {
  double bending = 0; ///< bending and stretch of the bars: by their E
  double shear = 0;   ///< shear and twist of the bars: by their G
  double joints = 0;  ///< posts, screws, flexible supports, and the sheet under the nose: the rest
  double set = 0;     ///< prescribed displacements: lift of the cams, crowns
};

/// The factors of the same four contributions from machine to prototype, at the prototype's loads.
struct PartRatios {
  double bending = 0, shear = 0, joints = 0, set = 0;
  /// Ratio of a displacement with these shares: exact where no contact opens or closes.
  [[nodiscard]] double of(const BowShares& s) const {
    return bending * s.bending + shear * s.shear + joints * s.joints + set * s.set;
  }
};

/// Bow of one body in machine and prototype.
struct PrototypeBow {
  std::string body;
  double machine = 0, prototype = 0; ///< [m], solved
  BowShares shares, prototype_shares;
};

struct PrototypeDial {
  std::string name, axis;
  double machine = 0, prototype = 0; ///< [m]; the prototype's at the loads below
  /// Reading accuracy: half a graduation of a 0.01 mm dial, relative to the prototype's displacement.
  [[nodiscard]] double told_to() const { return dial_reading / std::abs(prototype); }
  static constexpr double dial_reading = 5e-6; ///< [m]
};

struct PrototypeLoad {
  std::string what;
  double machine = 0, prototype = 0; ///< [N]
};

struct PrototypeResult {
  std::string step;
  double load_scale = 0; ///< prototype force over machine force
  PartRatios parts;
  std::vector<PrototypeBow> bows;
  std::vector<PrototypeDial> dials;
  std::vector<PrototypeLoad> loads;
  double stress = 0;    ///< greatest in the prototype at those loads [Pa]
  Allowable allowed;    ///< [Pa]
  std::string stressed; ///< the bar
  /// Factor by which those loads may be multiplied.
  [[nodiscard]] double safe_factor() const { return stress > 0 ? allowed.value / stress : 0; }
};

/// A machine without dials gets three along each body's edge. Throws std::invalid_argument for an invalid scale;
/// std::runtime_error where either can't be solved.
PrototypeResult prototype(const Machine& machine, const Registries& registries, const Material& material, double scale);

} // namespace bedbow
