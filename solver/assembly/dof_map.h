/// \file
/// From nodes to unknowns: rigidly linked nodes share one reference node, connected parts make components, and each
/// component numbers its own unknowns. Rigid arms are exact transformations.
#pragma once

#include "mesh/build/mesh.h"
#include "solver/element/beam.h"

#include <Eigen/Core>

#include <array>
#include <string>
#include <vector>

namespace bedbow {

/// u(node) = u(ref) + theta(ref) x arm, theta(node) = theta(ref).
struct NodeLink {
  int ref = -1;
  Eigen::Vector3d arm = Eigen::Vector3d::Zero();
};

/// A part connected by elements, links and screws. It has its own stiffness matrix, in which as many dofs are anchored
/// as rigid-body modes remain; the amplitudes of these modes are additional unknowns.
struct Substructure {
  std::vector<int> nodes; ///< reference nodes in the order of their unknowns
  int size = 0;           ///< free unknowns
  Frame frame = Frame::fixed;
  std::string name;               ///< "clamp", "clamp.tail", "member rod": name for the builder
  bool banded_by_station = false; ///< made of bars only: numbered station by station
  Eigen::Vector3d centre;         ///< reference point of the rigid-body modes [m]
  Eigen::MatrixXd rigid; ///< 6 x r: rigid-body modes left by the holds, as (translation, rotation about centre)
};

struct DofMap {
  std::vector<NodeLink> links;          ///< by node
  std::vector<int> substructure;        ///< by node
  std::vector<std::array<int, 6>> dofs; ///< by node; set for reference nodes: unknown in its component, -1 held
  std::vector<Substructure> substructures;
  std::vector<int> constrained;        ///< reference dofs (6 * node + dof) held to ground
  std::vector<int> offset_constraints; ///< held dofs of linked nodes with an arm: these become rows
  bool plane = false;                  ///< 2D: only ux, uz, ry move
  std::vector<signed char> amplitudes; ///< by node, as in the mesh: -1 where it moves
  /// Whether a node's degree of freedom exists.
  [[nodiscard]] bool has(int node, int dof) const;
};

/// True for the displacements that exist: all six, or ux, uz, ry in the x-z plane.
bool moves(bool plane, int dof);

DofMap make_dof_map(const Machine& machine, const Mesh& mesh);

} // namespace bedbow
