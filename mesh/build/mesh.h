/// \file
/// The mesh that a mesher makes of a Machine: nodes, beam and shell elements, rigid links, joints and places.
/// Geometry and description only; no mechanics. Everything stands as the case draws it, with the apron at 0 deg.
#pragma once

#include "mesh/build/place_term.h"
#include "mesh/machine/machine.h"
#include "mesh/piece/across.h"
#include "mesh/piece/flat.h"

#include <Eigen/Core>

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace bedbow {

struct Mesh;

/// Which parts turn with the apron. Parts of frame `apron` keep their own axes, which the step's angle turns about the
/// bend line (y = 0, z = 0).
enum class Frame { fixed, apron };

struct Node {
  Eigen::Vector3d x; ///< [m]
  Frame frame = Frame::fixed;
  /// Number of amplitudes of functions across a flat that stand in place of the six displacements, in their order, at a
  /// node that exists for them only; -1 at all others.
  int amplitudes = -1;
  [[nodiscard]] bool moves() const { return amplitudes < 0; }
};

/// Two-node beam between nodes on its centroid line.
struct BeamElement {
  std::array<int, 2> nodes{};
  Eigen::Matrix3d axes = Eigen::Matrix3d::Identity(); ///< rows: local x (along), y (section width), z (section height)
  double length = 0;
  int section = 0;                  ///< index into Mesh::sections
  int material = 0;                 ///< index into Machine::materials
  Ref owner;                        ///< bar, member or part of the user's mesh
  DofMask release_a{}, release_b{}; ///< local dofs freed at either end
  bool tension_only = false;
};

/// What bending across its width adds to a beam element of a flat: the functions' amplitudes at its two stations.
struct StripElement {
  int beam = -1;              ///< index into Mesh::beams
  int across = -1;            ///< index into Mesh::across
  std::array<int, 2> first{}; ///< first amplitude node at either end; the others follow it
  FlatSection flat;
};

/// Nodes of a strip element: those of its beam, then the amplitude nodes of its first and of its second end.
std::vector<int> nodes_of(const Mesh& mesh, const StripElement& strip);

/// Flat four-node shell.
struct ShellElement {
  std::array<int, 4> nodes{};
  double thickness = 0;
  int material = 0;
  Ref owner; ///< bar (model = plate), panel or part of the user's mesh
};

/// A point carried rigidly by one node, or by the nodes of a shell around it. No terms: ground.
struct Place {
  std::vector<PlaceTerm> terms;
  Eigen::Vector3d at = Eigen::Vector3d::Zero(); ///< [m], apron at 0 deg
  Frame frame = Frame::fixed;
  [[nodiscard]] bool ground() const { return terms.empty(); }
};

/// The node that carries most of a place. \param place not ground.
int main_node(const Place& place);

/// A row of pads whose faces stay straight between those of the front and the rear row: its elongation is that of the
/// rear row by `fraction`, and of the front row by the rest.
struct BetweenRows {
  int front = -1, rear = -1; ///< indices into Mesh::joints
  double fraction = 0;
};

/// A joint of any kind: up to six springs between two places, along the global axes unless it has axes of its own.
/// The spring's stretch is displacement(b) - displacement(a); its force acts +f on a and -f on b (so tension pulls them
/// together). Stiffness infinity is rigid, 0 is free.
struct Joint {
  JointKind kind = JointKind::tie;
  int index = -1;   ///< in the machine's list of that kind; pads and touches: number of the spot
  int part = 0;     ///< which of a row of screws, ...; of a hinge with play 1 and 2: its stops along x
  std::string name; ///< as reported
  Place a, b;
  std::array<double, 6> stiffness{};                  ///< [N/m], [N m/rad]
  Eigen::Matrix3d axes = Eigen::Matrix3d::Identity(); ///< rows: the joint's own x, y, z, along which the springs act
  std::array<UnilateralType, 6> sense{};              ///< one-sided springs
  std::optional<double> preload;                      ///< posts: just this force along z while clamping [N]
  int normal = uz;                    ///< screws: the axis across the faces that they press together, uy or uz
  bool swapped = false;               ///< a is the second of the case's `joins` (a always lies at the lower side)
  std::array<double, 6> gap{};        ///< stretch at which the spring is slack [m]; cam lift is +lift on compression
  double tributary = 0;               ///< tributary length along x (pads, touches) [m]
  std::optional<BetweenRows> between; ///< pads between the front and the rear of the land
};

/// A bar's or member's chain of nodes, a straight run of the user mesh's lines, or a plate bar's grid, in order of x.
struct BarLayout {
  Ref owner;
  int section = -1;
  std::vector<double> stations; ///< along the axis from the bar's start, absolute x for bars [m]
  std::vector<int> nodes;       ///< beam: one per station; plate: rows x stations, row-major (row = across)
  std::vector<double> across;   ///< plate: coordinate across of each row of nodes, from the centroid [m]
  bool standing = false;        ///< plate or strip: across is z (standing) or y (lying)
  int first_strip = -1;         ///< strip: as first_element, index into Mesh::strips; -1 where sections stay plane
  /// Beam: by element, depth of the section that the bar makes with the bars welded to it there (the lesser side of
  /// their common box); 0 where none is [m]. Empty: nowhere.
  std::vector<double> welded_depth;
  int first_element = -1; ///< beam: elements first .. first + stations - 2; plate: shells likewise row-major
};

/// One finger of the nose as meshed: two beam elements, or a plate of its own.
struct FingerLayout {
  double from = 0, to = 0; ///< along x [m]
  int root = -1, pad = -1,
      tip = -1;             ///< beam: nodes at the carrying bar, under the middle of the land, at the nose edge
  int first_element = -1;   ///< beam: of root to pad and pad to tip; plate: of its shells
  std::vector<int> nodes;   ///< plate: y x x, row-major; empty for a beam
  std::vector<double> x, y; ///< plate: of the nodes, y from the nose edge to the root [m]
  [[nodiscard]] bool plate() const { return !nodes.empty(); }
};

/// Screws and welds are bilateral in every state: they are springs of the stiffness matrix and make one part of what
/// they join. All other joints act between parts.
inline bool is_bonded(const Joint& joint) {
  return joint.kind == JointKind::screw || joint.kind == JointKind::weld;
}

struct Mesh {
  std::vector<Node> nodes;
  std::vector<BeamElement> beams;
  std::vector<StripElement> strips; ///< some of the beam elements
  std::vector<ShellElement> shells;
  std::vector<Section> sections;
  std::vector<AcrossFunctions> across;         ///< of the flats that bend across their width
  std::vector<std::array<int, 2>> rigid_links; ///< node pairs joined in all six degrees of freedom
  std::vector<Joint> joints;                   ///< in the machine's order by kind
  std::vector<BarLayout> layouts;              ///< bars body by body, then members, then runs of own lines
  std::vector<FingerLayout> fingers;           ///< of the clamp's nose, left to right
  std::vector<int> held_dofs;                  ///< 6 * node + dof: holds that need no arm
  std::vector<int> own_nodes;                  ///< node of each point of the user's mesh; -1 where no cell has it
  std::vector<double> stations;                ///< the common x-stations of the bars [m]
  std::vector<double> bend_stations;           ///< stations within the sheet, both ends included
  std::vector<std::string> warnings;
};

} // namespace bedbow
