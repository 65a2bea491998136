/// \file
/// Places of joints: coordinates that the case omits are taken from where the two bars meet, and any point is carried
/// by the nodes of the part it is on.
#pragma once

#include "mesh/build/mesh.h"

namespace bedbow {

/// Bounding box of a bar's cross-section in global y, z [m].
struct SectionBox {
  Eigen::Vector2d lower, upper;
};
SectionBox section_box(const Bar& bar, const Section& section);

/// Fills omitted y and z of a joint's place: the middle of the boxes' overlap, or of the gap where they do not overlap;
/// a bar's centroid where the other side is ground. x stays (NaN is taken as the middle of the common length).
Eigen::Vector3d complete_place(const Machine& machine, const Mesh& mesh, const std::array<Ref, 2>& joins,
                               const GivenPoint& given);

/// The place of a point on a bar, carried by its section at that x (beam: exact arm from the station's node; plate: the
/// two nodes beside it across the strip). Between stations the place is carried by both neighbours in proportion.
/// Throws std::invalid_argument when x lies off the bar by more than same_place.
Place place_on_bar(const Machine& machine, const Mesh& mesh, const Ref& bar, const Eigen::Vector3d& at);

/// The place of a point on a member or panel: exact arm from its nearest node. On a part of the user's mesh: carried by
/// the nodes of its nearest element in proportion, each by an exact arm.
Place place_on_structure(const Mesh& mesh, const Ref& owner, const Eigen::Vector3d& at);

/// The place of a point on a panel or a part of the user's mesh, carried in proportion by the nodes of the cell that it
/// lies on, each by an exact arm. Nothing for a point off the panel's rectangle or plane by more than 1e-6 m, for a
/// part without cells, or for anything else.
std::optional<Place> place_between_nodes(const Machine& machine, const Mesh& mesh, const Ref& owner,
                                         const Eigen::Vector3d& at);

/// The place of the nose at x, y, z: on the finger there, or on the nose's bar. Nothing where no finger stands.
std::optional<Place> nose_place(const Machine& machine, const Mesh& mesh, double x, double y, double z);

/// How much higher the finger was meshed than the machine's sheet requires, 0 unless the sheet was changed since [m].
/// Forces on the finger move with it, so that their arms are right.
double finger_lift(const Machine& machine, const Mesh& mesh, const FingerLayout& finger);

/// The place of a point on a finger: exact arm from its tip or pad; on a plate between the nodes around it.
Place place_on_finger(const Machine& machine, const Mesh& mesh, const FingerLayout& finger, const Eigen::Vector3d& at);

/// The layout of a bar or member. Throws std::out_of_range when the mesh has none.
const BarLayout& layout_of(const Mesh& mesh, const Ref& owner);

} // namespace bedbow
