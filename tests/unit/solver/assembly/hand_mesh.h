/// \file
/// Meshes made by hand for the tests of assembly and model: chains of beams along x with round constants.
#pragma once

#include "mesh/build/mesh.h"

#include <limits>
#include <vector>

namespace bedbow::test {

/// E = 200 GPa, G = 80 GPa, density 8000 kg/m^3.
inline constexpr double hand_E = 200e9, hand_G = 80e9, hand_density = 8000;
/// 20 x 60: area, second moments of area, torsion constant, shear area 5/6 A.
inline constexpr double hand_A = 1200e-6, hand_Iyy = 360e-9, hand_Izz = 40e-9, hand_J = 126e-9, hand_As = 1000e-6;

struct HandMesh {
  Machine machine;
  Mesh mesh;

  HandMesh() {
    Material m;
    m.name = "steel";
    m.E = hand_E;
    m.G = hand_G;
    m.nu = 0.25;
    m.density = hand_density;
    machine.materials = {m};
    Section s;
    s.props.A = hand_A;
    s.props.Iyy = hand_Iyy;
    s.props.Izz = hand_Izz;
    s.props.J = hand_J;
    s.props.Ay = s.props.Az = hand_As;
    mesh.sections = {s};
    for (const BodyKind k : all_bodies) machine.body(k).kind = k;
  }

  /// Adds a bar of a body with its centroid at (y, z) and its nodes at those x, in that order. \return the first node.
  int add_bar(BodyKind body, const std::vector<double>& x, double y = 0, double z = 0) {
    const int first = static_cast<int>(mesh.nodes.size());
    auto& bars = machine.body(body).bars;
    Bar bar;
    bar.name = "bar" + std::to_string(bars.size() + 1);
    bar.at = {y, z};
    bar.material = 0;
    bar.start = x.front();
    bar.length = x.back() - x.front();
    BarLayout layout;
    layout.owner = {Ref::Kind::bar, body, static_cast<int>(bars.size())};
    layout.section = 0;
    layout.stations = x;
    layout.first_element = static_cast<int>(mesh.beams.size());
    for (std::size_t i = 0; i < x.size(); ++i) {
      layout.nodes.push_back(first + static_cast<int>(i));
      mesh.nodes.push_back({{x[i], y, z}, body == BodyKind::apron ? Frame::apron : Frame::fixed});
    }
    for (std::size_t i = 0; i + 1 < x.size(); ++i) {
      BeamElement e;
      e.nodes = {layout.nodes[i], layout.nodes[i + 1]};
      e.length = x[i + 1] - x[i];
      e.owner = layout.owner;
      mesh.beams.push_back(e);
    }
    bars.push_back(bar);
    mesh.layouts.push_back(layout);
    return first;
  }

  /// Holds degrees of freedom of a node.
  void hold(int node, std::initializer_list<int> dofs) {
    for (const int k : dofs) mesh.held_dofs.push_back(6 * node + k);
  }
  void clamp(int node) { hold(node, {ux, uy, uz, rx, ry, rz}); }

  /// The place of a point on an arm from a node.
  [[nodiscard]] Place place(int node, const Eigen::Vector3d& arm = Eigen::Vector3d::Zero()) const {
    const Node& n = mesh.nodes[static_cast<std::size_t>(node)];
    return {{PlaceTerm::on_arm(node, 1, arm)}, n.x + arm, n.frame};
  }
};

} // namespace bedbow::test
