/// \file
/// From a Machine to its Mesh.
#pragma once

#include "mesh/build/mesh.h"
#include "mesh/piece/registry.h"

#include <span>
#include <vector>

namespace bedbow {

/// Extent of a sheet along the bend line [m].
struct HeldSpan {
  double from = 0, to = 0;
};

/// Where nose and bed meet, through the sheet or beyond it, and the tributary length of this spot [m].
struct PadSpot {
  double x = 0, tributary = 0;
  int finger = -1;   ///< finger that presses there, if the nose has fingers
  bool sheet = true; ///< lies there; else the faces meet once the gap of its thickness closes
};

/// Makes nodes, elements, links and joints of a machine.
/// \param shapes section shapes by name. \param sheets where sheets will lie that are laid on this mesh later: their
/// ends become stations, and pads stand wherever one of them needs one. Default: the machine's own sheet.
/// Throws std::invalid_argument naming what is inconsistent and where; a validated case throws nothing.
Mesh make_mesh(const Machine& machine, const Registry<ShapeEntry>& shapes, std::span<const HeldSpan> sheets = {});

/// Where nose and bed meet with a sheet between them, on a mesh's stations: by increasing x, fingers one after the
/// other. Tributary lengths of the spots under the sheet add up to its held length. A mirrored machine has mirrored
/// spots.
std::vector<PadSpot> pad_spots(const Machine& machine, const Mesh& mesh, const HeldSpan& sheet);

/// Sets kind, stiffness and gap of a joint between nose and bed as the machine's sheet requires at that spot.
/// \param share of the land's depth that it represents.
void lay_spot(const Machine& machine, const PadSpot& spot, double share, Joint& joint);

/// Likewise of the joint by which the sheet passes friction across the bend line at that spot: while it sticks, the
/// shear of the sheet under the land. No stiffness where there is no sheet.
void lay_friction(const Machine& machine, const PadSpot& spot, Joint& joint);

} // namespace bedbow
