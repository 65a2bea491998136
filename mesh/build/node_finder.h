/// \file
/// Finds nodes that coincide, by a grid of cells.
#pragma once

#include <Eigen/Core>

#include <array>
#include <cmath>
#include <cstdint>
#include <unordered_map>
#include <vector>

namespace bedbow {

/// Nodes by place; two places within `tolerance` are one.
class NodeFinder {
public:
  explicit NodeFinder(double tolerance)
      : tolerance_(tolerance)
      , cell_(64 * tolerance) {}

  /// The node at that place, or -1.
  [[nodiscard]] int find(const Eigen::Vector3d& at) const {
    // Only the neighbour cells that the tolerance reaches into can hold it; all 27 are looked at for simplicity.
    const auto c = cell(at);
    for (std::int64_t i = -1; i <= 1; ++i)
      for (std::int64_t j = -1; j <= 1; ++j)
        for (std::int64_t k = -1; k <= 1; ++k) {
          auto it = cells_.find(key(c[0] + i, c[1] + j, c[2] + k));
          if (it == cells_.end()) continue;
          for (const auto& [node, x] : it->second)
            if ((x - at).norm() <= tolerance_) return node;
        }
    return -1;
  }

  void add(int node, const Eigen::Vector3d& at) {
    const auto c = cell(at);
    cells_[key(c[0], c[1], c[2])].emplace_back(node, at);
  }

private:
  [[nodiscard]] std::array<std::int64_t, 3> cell(const Eigen::Vector3d& p) const {
    return {std::llround(p.x() / cell_), std::llround(p.y() / cell_), std::llround(p.z() / cell_)};
  }
  static std::uint64_t key(std::int64_t i, std::int64_t j, std::int64_t k) {
    // Large odd factors spread neighbouring cells; a collision only costs a comparison.
    return static_cast<std::uint64_t>(i) * 0x9E3779B97F4A7C15ULL ^
           static_cast<std::uint64_t>(j) * 0xC2B2AE3D27D4EB4FULL ^
           static_cast<std::uint64_t>(k) * 0x165667B19E3779F9ULL;
  }

  double tolerance_, cell_;
  std::unordered_map<std::uint64_t, std::vector<std::pair<int, Eigen::Vector3d>>> cells_;
};

} // namespace bedbow
