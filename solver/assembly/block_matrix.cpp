#include "solver/assembly/block_matrix.h"

#include <algorithm>

namespace bedbow {

BlockMatrix::BlockMatrix(const DofMap& map, const Substructure& comp, const std::vector<int>& position,
                         std::vector<std::pair<int, int>> couplings)
    : map_(&map)
    , position_(&position) {
  const std::size_t n = comp.nodes.size();
  below_.resize(n);
  width_.resize(n);
  for (std::size_t i = 0; i < n; ++i)
    for (int d : map.dofs[comp.nodes[i]]) width_[i] += d >= 0;
  for (auto [a, b] : couplings) {
    const int p = position[a];
    const int q = position[b];
    if (p != q) below_[std::min(p, q)].emplace_back(std::max(p, q), 0);
  }
  Eigen::Index entries = 0;
  for (std::size_t i = 0; i < n; ++i) {
    auto& column = below_[i];
    std::sort(column.begin(), column.end());
    column.erase(std::unique(column.begin(), column.end()), column.end());
    int offset = 0;
    for (auto& [row, start] : column) {
      start = offset;
      offset += width_[row];
    }
    entries += Eigen::Index(width_[i]) * offset + width_[i] * (width_[i] + 1) / 2;
  }
  matrix_.resize(comp.size, comp.size);
  matrix_.resizeNonZeros(entries);
  int* outer = matrix_.outerIndexPtr();
  int* inner = matrix_.innerIndexPtr();
  int at = 0;
  int column = 0;
  for (std::size_t i = 0; i < n; ++i) {
    for (int b = 0; b < width_[i]; ++b) {
      outer[column] = at;
      for (int a = b; a < width_[i]; ++a) inner[at++] = column + a - b;
      for (const auto& [row, start] : below_[i])
        for (int d : map.dofs[comp.nodes[row]])
          if (d >= 0) inner[at++] = d;
      ++column;
    }
  }
  outer[column] = at;
  std::fill(matrix_.valuePtr(), matrix_.valuePtr() + at, 0.0);
}

void BlockMatrix::add(int i, int j, const Matrix6d& block) {
  const int p = (*position_)[i];
  const int q = (*position_)[j];
  const auto& row_dofs = map_->dofs[i];
  const auto& column_dofs = map_->dofs[j];
  const int* outer = matrix_.outerIndexPtr();
  double* value = matrix_.valuePtr();
  if (p == q) {
    for (int b = 0; b < 6; ++b) {
      if (column_dofs[b] < 0) continue;
      double* column = value + outer[column_dofs[b]];
      for (int a = b, ca = 0; a < 6; ++a)
        if (row_dofs[a] >= 0) column[ca++] += block(a, b);
    }
    return;
  }
  if (p < q) { // the block lies above the diagonal: its transpose below
    add(j, i, block.transpose());
    return;
  }
  const auto& list = below_[q];
  const auto it = std::lower_bound(list.begin(), list.end(), std::pair<int, int>(p, -1));
  for (int b = 0, cb = 0; b < 6; ++b) {
    if (column_dofs[b] < 0) continue;
    double* column = value + outer[column_dofs[b]] + (width_[q] - cb) + it->second;
    for (int a = 0, ca = 0; a < 6; ++a)
      if (row_dofs[a] >= 0) column[ca++] += block(a, b);
    ++cb;
  }
}

} // namespace bedbow
