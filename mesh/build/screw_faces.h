/// \file
/// The faces that a row of screws presses together: of two bars, or of a bar and quads of the user's mesh.
#pragma once

#include "mesh/build/mesh.h"

#include <array>

namespace bedbow {

/// The part on one side of the faces.
struct ScrewSide {
  double lower = 0, upper = 0; ///< where it reaches along the normal [m]
  double wall = 0;             ///< thickness in bearing on the shank: a tube's wall, else the whole [m]
  int material = -1;
  [[nodiscard]] double thickness() const { return upper - lower; }
};

struct ScrewFaces {
  int normal = 2;                ///< 1: side by side along y; 2: one above the other along z
  bool swapped = false;          ///< the first of the two lies above (behind) the other
  std::array<ScrewSide, 2> side; ///< in the order of `joins`
  double width = 0;              ///< of the faces in contact, across the normal [m]
  double meeting = 0;            ///< where they meet along the normal: middle of overlap or gap [m]
};

/// Of bars the faces along which they overlap least; of quads those at the middle of the row, across their normal.
/// Throws std::invalid_argument where a side is neither a bar nor a part of the user's mesh with quads.
ScrewFaces screw_faces(const Machine& machine, const Mesh& mesh, const Screws& screws);

/// Place in the middle of a row from which its part of the user's mesh is searched: at the bar's centroid except for
/// coordinates that the row gives. \param bar the bar that it joins to the part. \param x along the row [m].
Eigen::Vector3d screw_place(const Bar& bar, const Screws& screws, double x);

} // namespace bedbow
