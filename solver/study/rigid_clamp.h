/// \file
/// The clamp as a rigid lever on springs: clamping without bending of the bars. A reference for the flexible result,
/// and the calculation that one does on paper.
#pragma once

#include "mesh/machine/machine.h"

#include <functional>
#include <vector>

namespace bedbow {

/// A spring that holds or pushes a rigid clamp at (x, y), along z.
struct ClampSpring {
  enum class Kind { post, cam, nose };
  Kind kind = Kind::post;
  double x = 0, y = 0;  ///< [m]
  double stiffness = 0; ///< [N/m] > 0
  double start = 0;     ///< displacement of the clamp at which it becomes active [m]: a cam's lift, a post's slack
  double force = 0;     ///< result: of post tension, cam or nose compression [N]
};

/// Finds the equilibrium of a rigid clamp (vertical displacement, rotation about x and y); posts only pull it down,
/// cams and nose only push it up. \return the springs with their forces. Throws std::runtime_error where there is none.
std::vector<ClampSpring> solve_rigid_clamp(std::vector<ClampSpring> springs);

/// The same for the springs of one section of the clamp, as a lever in the side view: it moves up and turns about x,
/// not connected to the rest. \param within true for the x of that section. \return its springs with their forces; all
/// without force where it lacks posts, cams or nose.
std::vector<ClampSpring> solve_rigid_lever(const std::vector<ClampSpring>& springs,
                                           const std::function<bool(double x)>& within);

/// The springs of a machine's clamp: posts E A / free length, cams, and the nose as a row of pads under the sheet; a
/// post with `preload` pulls with exactly that force. Empty where clamp, posts or cams are missing.
std::vector<ClampSpring> clamp_springs(const Machine& machine);

/// Lever of a rocking clamp seen from the side: places along y, weighted by stiffness.
struct ClampLever {
  double nose = 0, post = 0, cam = 0; ///< y of nose pressure, posts, cams [m]
  /// Nose force over cam force: (cam - post)/(post - nose).
  [[nodiscard]] double ratio() const { return (cam - post) / (post - nose); }
  /// Nose opening over lowering of the tail.
  [[nodiscard]] double opening() const { return (post - nose) / (cam - post); }
};

/// Mean places of nose, posts and cams. Throws std::invalid_argument unless there are posts and cams and the posts
/// are between nose and cams: otherwise the clamp does not rock.
ClampLever clamp_lever(const Machine& machine);

} // namespace bedbow
