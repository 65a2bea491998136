#include "tests/verification/plates/shell_model.h"

#include "solver/linear/cholmod.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <stdexcept>

namespace bedbow::verification {

int ShellModel::add_node(const Point& at) {
  nodes_.push_back(at);
  return static_cast<int>(nodes_.size()) - 1;
}

int ShellModel::add_grid(int na, int nb, const std::function<Point(double, double)>& place) {
  const int first = static_cast<int>(nodes_.size());
  for (int j = 0; j <= nb; ++j)
    for (int i = 0; i <= na; ++i) nodes_.push_back(place(double(i) / na, double(j) / nb));
  const auto at = [&](int i, int j) { return first + j * (na + 1) + i; };
  for (int j = 0; j < nb; ++j)
    for (int i = 0; i < na; ++i) quads_.push_back({at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)});
  return first;
}

void ShellModel::merge_coincident() {
  std::map<std::array<long long, 3>, int> known;
  double size = 0;
  for (const Point& p : nodes_) size = std::max(size, p.cwiseAbs().maxCoeff());
  const double cell = 1e-7 * size;
  for (auto& q : quads_)
    for (int& n : q) {
      const Point& p = nodes_[n];
      const auto near = [&](double v) { return std::llround(v / cell + 0.25); }; // no node lies on a cell's border
      n = known.try_emplace({near(p.x()), near(p.y()), near(p.z())}, n).first->second;
    }
}

void ShellModel::hold(int node, std::initializer_list<int> dofs, double value) {
  for (int d : dofs) held_.emplace_back(6 * node + d, value);
}

void ShellModel::hold_where(const std::function<bool(const Point&)>& where, std::initializer_list<int> dofs) {
  for (std::size_t i = 0; i < nodes_.size(); ++i)
    if (where(nodes_[i])) hold(static_cast<int>(i), dofs);
}

void ShellModel::force(int node, int dof, double value) {
  forces_.emplace_back(6 * node + dof, value);
}

void ShellModel::traction(const Point& t) {
  for (std::size_t e = 0; e < quads_.size(); ++e) {
    const Vector24d f = shell_load(corners(static_cast<int>(e)), t);
    for (std::size_t k = 0; k < 4; ++k)
      for (int d = 0; d < 6; ++d) force(quads_[e][k], d, f[6 * static_cast<int>(k) + d]);
  }
}

void ShellModel::edge_load(const std::vector<int>& nodes, const Point& per_length) {
  for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
    const double length = (nodes_[nodes[i + 1]] - nodes_[nodes[i]]).norm();
    for (int n : {nodes[i], nodes[i + 1]})
      for (int d = 0; d < 3; ++d) force(n, d, per_length[d] * length / 2);
  }
}

Corners ShellModel::corners(int e) const {
  const auto& q = quads_[e];
  return {nodes_[q[0]], nodes_[q[1]], nodes_[q[2]], nodes_[q[3]]};
}

void ShellModel::solve() {
  const int n = 6 * static_cast<int>(nodes_.size());
  std::vector<char> fixed(n, 1);
  for (const auto& q : quads_)
    for (int node : q)
      for (int d = 0; d < 6; ++d) fixed[6 * node + d] = 0;
  Eigen::VectorXd f = Eigen::VectorXd::Zero(n);
  u_ = Eigen::VectorXd::Zero(n);
  for (auto [dof, v] : forces_) f[dof] += v;
  for (auto [dof, v] : held_) {
    fixed[dof] = 1;
    u_[dof] = v;
  }
  std::vector<int> number(n, -1);
  int count = 0;
  for (int i = 0; i < n; ++i)
    if (!fixed[i]) number[i] = count++;
  std::vector<Eigen::Triplet<double>> triplets;
  Eigen::VectorXd b = Eigen::VectorXd::Zero(count);
  for (std::size_t e = 0; e < quads_.size(); ++e) {
    const Matrix24d k = shell_stiffness(corners(static_cast<int>(e)), data_);
    for (int i = 0; i < 24; ++i) {
      const int row = 6 * quads_[e][i / 6] + i % 6;
      if (number[row] < 0) continue;
      for (int j = 0; j < 24; ++j) {
        const int column = 6 * quads_[e][j / 6] + j % 6;
        if (number[column] < 0)
          b[number[row]] -= k(i, j) * u_[column];
        else if (number[row] >= number[column])
          triplets.emplace_back(number[row], number[column], k(i, j));
      }
    }
  }
  SymmetricMatrix a(count, count);
  a.setFromTriplets(triplets.begin(), triplets.end());
  for (int i = 0; i < n; ++i)
    if (number[i] >= 0) b[number[i]] += f[i];
  const FactorOutcome outcome = cholmod_factor(a, {});
  if (!outcome.factorization) throw std::runtime_error("the shell model moves freely");
  Eigen::MatrixXd x = b;
  outcome.factorization->solve(x);
  for (int i = 0; i < n; ++i)
    if (number[i] >= 0) u_[i] = x(number[i], 0);
}

Vector24d ShellModel::element_motion(int e) const {
  Vector24d u;
  for (int k = 0; k < 4; ++k) u.segment<6>(6 * k) = u_.segment<6>(6 * quads_[e][k]);
  return u;
}

ShellResultants ShellModel::at_node(int node) const {
  ShellResultants sum{Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero(), Eigen::Vector2d::Zero()};
  int count = 0;
  for (std::size_t e = 0; e < quads_.size(); ++e)
    for (std::size_t k = 0; k < 4; ++k) {
      if (quads_[e][k] != node) continue;
      const int i = static_cast<int>(e);
      const auto r = shell_corner_resultants(corners(i), data_, element_motion(i))[k];
      sum.n += r.n;
      sum.m += r.m;
      sum.q += r.q;
      ++count;
    }
  return {sum.n / count, sum.m / count, sum.q / count};
}

int ShellModel::nearest(const Point& at) const {
  int best = -1;
  double least = std::numeric_limits<double>::infinity();
  for (const auto& q : quads_)
    for (int i : q)
      if (const double d = (nodes_[i] - at).norm(); d < least) {
        least = d;
        best = i;
      }
  return best;
}

} // namespace bedbow::verification
