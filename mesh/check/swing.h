/// \file
/// Whether anything obstructs apron and flange while they swing up about the bend line. Sections in the (y, z)
/// plane, each over its own length along x; see docs/theory/sheet.md, "What must not meet".
#pragma once

#include "mesh/check/polygon.h"
#include "mesh/machine/machine.h"
#include "mesh/machine/springback.h"
#include "mesh/piece/registry.h"
#include "mesh/piece/si.h"

#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// How far the machine swings [rad]. Springback adds to the wanted angle.
struct SwingAngles {
  double bend = 0;   ///< of the bend: wanted and its springback, or the greatest of [solve] angles where that is more
  double flange = 0; ///< of the flange: further by what it and the sheet under the nose bend elastically
  double apron = 0;  ///< of the apron: further by what the machine may deflect
};

/// Allowance for deflection of the machine, by which the apron swings further than the bend [rad]: `solve` warns beyond
/// it.
inline constexpr double deflection_allowance = 2 * si::degree;

SwingAngles swing_angles(const Machine& machine, const Springback& springback);

/// Bodies closer than this meet; deeper than this they penetrate each other [m].
inline constexpr double swing_clearance = 0.05e-3;

/// One solid thing in the (y, z) plane, over a length along x.
struct SwingBody {
  enum class Kind { flange, apron, bed, clamp, finger, nut, cam };
  Kind kind = Kind::bed;
  std::string name;        ///< "apron.rib", "the nut of post left"
  Polygon outline;         ///< at 0 deg; empty for the flange, which changes as it is bent
  double from = 0, to = 0; ///< x [m]
  SourcePos pos;
};

/// What swings: the flange, and the apron's bars whose outline is known.
std::vector<SwingBody> swinging_bodies(const Machine& machine, const Registry<ShapeEntry>& shapes);

/// What stands: bars of bed and clamp, fingers, nuts on the clamp, eccentrics. Where the clamp's bars are drawn for a
/// thinner sheet they are raised to lie on this one. A case does not describe the direction of levers, so they are not
/// included.
std::vector<SwingBody> standing_bodies(const Machine& machine, const Registry<ShapeEntry>& shapes);

/// The bend and the straight flange beyond it, bent to an angle [rad]: outer face through the bend line, inner arc of
/// the inside radius. Empty where the flange is shorter than the bend.
Polygon flange_outline(const Sheet& sheet, double angle);

/// Where two things first meet.
struct SwingMeeting {
  double angle = 0;   ///< [rad]
  Eigen::Vector3d at; ///< middle of their common length, where they are deepest in each other [m]
  double from = 0, to = 0;
};

/// \param angle to which `mover` swings from 0 [rad]. \param clearance permitted penetration [m].
/// \return nullopt where they pass. Angles are found to 1e-6 rad.
std::optional<SwingMeeting> first_meeting(const Machine& machine, const SwingBody& mover, const SwingBody& obstacle,
                                          double angle, double clearance = swing_clearance);

/// Two things that meet before the bend is made.
struct SwingClash {
  SwingBody mover, obstacle;
  SwingMeeting meeting;
  double angle = 0; ///< to which the mover swings [rad]
};

/// All of them; none without a sheet and in the x-z plane, where bars have no depth.
std::vector<SwingClash> swing_clashes(const Machine& machine, const Registry<ShapeEntry>& shapes,
                                      const Springback& springback);

/// The bend at which the flange meets an obstacle, however far the apron could swing: a nose without relief has one
/// slightly beyond 90 deg.
struct BendLimit {
  double angle = 0; ///< [rad]
  std::string by;   ///< obstacle
};

/// \return nullopt where the flange passes up to 175 deg.
std::optional<BendLimit> bend_limit(const Machine& machine, const Registry<ShapeEntry>& shapes);

/// How far the obstacle must move back for the mover to pass without touching it, rounded up to a tenth of a millimetre
/// [m]; nullopt where 0.2 m is not enough.
std::optional<double> clearing_shift(const Machine& machine, const SwingBody& mover, const SwingBody& obstacle,
                                     double angle);

} // namespace bedbow
