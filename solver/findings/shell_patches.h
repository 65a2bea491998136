/// \file
/// Stress resultants of shells averaged over patches around their nodes (docs/theory/validity.md).
#pragma once

#include "solver/element/shell4.h"

#include <array>
#include <functional>
#include <span>
#include <vector>

namespace bedbow {

/// A surface of quads with their resultants, all in axes that agree.
struct ShellPatchMesh {
  std::vector<Eigen::Vector3d> points;                    ///< of the nodes [m]
  std::vector<std::array<int, 4>> quads;                  ///< into points, corners in order
  std::vector<std::array<ShellResultants, 4>> at_corners; ///< by quad
};

/// Means of resultants over patches of a surface.
class ShellPatches {
public:
  /// \param mesh is referred to, not copied. \param depth thickness of the plate [m].
  ShellPatches(const ShellPatchMesh& mesh, double depth);

  /// Mean resultants around a point, weighted by area and by 1 - (r/R)^2 with the distance r from it. R is 5/8 of the
  /// depth, so that the mean distance from any line through the point is that in a disc as wide as the plate is thick.
  /// Where the elements are so coarse that none has a sample within R: the mean of the corners there.
  [[nodiscard]] ShellResultants around(int point);

  /// Points whose patch may reach into a quad; more than those, never fewer.
  [[nodiscard]] std::vector<int> reaching(int quad);

private:
  /// A small piece of a quad.
  struct Piece {
    double x, y, z, area;
    std::array<double, 4> corners; ///< shares of the corners' values in the piece's
  };
  const std::vector<Piece>& pieces_of(int quad);
  /// Sums up what a quad has within the radius. \return its weight.
  double add(int quad, const Eigen::Vector3d& at, ShellResultants& sum);
  [[nodiscard]] ShellResultants corner_mean(int point) const;
  /// Calls visit(quad) for the quads of `seeds` and on, over those that share a corner with one for which it said true.
  template <class Visit> void flood(std::span<const int> seeds, Visit visit);

  const ShellPatchMesh& mesh_;
  double radius_;
  std::vector<std::vector<int>> quads_of_;
  std::vector<int> seen_; ///< by quad: the flood that looked at it last
  int floods_ = 0;
  std::vector<int> open_;                  ///< still to look at
  std::vector<std::vector<Piece>> pieces_; ///< by quad, cut when first asked for
};

/// Where on a surface a stress is greatest.
struct PatchPeak {
  int point = -1; ///< the first of those that rounding alone sets apart; -1: nothing above 0
  double stress = 0;
};

/// The greatest stress of the mean resultants around any point. \param stress of resultants: a convex function, as von
/// Mises' is, so that no mean exceeds the greatest value in its patch, and most patches need not be looked at.
PatchPeak patch_peak(const ShellPatchMesh& mesh, double depth,
                     const std::function<double(const ShellResultants&)>& stress);

} // namespace bedbow
