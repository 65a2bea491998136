/// \file
/// Places of joints: coordinates that the case omits are taken from where the two bars meet, and any point is carried
/// by the nodes of the part it is on.
#pragma once

#include "mesh/build/mesh.h"
#include "mesh/machine/joint_place.h"

namespace bedbow {

/// Box of a bar's section where it lies. Throws std::out_of_range when the mesh lacks the bar.
BarBox box_of(const Machine& machine, const Mesh& mesh, const Ref& bar);
/// Of what a joint joins.
SideBoxes boxes_of(const Machine& machine, const Mesh& mesh, const std::array<Ref, 2>& joins);

/// Fills omitted coordinates of a joint's place from the bars that it joins: see mesh/machine/joint_place.h.
Eigen::Vector3d complete_place(const Machine& machine, const Mesh& mesh, const std::array<Ref, 2>& joins,
                               const GivenPoint& given);

/// The place of a point on a bar, carried by its sections around that x (beam: exact arms from the stations' nodes;
/// plate: the nodes around it). Between nodes they carry it in proportion. A patch is carried as the mean of nine
/// points of it (Gauss), a line across a plate as the mean of all its rows of nodes, as far as it lies on the bar, and
/// joined to `at` by a rigid arm.
/// \param patch size along x and across a plate [m]; 0: a point.
/// Throws std::invalid_argument when x lies off the bar by more than same_place.
Place place_on_bar(const Machine& machine, const Mesh& mesh, const Ref& bar, const Eigen::Vector3d& at,
                   const Eigen::Vector2d& patch = {0, 0});

/// Size of a patch of a member, a panel or a part of the user's mesh [m].
struct Patch {
  double along = 0, across = 0; ///< along x, as far as its plane goes along x, and across that
  bool spreads = false;         ///< by the thickness of a plate, into its middle plane
};

/// The place of a point on a member, a panel or a part of the user's mesh: carried by the nodes of its nearest element
/// in proportion, each by an exact arm. A patch is carried as the mean of nine points (Gauss) as far as they lie on the
/// part. Throws std::invalid_argument for a part without elements.
Place place_on_structure(const Mesh& mesh, const Ref& owner, const Eigen::Vector3d& at, const Patch& patch = {});

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
