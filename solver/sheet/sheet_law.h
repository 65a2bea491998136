/// \file
/// Sheet bending: the moment per unit width that folds the sheet, and springback. Each law is an entry in a registry;
/// plugins add others.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/machine/springback.h"
#include "mesh/piece/registry.h"

#include <functional>
#include <string>

namespace bedbow {

/// A moment law: bending moment per unit width [N m/m] > 0 to fold `sheet` of `material`.
/// Throws std::invalid_argument naming a missing material value.
using MomentLaw = std::function<double(const Sheet& sheet, const Material& material)>;

struct MomentLawEntry {
  std::string name, description, source;
  MomentLaw moment;
  std::string origin = "built in";
};

/// Adds "rigid-plastic" and "power-law". Throws std::invalid_argument when a name is taken.
void builtin_moment_laws(Registry<MomentLawEntry>& laws);

/// The law by which a sheet bends, and why it is that one.
struct ChosenLaw {
  std::string name;
  double moment = 0; ///< per width [N m/m]
  std::string why;   ///< "given in the case", or what the other law gives
};

/// The case's law; where it gives none, of "rigid-plastic" (where the yield is known) and "power-law" (where K and n
/// are) the one with the greater moment, since the sheet is the load. Throws std::invalid_argument naming a missing
/// material value, or listing the laws for an unknown one.
ChosenLaw choose_law(const Sheet& sheet, const Material& material, const Registry<MomentLawEntry>& laws);

/// Line loads that the sheet puts on the machine, from the moment per width. Theory: docs/theory/sheet.md.
struct SheetLoads {
  double moment = 0; ///< m, where the nose's edge holds the sheet [N m/m]
  double grip = 0;   ///< m / grip [N/m]
  double flange = 0; ///< a, from the bend line to where the apron bears [m]
  double edge = 0;   ///< b, from the bend line back to the nose's edge [m]
  /// Distance of the nose's edge from the apron's force, a + b cos(angle) [m].
  [[nodiscard]] double lever(double angle) const;
  /// Force of the apron, normal to its face: m / lever [N/m].
  [[nodiscard]] double apron(double angle) const { return moment / lever(angle); }
  /// Force of the sheet's own lever on the nose with the apron at `angle` [rad]: the vertical component of the apron's
  /// force, and the grip. Upward on the nose [N/m].
  [[nodiscard]] double nose_lift(double angle) const;
};
/// \param edge set-back of the nose's edge from the bend line [m].
SheetLoads sheet_loads(const Sheet& sheet, double moment, double edge);

/// Springback of a sheet that is bent by `moment`, with `inside_radius` under load.
/// Arc: for the law "rigid-plastic" by Gardiner's elastic-perfectly plastic formula in plane strain; for every other
/// law by elastic unloading of its moment. Flange and grip: 4 m l/(E' t^3) each, the slope at the end of a simply
/// supported strip of length l by the moment there.
/// \param law name of the law that gave the moment. \param moment per width at full bend [N m/m].
/// Throws std::invalid_argument where nothing of the bend would stay. Source: docs/theory/sheet.md.
Springback springback(const Sheet& sheet, const Material& material, const std::string& law, double moment);

/// Springback of a machine's sheet by its own moment law; 0 without a sheet, or where law or material do not give
/// one.
Springback known_springback(const Machine& machine, const Registry<MomentLawEntry>& laws);

/// Full plastic moment per width in plane strain, S t^2/4 with S = (2/sqrt3) yield [N m/m].
/// Source: Marciniak, Duncan & Hu, Mechanics of Sheet Metal Forming, 2nd ed. 2002, sec. 6.5.
/// Throws std::invalid_argument where the yield is unknown.
double rigid_plastic_moment(const Sheet& sheet, const Material& material);

/// Moment per width of flow stress K strain^n in plane strain without tension,
/// K' t^(n+2) / [(n+2) 2^(n+1) rho^n], K' = K (2/sqrt3)^(n+1), rho = inside radius + t/2 [N m/m].
/// Source: Marciniak, Duncan & Hu eqs 6.13-6.14. Throws std::invalid_argument where K or n is unknown.
double power_law_moment(const Sheet& sheet, const Material& material);

/// Radius before over radius after springback of an elastic-perfectly plastic strip: 4 x^3 - 3 x + 1.
/// \param x radius times yield over (modulus times thickness), 0 <= x <= 0.5; at 0.5 all springs back.
/// Source: F.J. Gardiner, Trans. ASME 79 (1957) 1-9.
double gardiner_ratio(double x);

} // namespace bedbow
