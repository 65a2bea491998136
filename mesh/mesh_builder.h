/// \file
/// Steps of the mesher, in the order they run. Each adds to the mesh under construction.
#pragma once

#include "mesh/mesher.h"

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

/// One layout with its section for each bar, no nodes yet: enough to know where joints sit.
void lay_out_bars(Builder& b);
/// Nodes and elements of the bars on their stations.
void mesh_bars(Builder& b);
/// Members, panels, holds; members and panels that touch the apron turn with it.
void mesh_structure(Builder& b);
/// Loose fingers as short cantilevers from the carrying bar.
void mesh_fingers(Builder& b);
/// Posts, cams, hinges, handles, ties, screws, supports, welds.
void mesh_joints(Builder& b);
/// Rows of screws, one joint a screw.
void mesh_screws(Builder& b);
/// Pressure between bars of a body that touch without weld or screws.
void mesh_contacts(Builder& b);
/// The held sheet between nose and bed; \param sheets as make_mesh takes them.
void mesh_pads(Builder& b, std::span<const HeldSpan> sheets);

/// x that members, panels and fingers want as stations of the bars they meet.
std::vector<double> structure_stations(const Builder& b);
/// Bar whose section (box) contains the point, within 1e-6 m.
std::optional<Ref> bar_at(const Builder& b, const Eigen::Vector3d& at);

} // namespace bedbow::mesher
