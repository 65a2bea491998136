#include "solver/findings/shell_patches.h"

#include "solver/strength/comparison.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace bedbow {

namespace {

/// Radius of the weights in depths: their mean distance from a line, 16 R/(15 pi), is that of a disc of the depth,
/// 2 h/(3 pi).
constexpr double radius_per_depth = 5.0 / 8;

void add_share(const ShellResultants& r, double share, ShellResultants& sum) {
  sum.n += share * r.n;
  sum.m += share * r.m;
  sum.q += share * r.q;
}

ShellResultants nothing() {
  return {Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero(), Eigen::Vector2d::Zero()};
}

} // namespace

ShellPatches::ShellPatches(const ShellPatchMesh& mesh, double depth)
    : mesh_(mesh)
    , radius_(radius_per_depth * depth)
    , quads_of_(mesh.points.size())
    , seen_(mesh.quads.size(), -1)
    , pieces_(mesh.quads.size()) {
  for (std::size_t q = 0; q < mesh.quads.size(); ++q)
    for (int k : mesh.quads[q]) quads_of_[k].push_back(static_cast<int>(q));
}

template <class Visit> void ShellPatches::flood(std::span<const int> seeds, Visit visit) {
  ++floods_;
  open_.assign(seeds.begin(), seeds.end());
  for (int q : open_) seen_[q] = floods_;
  while (!open_.empty()) {
    const int q = open_.back();
    open_.pop_back();
    if (!visit(q)) continue;
    for (int k : mesh_.quads[q])
      for (int next : quads_of_[k])
        if (seen_[next] != floods_) {
          seen_[next] = floods_;
          open_.push_back(next);
        }
  }
}

ShellResultants ShellPatches::around(int point) {
  ShellResultants sum = nothing();
  double weight = 0;
  flood(quads_of_[point], [&](int q) {
    const double more = add(q, mesh_.points[point], sum);
    weight += more;
    return more > 0;
  });
  if (weight == 0) return corner_mean(point);
  ShellResultants mean = nothing();
  add_share(sum, 1 / weight, mean);
  return mean;
}

std::vector<int> ShellPatches::reaching(int quad) {
  const auto circle = [&](int q) { // about a quad
    Eigen::Vector3d middle = Eigen::Vector3d::Zero();
    for (int k : mesh_.quads[q]) middle += mesh_.points[k] / 4;
    double reach = 0;
    for (int k : mesh_.quads[q]) reach = std::max(reach, (mesh_.points[k] - middle).norm());
    return std::pair(middle, reach);
  };
  const std::pair<Eigen::Vector3d, double> own = circle(quad);
  const double reach = own.second + radius_;
  std::vector<int> out;
  flood(std::span(&quad, 1), [&](int q) {
    const auto [at, size] = circle(q);
    if ((at - own.first).norm() > reach + size) return false;
    out.insert(out.end(), mesh_.quads[q].begin(), mesh_.quads[q].end());
    return true;
  });
  return out;
}

/// Cut small against the radius.
const std::vector<ShellPatches::Piece>& ShellPatches::pieces_of(int quad) {
  std::vector<Piece>& pieces = pieces_[quad];
  if (!pieces.empty()) return pieces;
  std::array<Eigen::Vector3d, 4> c;
  for (std::size_t k = 0; k < 4; ++k) c[k] = mesh_.points[mesh_.quads[quad][k]];
  const auto cuts = [&](const Eigen::Vector3d& side, const Eigen::Vector3d& other) {
    return std::clamp(static_cast<int>(std::ceil(3 * std::max(side.norm(), other.norm()) / radius_ - 1e-9)), 2, 6);
  };
  const int m = cuts(c[1] - c[0], c[2] - c[3]), n = cuts(c[3] - c[0], c[2] - c[1]);
  pieces.reserve(static_cast<std::size_t>(m * n));
  for (int i = 0; i < m; ++i)
    for (int j = 0; j < n; ++j) {
      const double a = (i + 0.5) / m, b = (j + 0.5) / n;
      const std::array<double, 4> w{(1 - a) * (1 - b), a * (1 - b), a * b, (1 - a) * b};
      const Eigen::Vector3d along = (1 - b) * (c[1] - c[0]) + b * (c[2] - c[3]);
      const Eigen::Vector3d across = (1 - a) * (c[3] - c[0]) + a * (c[2] - c[1]);
      const Eigen::Vector3d at = w[0] * c[0] + w[1] * c[1] + w[2] * c[2] + w[3] * c[3];
      pieces.push_back({at.x(), at.y(), at.z(), along.cross(across).norm() / (m * n), w});
    }
  return pieces;
}

double ShellPatches::add(int quad, const Eigen::Vector3d& at, ShellResultants& sum) {
  const double per_square = 1 / (radius_ * radius_);
  double all = 0;
  std::array<double, 4> shares{};
  for (const Piece& p : pieces_of(quad)) {
    const double x = p.x - at.x(), y = p.y - at.y(), z = p.z - at.z();
    const double w = p.area * std::max(0.0, 1 - (x * x + y * y + z * z) * per_square);
    all += w;
    for (std::size_t k = 0; k < 4; ++k) shares[k] += w * p.corners[k];
  }
  if (all > 0)
    for (std::size_t k = 0; k < 4; ++k) add_share(mesh_.at_corners[quad][k], shares[k], sum);
  return all;
}

ShellResultants ShellPatches::corner_mean(int point) const {
  ShellResultants sum = nothing();
  for (int q : quads_of_[point]) {
    const auto& quad = mesh_.quads[q];
    add_share(mesh_.at_corners[q][std::ranges::find(quad, point) - quad.begin()],
              1.0 / static_cast<double>(quads_of_[point].size()), sum);
  }
  return sum;
}

PatchPeak patch_peak(const ShellPatchMesh& mesh, double depth,
                     const std::function<double(const ShellResultants&)>& stress) {
  std::vector<double> most(mesh.quads.size(), 0); // in each quad
  for (std::size_t q = 0; q < most.size(); ++q)
    for (const ShellResultants& r : mesh.at_corners[q]) most[q] = std::max(most[q], stress(r));
  std::vector<int> order(most.size());
  std::iota(order.begin(), order.end(), 0);
  std::ranges::sort(order, std::greater{}, [&](int q) { return most[q]; });
  ShellPatches patches(mesh, depth);
  std::vector<double> mean(mesh.points.size(), -1); // -1: not looked at
  double best = 0;
  for (int q : order) {
    if (clearly_greater(best, most[q])) break; // nothing that is left reaches it
    for (int p : patches.reaching(q))
      if (mean[p] < 0) best = std::max(best, mean[p] = stress(patches.around(p)));
  }
  PatchPeak out;
  for (std::size_t p = 0; p < mean.size(); ++p)
    if (mean[p] >= 0 && clearly_greater(mean[p], out.stress)) out = {static_cast<int>(p), mean[p]};
  return out;
}

} // namespace bedbow
