/// \file
/// From a Machine to its Mesh.
#pragma once

#include "mesh/mesh.h"
#include "mesh/registry.h"

#include <span>
#include <vector>

namespace bedbow {

/// From where to where a sheet lies along the bend line [m].
struct HeldSpan {
  double from = 0, to = 0;
};

/// Where a pad stands, and the length that it stands for [m].
struct PadSpot {
  double x = 0, tributary = 0;
  int finger = -1; ///< that presses there, where the nose is made of fingers
};

/// Makes nodes, elements, links and joints of a machine.
/// \param shapes section shapes by name. \param sheets where sheets will lie that are laid on this mesh later: their
/// ends become stations, and pads stand wherever one of them wants one. Left out: the machine's own sheet.
/// Throws std::invalid_argument saying what does not fit together and where; a validated case gives none.
Mesh make_mesh(const Machine& machine, const Registry<ShapeEntry>& shapes, std::span<const HeldSpan> sheets = {});

/// Where the pads of a sheet stand on a mesh's stations, by rising x.
std::vector<PadSpot> pad_spots(const Machine& machine, const Mesh& mesh, const HeldSpan& sheet);

} // namespace bedbow
