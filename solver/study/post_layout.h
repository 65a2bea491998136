/// \file
/// How many posts, and where: positions that bend the clamp or the angle least.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/piece/choice.h"
#include "solver/registry/registries.h"
#include "solver/strength/reason.h"

#include <array>
#include <span>
#include <string>
#include <vector>

namespace bedbow {

/// What shall be least, greatest over the steps: spread of the bend angle, bow of the clamp, its straightness.
enum class PostGoal { spread, bow, straightness };
inline constexpr std::array post_goals{Choice{"spread", PostGoal::spread, "spread of the bend angle"},
                                       Choice{"bow", PostGoal::bow, "clamp bow"},
                                       Choice{"straightness", PostGoal::straightness, "clamp straightness"}};

struct PostTask {
  int count = 2; ///< number of posts, >= 1
  PostGoal goal = PostGoal::spread;
  double from = 0, to = 0; ///< where their middles may stand along x [m]
  bool free = false;       ///< each by itself; else in mirrored pairs about the middle of from and to
  int threads = 0;         ///< 0: all of the machine's
};

/// One way to set the posts and what comes of it. SI.
struct PostLayout {
  std::vector<double> x; ///< ascending [m]
  double angle_spread = 0, clamp_bow = 0, clamp_straightness = 0;
  double post_force = 0, utilisation = 0;
  std::string utilisation_at;
  bool pass = false;
  std::vector<Reason> reasons; ///< why it does not pass, gravest first
  std::string trouble;         ///< why it could not be solved
  bool solved = false;
  double excess = 0; ///< by what part of it the limit most exceeded is exceeded; 0 where all hold
  [[nodiscard]] double value(PostGoal goal) const;
  /// What the search makes least: the value where all limits hold; else more than that, the more the greater `excess`.
  [[nodiscard]] double rank(PostGoal goal) const;
};

/// The machine with copies of its first post at these places instead of its own posts.
/// Throws std::invalid_argument where it has none.
Machine with_posts(const Machine& machine, std::span<const double> x);

/// What posts at these places do. Without a sheet bow and straightness are those of the clamp's whole length.
PostLayout judge_posts(const Machine& machine, const Registries& registries, std::span<const double> x);

/// Places of `count` posts, `spacing` apart, about the middle of the task's range.
std::vector<double> even_posts(const PostTask& task, double spacing);

/// Spacings of evenly set posts from the closest to the widest that the range has room for. \param steps >= 2.
std::vector<double> spacings_within(const Machine& machine, const PostTask& task, int steps);

/// The best places found that keep the case's limits; where none do, those that exceed them least. Evenly set posts at
/// a row of spacings, the best of which (and some others) a derivative-free search then improves (NLopt, Rowan's
/// Subplex), limits as a barrier. Posts stay at least two diameters apart, for nuts and spanners. The same on every run
/// and for any number of threads. Throws std::invalid_argument where the range is too short.
PostLayout place_posts(const Machine& machine, const Registries& registries, const PostTask& task);

} // namespace bedbow
