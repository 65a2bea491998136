/// \file
/// From a Machine to its Mesh.
#pragma once

#include "mesh/build/mesh.h"
#include "mesh/piece/registry.h"

#include <span>
#include <vector>

namespace bedbow {

/// From where to where a sheet lies along the bend line [m].
struct HeldSpan {
  double from = 0, to = 0;
};

/// Where nose and bed meet, through the sheet or beyond it, and the length that this spot stands for [m].
struct PadSpot {
  double x = 0, tributary = 0;
  int finger = -1;   ///< that presses there, where the nose is made of fingers
  bool sheet = true; ///< lies there; else the faces meet once its thickness is used up
};

/// Makes nodes, elements, links and joints of a machine.
/// \param shapes section shapes by name. \param sheets where sheets will lie that are laid on this mesh later: their
/// ends become stations, and pads stand wherever one of them wants one. Left out: the machine's own sheet.
/// Throws std::invalid_argument saying what does not fit together and where; a validated case gives none.
Mesh make_mesh(const Machine& machine, const Registry<ShapeEntry>& shapes, std::span<const HeldSpan> sheets = {});

/// Where nose and bed meet with a sheet between them, on a mesh's stations: by rising x, fingers one after the other.
/// Lengths of the spots under the sheet add up to what is held of it. A mirrored machine has the mirrored spots.
std::vector<PadSpot> pad_spots(const Machine& machine, const Mesh& mesh, const HeldSpan& sheet);

/// Makes a joint between nose and bed what the machine's sheet makes of it at that spot: kind, stiffness and gap.
/// \param share of the land's depth that it stands for.
void lay_spot(const Machine& machine, const PadSpot& spot, double share, Joint& joint);

} // namespace bedbow
