/// \file
/// Stress resultants of shells averaged over a patch around each node (docs/theory/validity.md).
#pragma once

#include "solver/element/shell4.h"

#include <array>
#include <vector>

namespace bedbow {

/// A surface of quads with their resultants, all in axes that agree.
struct ShellPatchMesh {
  std::vector<Eigen::Vector3d> points;                    ///< of the nodes [m]
  std::vector<std::array<int, 4>> quads;                  ///< into points, corners in order
  std::vector<std::array<ShellResultants, 4>> at_corners; ///< by quad
};

/// Mean resultants around each point, weighted by area and by 1 - (r/R)^2 with the distance r from it. R is 5/8 of the
/// depth, so that the mean distance from any line through the point is that in a disc as wide as the plate is thick.
/// Where the elements are so coarse that none has a sample within R: the mean of the corners there.
/// \param depth thickness of the plate [m].
std::vector<ShellResultants> patch_means(const ShellPatchMesh& mesh, double depth);

} // namespace bedbow
