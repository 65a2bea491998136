/// \file
/// An unstructured grid with data, as input of the VTK writer, and the two grids of a step. Lengths in mm,
/// forces in N, stresses in MPa, rotations in degrees.
#pragma once

#include "solver/findings/findings.h"

#include <cstdint>
#include <string>
#include <vector>

namespace bedbow {

/// Numbers on points, as many as points times components.
struct VtkArray {
  std::string name, unit;
  int components = 1;
  std::vector<float> values;
};

/// Whole numbers on cells: an index into the field of names that is called NAME + "_names".
struct VtkIndex {
  std::string name;
  std::vector<int> values;
};

struct VtkNames {
  std::string name;
  std::vector<std::string> values;
};

/// VTK cell types.
enum class VtkCell : unsigned char { vertex = 1, triangle = 5, quad = 9 };

struct VtkGrid {
  std::vector<float> points;              ///< x y z of each [mm]
  std::vector<std::int64_t> connectivity; ///< points of all cells, one after the other
  std::vector<std::int64_t> offsets;      ///< where each cell's points end in `connectivity`
  std::vector<VtkCell> types;             ///< one per cell
  std::vector<VtkArray> point_arrays;
  std::vector<VtkIndex> cell_indices;
  std::vector<VtkNames> fields;
};

/// Surfaces of all bars and plates. Point arrays: displacement, rotation, von_mises, von_mises_middle (only with
/// plates), principal, utilisation. Cells: bar and body, with bar_names and body_names; field `step` holds the step's
/// name.
VtkGrid surface_grid(const Fields& fields, const std::string& step);

/// Points where pads and joints act. Point arrays: force, pressure. Cells: joint and kind, with joint_names and
/// kind_names; field `step`.
VtkGrid force_grid(const std::vector<ForceArrow>& arrows, const std::string& step);

} // namespace bedbow
