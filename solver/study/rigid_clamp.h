/// \file
/// The clamp as a rigid lever on springs: what clamping gives when bars do not bend. A yardstick beside the flexible
/// answer, and the arithmetic that one does on paper.
#pragma once

#include "mesh/machine/machine.h"

#include <functional>
#include <vector>

namespace bedbow {

/// What holds or pushes a rigid clamp at (x, y), along z.
struct ClampSpring {
  enum class Kind { post, cam, nose };
  Kind kind = Kind::post;
  double x = 0, y = 0;  ///< [m]
  double stiffness = 0; ///< [N/m] > 0
  double start = 0;     ///< movement of the clamp at which it begins to act [m]: a cam's lift, a post's slack
  double force = 0;     ///< result: of post tension, cam or nose compression [N]
};

/// Moves a rigid clamp (up, and turned about x and y) until everything balances; posts only pull it down, cams and nose
/// only push it up. \return the springs with their forces. Throws std::runtime_error where it does not settle.
std::vector<ClampSpring> solve_rigid_clamp(std::vector<ClampSpring> springs);

/// The same for the springs of a stretch of the clamp alone, as a lever seen from the side: it moves up and turns about
/// x, and nothing joins it to the rest. \param within true for the x of that stretch. \return its springs with their
/// forces; all without force where it lacks posts, cams or nose.
std::vector<ClampSpring> solve_rigid_lever(const std::vector<ClampSpring>& springs,
                                           const std::function<bool(double x)>& within);

/// The springs of a machine's clamp: posts E A / free length, cams, and the nose as a row of pads under the sheet; a
/// post with `preload` pulls with just that force. Empty where clamp, posts or cams are missing.
std::vector<ClampSpring> clamp_springs(const Machine& machine);

/// Lever of a rocking clamp seen from the side: places along y, weighted by stiffness.
struct ClampLever {
  double nose = 0, post = 0, cam = 0; ///< y of nose pressure, posts, cams [m]
  /// Nose force over cam force: (cam - post)/(post - nose).
  [[nodiscard]] double ratio() const { return (cam - post) / (post - nose); }
  /// How far the nose opens for each length that the tail sinks.
  [[nodiscard]] double opening() const { return (post - nose) / (cam - post); }
};

/// Mean places of nose, posts and cams. Throws std::invalid_argument unless there are posts and cams and the posts
/// stand between nose and cams: otherwise nothing rocks.
ClampLever clamp_lever(const Machine& machine);

} // namespace bedbow
