/// \file
/// Steps of the mesher, in the order they run. Each adds to the mesh under construction.
#pragma once

#include "mesh/build/mesher.h"
#include "mesh/build/node_finder.h"

#include <optional>
#include <span>
#include <vector>

namespace bedbow::mesher {

struct Builder {
  const Machine& machine;
  const Registry<ShapeEntry>& shapes;
  Mesh mesh;

  int add_node(const Eigen::Vector3d& x, Frame frame) {
    mesh.nodes.push_back({x, frame});
    return static_cast<int>(mesh.nodes.size()) - 1;
  }
  int add_section(const Shape& shape, double nu) {
    mesh.sections.push_back(shapes.get(shape.kind).make(shape, nu));
    return static_cast<int>(mesh.sections.size()) - 1;
  }
  [[nodiscard]] const Material& material(int i) const { return machine.materials.at(i); }
};

/// One layout with its section for each bar, no nodes yet: enough to place the joints.
void lay_out_bars(Builder& b);
/// Nodes and elements of the bars on their stations.
void mesh_bars(Builder& b);
/// Members, panels, the user's mesh, holds; parts that touch the apron turn with it.
void mesh_structure(Builder& b);
/// Nodes and elements of the members, rods for tension-only ones. Whatever lies on a member between its ends and is
/// joined there (ends of other members, nodes of a panel's edge, points of a joined mesh) is a station of it, with
/// one node for both; the members' order does not matter.
void mesh_members(Builder& b, NodeFinder& finder);
/// Joins ends of members that lie on a panel or on the user's mesh between its nodes; those are meshed already.
void join_member_ends(Builder& b, const NodeFinder& finder);
/// Lines and quads of the user's mesh.
void mesh_own(Builder& b, NodeFinder& finder);
/// Node of an end: shared with any ends or panel nodes there, rigidly linked to a bar it lies on.
int end_node(Builder& b, NodeFinder& finder, const Eigen::Vector3d& at);
/// Axes of a straight beam: x along it, z the direction of the section's height. \param up NaN: z, or y along z.
/// \param what names it in the message. Throws std::invalid_argument where `up` points along it.
Eigen::Matrix3d beam_axes(const Eigen::Vector3d& along, Eigen::Vector3d up, const std::string& what);
/// Points closer than this coincide [m].
inline constexpr double one_place = 1e-6;
/// Loose fingers as short cantilevers from the carrying bar.
void mesh_fingers(Builder& b);
/// Posts, cams, hinges, handles, ties, screws, supports, welds.
void mesh_joints(Builder& b);
/// Makes members, panels and meshes that are held only by joints to the apron turn with it.
void turn_hung_parts(Builder& b);
/// Rows of screws, one joint per screw.
void mesh_screws(Builder& b);
/// Pressure between bars of a body that touch without weld or screws.
void mesh_contacts(Builder& b);
/// The held sheet between nose and bed; \param sheets as make_mesh takes them.
void mesh_pads(Builder& b, std::span<const HeldSpan> sheets);

/// Places of the nodes on a panel's edges, each once. \return [m].
std::vector<Eigen::Vector3d> edge_places(const Panel& panel);

/// x at which members, panels and points of the user's mesh need stations of the bars they meet.
std::vector<double> structure_stations(const Builder& b);
/// Bar whose section (box) contains the point, within 1e-6 m.
std::optional<Ref> bar_at(const Builder& b, const Eigen::Vector3d& at);

} // namespace bedbow::mesher
