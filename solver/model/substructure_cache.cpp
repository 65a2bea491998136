#include "solver/model/substructure_cache.h"

#include <algorithm>
#include <cstring>

namespace bedbow {

namespace {

bool same(const Eigen::SparseMatrix<double>& a, const Eigen::SparseMatrix<double>& b) {
  const auto n = static_cast<std::size_t>(a.nonZeros());
  return a.rows() == b.rows() && a.cols() == b.cols() && a.nonZeros() == b.nonZeros() &&
         std::memcmp(a.valuePtr(), b.valuePtr(), n * sizeof(double)) == 0 &&
         std::memcmp(a.innerIndexPtr(), b.innerIndexPtr(), n * sizeof(int)) == 0 &&
         std::equal(a.outerIndexPtr(), a.outerIndexPtr() + a.cols() + 1, b.outerIndexPtr());
}

std::size_t size_of(const Eigen::SparseMatrix<double>& a) {
  return static_cast<std::size_t>(a.nonZeros()) * (sizeof(double) + sizeof(int)) +
         static_cast<std::size_t>(a.cols() + 1) * sizeof(int);
}

} // namespace

const FactoredPart* SubstructureCache::find(const PartKey& key) {
  for (Entry& e : entries_) {
    if (e.hints.block != key.hints.block || e.hints.banded_order != key.hints.banded_order || e.solver != key.solver ||
        !same(e.functionals, key.functionals) || !same(e.stiffness, key.stiffness))
      continue;
    e.used = ++clock_;
    return &e.part;
  }
  return nullptr;
}

void SubstructureCache::keep(const PartKey& key, FactoredPart part) {
  const std::size_t size = size_of(key.stiffness) + size_of(key.functionals) + part.factor->bytes() +
                           static_cast<std::size_t>(part.compliance.size()) * sizeof(double);
  if (size > most_bytes_) return;
  while (bytes_ + size > most_bytes_) {
    const auto oldest = std::ranges::min_element(entries_, {}, &Entry::used);
    bytes_ -= oldest->bytes;
    entries_.erase(oldest);
  }
  bytes_ += size;
  entries_.push_back({key.stiffness, key.functionals, key.hints, key.solver, std::move(part), ++clock_, size});
}

} // namespace bedbow
