#include "solver/element/beam.h"

#include <algorithm>

namespace bedbow {

namespace {

// Below this fraction of its initial value a pivot is rounding: the released dofs can move freely. Pivots of valid
// releases fall to a quarter (a beam pinned at both ends), hardly less; those of mechanisms to 1e-16.
constexpr double gone = 1e-9;

struct Elimination {
  Matrix12d K; // rows of eliminated dofs at their elimination
  Vector12d f;
  int free_dof = -1;
};

// Gauss elimination of the released dofs one by one. A dof without restraint is skipped and named.
Elimination eliminate(const Matrix12d& stiffness, const Vector12d& load, const std::array<bool, 12>& released) {
  Elimination e{stiffness, load, -1};
  std::array<bool, 12> done{};
  for (int r = 0; r < 12; ++r) {
    if (!released[r]) continue;
    done[r] = true;
    const double pivot = e.K(r, r);
    if (!(pivot > gone * stiffness(r, r))) {
      e.free_dof = e.free_dof < 0 ? r : e.free_dof;
      e.K.row(r).setZero();
      e.K.col(r).setZero();
      e.f(r) = 0;
      continue;
    }
    for (int i = 0; i < 12; ++i) {
      if (done[i]) continue;
      const double factor = e.K(i, r) / pivot;
      if (factor == 0) continue;
      for (int j = 0; j < 12; ++j)
        if (!done[j]) e.K(i, j) -= factor * e.K(r, j);
      e.f(i) -= factor * e.f(r);
    }
  }
  return e;
}

} // namespace

Released beam_release(const Matrix12d& stiffness, const Vector12d& load, const std::array<bool, 12>& released) {
  Elimination e = eliminate(stiffness, load, released);
  for (int r = 0; r < 12; ++r) {
    if (!released[r]) continue;
    e.K.row(r).setZero();
    e.K.col(r).setZero();
    e.f(r) = 0;
  }
  return {e.K, e.f, e.free_dof};
}

Vector12d beam_release_recover(const Matrix12d& stiffness, const Vector12d& load, const std::array<bool, 12>& released,
                               const Vector12d& u) {
  const Elimination e = eliminate(stiffness, load, released);
  Vector12d full = u;
  for (int r = 11; r >= 0; --r) {
    if (!released[r]) continue;
    if (e.K(r, r) == 0) { // unrestrained: stays at zero
      full(r) = 0;
      continue;
    }
    // Row r still contains the dofs eliminated after it, which are already known, and those that are kept.
    double rest = e.f(r);
    for (int j = 0; j < 12; ++j)
      if (j > r || !released[j]) rest -= e.K(r, j) * full(j);
    full(r) = rest / e.K(r, r);
  }
  return full;
}

} // namespace bedbow
