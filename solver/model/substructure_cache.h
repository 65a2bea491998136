/// \file
/// Cache of factored parts: the next variant of a machine often shares its bed or apron with the last ones. A part is
/// reused only where its stiffness matrix and the places of its joints agree to the last bit, so the result is the same
/// as if it were computed again.
#pragma once

#include "solver/linear/factorization.h"

#include <cstdint>
#include <list>
#include <memory>
#include <string>

namespace bedbow {

/// Key of a part.
struct PartKey {
  const SymmetricMatrix& stiffness;
  const Eigen::SparseMatrix<double>& functionals; ///< of its joints, as columns
  FactorHints hints;
  const std::string& solver;
};

struct FactoredPart {
  std::shared_ptr<const Factorization> factor;
  Eigen::MatrixXd compliance; ///< of the functionals
};

/// For one caller at a time: each thread that processes variants has its own.
class SubstructureCache {
public:
  /// \param most_bytes greatest size; the least recently used part is removed first.
  explicit SubstructureCache(std::size_t most_bytes = std::size_t(6) << 20)
      : most_bytes_(most_bytes) {}
  /// The part, or null. Valid until the next `keep`.
  [[nodiscard]] const FactoredPart* find(const PartKey& key);
  void keep(const PartKey& key, FactoredPart part);
  [[nodiscard]] std::size_t bytes() const { return bytes_; }

private:
  struct Entry {
    SymmetricMatrix stiffness;
    Eigen::SparseMatrix<double> functionals;
    FactorHints hints;
    std::string solver;
    FactoredPart part;
    std::uint64_t used = 0;
    std::size_t bytes = 0;
  };
  std::list<Entry> entries_; // a list, so that removing one does not copy the others
  std::size_t most_bytes_, bytes_ = 0;
  std::uint64_t clock_ = 0;
};

} // namespace bedbow
