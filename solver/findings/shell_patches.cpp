#include "solver/findings/shell_patches.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

using Values = Eigen::Matrix<double, 8, 1>;

Values as_values(const ShellResultants& r) {
  Values v;
  v << r.n, r.m, r.q;
  return v;
}

/// A small piece of a quad.
struct Piece {
  Eigen::Vector3d at;
  double area;
  Values values;
};

/// Radius of the weights in depths: their mean distance from a line, 16 R/(15 pi), is that of a disc of the depth,
/// 2 h/(3 pi).
constexpr double radius_per_depth = 5.0 / 8;

class Patches {
public:
  Patches(const ShellPatchMesh& mesh, double radius)
      : mesh_(mesh)
      , radius_(radius)
      , quads_of_(mesh.points.size())
      , seen_(mesh.quads.size(), -1) {
    for (std::size_t q = 0; q < mesh.quads.size(); ++q) {
      for (int k : mesh.quads[q]) quads_of_[k].push_back(static_cast<int>(q));
      cut(q);
    }
  }

  [[nodiscard]] ShellResultants around(int point) {
    Values sum = Values::Zero();
    double weight = 0;
    open_.assign(quads_of_[point].begin(), quads_of_[point].end());
    for (int q : open_) seen_[q] = point;
    while (!open_.empty()) {
      const int q = open_.back();
      open_.pop_back();
      if (!add(q, mesh_.points[point], sum, weight)) continue;
      for (int k : mesh_.quads[q])
        for (int next : quads_of_[k])
          if (seen_[next] != point) {
            seen_[next] = point;
            open_.push_back(next);
          }
    }
    const Values mean = weight > 0 ? Values(sum / weight) : corner_mean(point);
    return {mean.head<3>(), mean.segment<3>(3), mean.tail<2>()};
  }

private:
  /// Cuts a quad into pieces small against the radius.
  void cut(std::size_t q) {
    std::array<Eigen::Vector3d, 4> c;
    std::array<Values, 4> v;
    for (std::size_t k = 0; k < 4; ++k) {
      c[k] = mesh_.points[mesh_.quads[q][k]];
      v[k] = as_values(mesh_.at_corners[q][k]);
    }
    const double size = std::max((c[2] - c[0]).norm(), (c[3] - c[1]).norm());
    const int n = std::clamp(static_cast<int>(std::ceil(2.5 * size / radius_)), 2, 6);
    first_.push_back(pieces_.size());
    for (int i = 0; i < n; ++i)
      for (int j = 0; j < n; ++j) {
        const double a = (i + 0.5) / n, b = (j + 0.5) / n;
        const std::array<double, 4> w{(1 - a) * (1 - b), a * (1 - b), a * b, (1 - a) * b};
        const Eigen::Vector3d along = (1 - b) * (c[1] - c[0]) + b * (c[2] - c[3]);
        const Eigen::Vector3d across = (1 - a) * (c[3] - c[0]) + a * (c[2] - c[1]);
        pieces_.push_back({w[0] * c[0] + w[1] * c[1] + w[2] * c[2] + w[3] * c[3], along.cross(across).norm() / (n * n),
                           w[0] * v[0] + w[1] * v[1] + w[2] * v[2] + w[3] * v[3]});
      }
  }

  /// Adds what a quad has within the radius. \return whether it has anything.
  bool add(int q, const Eigen::Vector3d& at, Values& sum, double& weight) const {
    bool any = false;
    const std::size_t last = q + 1U < first_.size() ? first_[q + 1U] : pieces_.size();
    for (std::size_t i = first_[q]; i < last; ++i) {
      const Piece& p = pieces_[i];
      const double w = 1 - (p.at - at).squaredNorm() / (radius_ * radius_);
      if (w <= 0) continue;
      any = true;
      sum += w * p.area * p.values;
      weight += w * p.area;
    }
    return any;
  }

  [[nodiscard]] Values corner_mean(int point) const {
    Values sum = Values::Zero();
    for (int q : quads_of_[point]) {
      const auto& quad = mesh_.quads[q];
      sum += as_values(mesh_.at_corners[q][std::ranges::find(quad, point) - quad.begin()]);
    }
    return sum / static_cast<double>(quads_of_[point].size());
  }

  const ShellPatchMesh& mesh_;
  double radius_;
  std::vector<std::vector<int>> quads_of_;
  std::vector<int> seen_, open_; ///< by quad: the point that looked at it last; still to look at
  std::vector<Piece> pieces_;
  std::vector<std::size_t> first_; ///< by quad: its first piece
};

} // namespace

std::vector<ShellResultants> patch_means(const ShellPatchMesh& mesh, double depth) {
  Patches patches(mesh, radius_per_depth * depth);
  std::vector<ShellResultants> out;
  out.reserve(mesh.points.size());
  for (std::size_t i = 0; i < mesh.points.size(); ++i) out.push_back(patches.around(static_cast<int>(i)));
  return out;
}

} // namespace bedbow
