/// \file
/// A user's mesh as in its file: a VTK unstructured grid, as XML (.vtu) or in the legacy format (.vtk), ASCII or
/// binary. Values as in the file, not yet checked.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// Values on points, on cells, or of the file as a whole.
struct GridArray {
  std::string name;
  int components = 1;
  bool is_text = false;
  bool is_whole = false;       ///< of a type that holds whole numbers only
  std::vector<double> numbers; ///< tuple by tuple
  std::vector<std::string> texts;
};

struct MeshGrid {
  std::vector<double> points;             ///< x y z of each, in the file's unit
  std::vector<std::int64_t> connectivity; ///< points of all cells, one after the other
  std::vector<std::int64_t> offsets;      ///< where each cell's points end in `connectivity`
  std::vector<int> types;                 ///< VTK cell types, one per cell
  std::vector<GridArray> point_arrays, cell_arrays, fields;
};

/// A mesh file that has been read.
struct MeshSource {
  std::string file; ///< as named in the case
  std::string hash; ///< SHA-256 of its bytes
  MeshGrid grid;
};

/// Greatest size of a mesh file [bytes], and greatest number of its points or cells.
inline constexpr std::uintmax_t greatest_mesh_size = 1U << 30;
inline constexpr std::int64_t most_mesh_items = 20'000'000;

/// Reads a mesh file. \param name as the case gives it. Throws FileError where it can't be read or is not such a file.
std::shared_ptr<const MeshSource> read_mesh(const std::filesystem::path& file, const std::string& name);

} // namespace bedbow
