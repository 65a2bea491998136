/// \file
/// A shell mesh, its holds and loads, solved without a machine: for published plate and shell problems.
#pragma once

#include "solver/element/shell4.h"

#include <Eigen/SparseCore>

#include <functional>
#include <vector>

namespace bedbow::verification {

using Point = Eigen::Vector3d;

class ShellModel {
public:
  explicit ShellModel(ShellData data)
      : data_(data) {}

  /// A grid of na x nb elements over (a, b) in [0, 1]^2. \return node of column i, row j: first + j * (na + 1) + i.
  int add_grid(int na, int nb, const std::function<Point(double a, double b)>& place);
  int add_node(const Point& at);
  void add_quad(std::array<int, 4> nodes) { quads_.push_back(nodes); }
  /// Joins nodes that lie in one place into one, the first of them.
  void merge_coincident();

  /// Holds dofs (6 * node + 0..5), at a value.
  void hold(int node, std::initializer_list<int> dofs, double value = 0);
  /// Holds dofs of all nodes for which `where` is true.
  void hold_where(const std::function<bool(const Point&)>& where, std::initializer_list<int> dofs);
  void force(int node, int dof, double value);
  /// Traction per area on all elements [Pa].
  void traction(const Point& t);
  /// Line load per length along the nodes of an edge, straight or not, linear between nodes [N/m].
  void edge_load(const std::vector<int>& nodes, const Point& per_length);

  void solve();
  [[nodiscard]] double u(int node, int dof) const { return u_[6 * node + dof]; }
  [[nodiscard]] Vector24d element_motion(int element) const;
  /// Resultants at a node, averaged over its elements (same axes wanted: flat meshes of rectangles).
  [[nodiscard]] ShellResultants at_node(int node) const;
  [[nodiscard]] Corners corners(int element) const;
  [[nodiscard]] const std::vector<Point>& nodes() const { return nodes_; }
  [[nodiscard]] const std::vector<std::array<int, 4>>& quads() const { return quads_; }
  [[nodiscard]] const ShellData& data() const { return data_; }
  /// The node nearest to a point.
  [[nodiscard]] int nearest(const Point& at) const;

private:
  ShellData data_;
  std::vector<Point> nodes_;
  std::vector<std::array<int, 4>> quads_;
  std::vector<std::pair<int, double>> held_, forces_;
  Eigen::VectorXd u_;
};

} // namespace bedbow::verification
