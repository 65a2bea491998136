/// \file
/// Arrays of a mesh file as [mesh] reads them. Only case_mesh.cpp uses this.
#pragma once

#include "io/case/case_builder.h"
#include "io/text/hash.h"
#include "io/text/nearest.h"
#include "io/vtk/mesh_grid.h"
#include "mesh/machine/problem.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// A cell array of names, one per cell: strings, or whole numbers that index the field array NAME_names (a number
/// beyond it is its own name). Nothing where the file has no such array; one of the wrong kind is reported.
std::optional<std::vector<std::string>> names_on_cells(const CaseBuilder& b, const CaseValues& in, const MeshGrid& grid,
                                                       const std::string& name);

/// A cell array of one number per cell; nullptr where the file has none. One of the wrong kind is reported.
const GridArray* numbers_on_cells(const CaseBuilder& b, const CaseValues& in, const MeshGrid& grid,
                                  const std::string& name);

/// Unknown names on cells, each reported once.
class UnknownNames {
public:
  void add(const std::string& name, std::size_t cell) { cells_[name].push_back(static_cast<int>(cell)); }
  /// \param why what is missing. \param known the valid names.
  void report(const CaseBuilder& b, const CaseValues& in, const std::string& array, const std::string& why,
              const std::vector<std::string>& known) const;

private:
  std::map<std::string, std::vector<int>> cells_;
};

} // namespace bedbow
