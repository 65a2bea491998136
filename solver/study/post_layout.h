/// \file
/// Number and places of posts for the least bow of the clamp or the least spread of the bend angle.
#pragma once

#include "mesh/check/buildable.h"
#include "mesh/machine/machine.h"
#include "mesh/piece/choice.h"
#include "solver/registry/registries.h"
#include "solver/strength/reason.h"

#include <array>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace bedbow {

/// Quantity to minimise, as its greatest value over the steps: spread of the bend angle, bow of the clamp, its
/// straightness.
enum class PostGoal { spread, bow, straightness };
inline constexpr std::array post_goals{Choice{"spread", PostGoal::spread, "spread of the bend angle"},
                                       Choice{"bow", PostGoal::bow, "clamp bow"},
                                       Choice{"straightness", PostGoal::straightness, "clamp straightness"}};

struct PostTask {
  int count = 2; ///< number of posts, >= 1
  PostGoal goal = PostGoal::spread;
  double from = 0, to = 0; ///< range of their centres along x [m]
  bool free = false;       ///< each independently; else in mirrored pairs about the middle of from and to
  int threads = 0;         ///< 0: all of the machine's
};

/// One layout of the posts and its results. SI.
struct PostLayout {
  std::vector<double> x; ///< ascending [m]
  double angle_spread = 0, clamp_bow = 0, clamp_straightness = 0;
  double post_force = 0, utilisation = 0;
  std::string utilisation_at;
  bool pass = false;
  std::vector<Reason> reasons; ///< why it does not pass, gravest first
  std::string trouble;         ///< why it could not be solved
  std::vector<Fault> faults;   ///< why it can't be built; then it is not solved
  bool solved = false;
  double excess = 0; ///< relative excess of the most exceeded limit; 0 where all are kept
  [[nodiscard]] double value(PostGoal goal) const;
  /// Objective of the search: the value where all limits are kept; else larger, increasing with `excess`.
  [[nodiscard]] double rank(PostGoal goal) const;
};

/// The machine with copies of its first post at these places instead of its own posts.
/// Throws std::invalid_argument where it has none.
Machine with_posts(const Machine& machine, std::span<const double> x);

/// Results with posts at these places; not solved where the layout has a Fault that the machine as drawn has not.
/// Without a sheet bow and straightness are those of the clamp's whole length.
PostLayout judge_posts(const Machine& machine, const Registries& registries, std::span<const double> x);

/// Where posts may stand along the bars that the first of them joins, with metal enough beyond their holes [m].
/// Throws std::invalid_argument where the case has no post.
std::pair<double, double> room_for_posts(const Machine& machine);

/// Places of `count` posts, `spacing` apart, about the middle of the task's range.
std::vector<double> even_posts(const PostTask& task, double spacing);

/// Spacings of evenly spaced posts from the closest to the widest that fits in the range. \param steps >= 2.
std::vector<double> spacings_within(const Machine& machine, const PostTask& task, int steps);

/// The best places found that keep the case's limits; where none do, those that exceed them least. Starts from evenly
/// spaced posts; a derivative-free search then improves the best of these and some others (NLopt, Rowan's
/// Subplex), with limits as a barrier. Posts stay at least two diameters apart, for nuts and spanners. The same on
/// every run and for any number of threads. Throws std::invalid_argument where the range is too short.
PostLayout place_posts(const Machine& machine, const Registries& registries, const PostTask& task);

} // namespace bedbow
