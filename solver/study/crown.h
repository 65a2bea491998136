/// \file
/// Shims, or a pre-bow, that make the clamped line straight or the bend angle even; or the tension of a truss rod that
/// removes most of the deviation. Theory: docs/guide/crown.md.
#pragma once

#include "solver/analysis.h"

#include <string>
#include <vector>

namespace bedbow {

enum class CrownAim {
  straight, ///< the body's own bend-line edge under load
  even      ///< the bend angle along the sheet
};

struct CrownTask {
  BodyKind on = BodyKind::apron;
  CrownAim aim = CrownAim::even;
  std::vector<double> places; ///< x [m], ascending
  std::vector<double> stock;  ///< available shim thicknesses [m] > 0; empty: not rounded
  std::size_t step = 0;       ///< index of the step to correct
};

/// Quality of a line.
struct CrownState {
  double bow = 0;    ///< greatest distance of the body's edge, shims included, from its chord [m]; NaN: not solved
  double spread = 0; ///< of the bend angle [rad]; NaN without
};

struct ShimPlace {
  double x = 0;
  double height = 0;          ///< exact [m]
  double shim = 0;            ///< from stock [m]
  std::vector<double> pieces; ///< that add up to it, thickest first [m]
};

struct CrownResult {
  std::vector<ShimPlace> places;
  CrownState before, exact, rounded;
  std::string step; ///< its name
  int solves = 0;
};

/// Gauss-Newton on the heights (with the effect of each place by differences), solved again with the shims. Heights are
/// 0 or more. Throws std::invalid_argument for a body, step or place that does not exist; std::runtime_error where the
/// machine as it is can't be solved; shims with which it can't be solved are rejected.
CrownResult find_crown(const Machine& machine, const Registries& registries, const CrownTask& task);

/// The combination of at most four pieces of stock nearest to a height, with the fewest pieces.
std::vector<double> nearest_shims(double height, const std::vector<double>& stock);

/// A truss rod along a body: anchored at the ends of its edge bar, `offset` above the bar's centroid.
struct RodResult {
  double tension = 0; ///< [N]; below 0: the rod belongs on the other side
  CrownState before, after;
  std::string thread; ///< smallest metric coarse thread of class 8.8 at half its proof load; empty where none suffices
};
RodResult find_rod(const Machine& machine, const Registries& registries, const CrownTask& task, double offset);

} // namespace bedbow
