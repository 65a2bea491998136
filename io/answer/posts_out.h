/// \file
/// Results of `bedbow posts` as tables, JSON and a plot.
#pragma once

#include "io/case/case_reader.h"
#include "io/draw/plot.h"
#include "io/text/table.h"
#include "solver/study/post_layout.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace bedbow {

struct PostsFound {
  std::vector<PostLayout> counts;                      ///< the best layout of each count
  std::vector<std::pair<double, PostLayout>> spacings; ///< asked for [m]
  std::vector<std::pair<double, PostLayout>> two;      ///< two posts over their spacing, for the plot
  std::optional<std::size_t> smallest;                 ///< of `counts`: the fewest that keep all limits
};

/// Why a layout does not pass, or could not be solved; empty where it passes.
std::string layout_words(const PostLayout& layout, const OutputUnits& units);

/// Goal of --for in words: "spread of the bend angle".
std::string goal_words(const std::string& goal);

/// One row per count, with the places.
TextTable counts_table(const PostsFound& found, const OutputUnits& units);
/// One row per count and spacing that was asked for.
TextTable spacings_table(const PostsFound& found, const OutputUnits& units);
/// {"counts": [...], "smallest": n, "spacings": [...]}
std::string posts_json(const PostsFound& found);
/// Bow and straightness of the clamp over the spacing of two posts; nothing where that was not computed.
std::optional<Plot> posts_plot(const PostsFound& found, const Case& c);

/// "40, 310 and 860 mm".
std::string places_words(const PostLayout& layout, const OutputUnits& units);

} // namespace bedbow
