/// \file
/// A clamp that rocks on its posts by eccentrics under its tail: the effect of turning the cams on the nose, and the
/// hand force. Theory: docs/guide/rock.md.
#pragma once

#include "solver/analysis.h"
#include "solver/study/rigid_clamp.h"

#include <string>
#include <vector>

namespace bedbow {

/// One position of the cams while clamping. NaN where it has no meaning.
struct RockPoint {
  double angle = 0;      ///< of the cams from their lowest position [rad]; NaN where the case gives only a lift
  double lift = 0;       ///< least of the cams, above where the nose touches [m]
  double opening = 0;    ///< of the nose above the sheet [m]; 0 once it touches
  double nose_force = 0; ///< total, flexible machine [N]
  double least = 0, greatest = 0; ///< clamp force per length along the bend line [N/m]
  double cam_force = 0;           ///< all cams together [N]
  double lever_force = 0;         ///< nose force by statics: cam force times the lever ratio [N]
  double rigid_force = 0;         ///< nose force of the same clamp if only posts and sheet were flexible [N]
  double moment = 0;              ///< to turn all cams against load and friction [N m]
  double back_moment = 0;         ///< that turns them back [N m]; 0: friction holds them
  double hand = 0;                ///< greatest hand force of any lever [N]; NaN without `lever`
  double shift = 0;               ///< of the nose along y, from the lowest position [m]; NaN unless captive
};

/// Effect of trailing cams on the right.
struct RockLag {
  double lag = 0;                         ///< of every linked cam right of the middle, beyond the case's own [rad]
  double left = 0, right = 0;             ///< clamp force on either half of the sheet [N]
  double least = 0, greatest = 0;         ///< per length [N/m]
  double rigid_left = 0, rigid_right = 0; ///< each half as a separate rigid lever
  double skew = 0;                        ///< set-back of the right end less the left, captive cams [m]; else NaN
};

struct RockResult {
  ClampLever lever;
  std::vector<RockPoint> turn; ///< from the lowest position to the clamped one
  std::vector<RockLag> lags;   ///< in the clamped position
  Verdict clamped;             ///< of the clamped position: what is overloaded there
  std::vector<std::string> warnings;
};

/// Follows the cams from their lowest position over their touch to the case's `angle` (or from no lift to `lift`) in
/// `steps` >= 1 steps, and tries the lags. Throws std::invalid_argument where the clamp does not rock;
/// std::runtime_error where the clamped position can't be solved, with the reason.
RockResult rock(const Machine& machine, const Registries& registries, int steps, const std::vector<double>& lags);

/// Moment about its shaft of one eccentric under a flat tail [N m]: F (e sin a) from the load, friction under the tail
/// at the height R - e cos a above the shaft, friction of the shaft at its radius; e = throw/2.
/// \param back the moment that turns it back: load less friction, not below 0.
double cam_moment(const Cam& cam, double angle, double force, bool back = false);

} // namespace bedbow
