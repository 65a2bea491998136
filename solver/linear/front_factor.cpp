#include "solver/linear/front_factor.h"

#include "solver/linear/front_rows.h"
#include "solver/linear/tree_tasks.h"

#include <algorithm>
#include <atomic>
#include <cstddef>

// BLAS and LAPACK with Fortran calling conventions; the lengths are those of the strings.
extern "C" {
void dpotrf_(const char* uplo, const int* n, double* a, const int* lda, int* info, std::size_t uplo_length);
void dtrsm_(const char* side, const char* uplo, const char* transposed, const char* diagonal, const int* m,
            const int* n, const double* alpha, const double* a, const int* lda, double* b, const int* ldb,
            std::size_t side_length, std::size_t uplo_length, std::size_t transposed_length,
            std::size_t diagonal_length);
void dsyrk_(const char* uplo, const char* transposed, const int* n, const int* k, const double* alpha, const double* a,
            const int* lda, const double* beta, double* c, const int* ldc, std::size_t uplo_length,
            std::size_t transposed_length);
}

namespace bedbow::linear {

namespace {

/// The matrix by blocks. A column of a group contains first the group's own rows from the diagonal on, then those of
/// each later neighbour, whole, because the unknowns of a group share their pattern.
class Blocks {
public:
  Blocks(const SymmetricMatrix& lower, const Quotient& q)
      : lower_(lower)
      , q_(q)
      , below_(q.graph.adjacent.size()) {
    std::vector<int> filled(q.graph.size(), 0); // rows of later neighbours so far, in ascending order
    for (int g = 0; g < q.graph.size(); ++g)
      for (int e = q.graph.start[g]; e < q.graph.start[g + 1]; ++e)
        if (const int h = q.graph.adjacent[e]; h < g) {
          below_[e] = filled[h];
          filled[h] += q.width(g);
        }
    for (int g = 0; g < q.graph.size(); ++g) {
      int offset = 0;
      for (int e = q.graph.start[g]; e < q.graph.start[g + 1]; ++e)
        if (const int h = q.graph.adjacent[e]; h > g) {
          below_[e] = offset;
          offset += q.width(h);
        }
      for (int j = q.first[g]; j < q.first[g + 1]; ++j)
        whole_ = whole_ && lower.outerIndexPtr()[j + 1] - lower.outerIndexPtr()[j] == q.first[g + 1] - j + offset;
    }
  }

  [[nodiscard]] bool whole() const { return whole_; }

  /// Adds the lower triangle of a group's own block. \param x its first entry in a front of that height.
  void add_own(int group, double* x, int height) const {
    for (int j = 0; j < q_.width(group); ++j) {
      const double* column = values(group, j);
      for (int i = j; i < q_.width(group); ++i) x[i + static_cast<std::ptrdiff_t>(j) * height] += column[i - j];
    }
  }
  /// Adds the block of a group's columns and a neighbour's rows. \param edge in the graph's list of neighbours.
  void add_neighbour(int group, int edge, double* x, int height) const {
    const int other = q_.graph.adjacent[edge], wide = q_.width(group), high = q_.width(other);
    if (other > group)
      for (int j = 0; j < wide; ++j) {
        const double* column = values(group, j) + (wide - j) + below_[edge];
        for (int i = 0; i < high; ++i) x[i + static_cast<std::ptrdiff_t>(j) * height] += column[i];
      }
    else
      for (int i = 0; i < high; ++i) {
        const double* column = values(other, i) + (high - i) + below_[edge];
        for (int j = 0; j < wide; ++j) x[i + static_cast<std::ptrdiff_t>(j) * height] += column[j];
      }
  }

private:
  [[nodiscard]] const double* values(int group, int column) const {
    return lower_.valuePtr() + lower_.outerIndexPtr()[q_.first[group] + column];
  }
  const SymmetricMatrix& lower_;
  const Quotient& q_;
  std::vector<int> below_; // rows ahead of each neighbour's
  bool whole_ = true;
};

class Factor {
public:
  Factor(const Blocks& blocks, const Quotient& q, const Fronts& fronts, int threads)
      : blocks_(blocks)
      , q_(q)
      , f_(fronts)
      , values_(new double[fronts.values.back()])
      , updates_(fronts.parent.size())
      , new_group_(fronts.order.size())
      , children_(fronts.children())
      , rows_(static_cast<std::size_t>(threads), FrontRows(fronts)) {
    for (std::size_t i = 0; i < fronts.order.size(); ++i) new_group_[fronts.order[i]] = static_cast<int>(i);
    upwards(fronts, threads, [this](int front, int thread) { eliminate(front, rows_[thread]); });
  }
  FrontValues take() { return good_ ? std::move(values_) : nullptr; }

private:
  void eliminate(int front, FrontRows& rows) {
    if (!good_) return;
    const int pivots = f_.pivots(front), height = f_.height(front), rest = height - pivots;
    double* x = values_.get() + f_.values[front];
    std::fill(x, x + static_cast<std::ptrdiff_t>(height) * pivots, 0.0);
    rows.set(front);
    assemble(front, rows, x, height);
    for (const int c : children_[front]) add_update(c, rows.runs_of(c), 0, pivots, x, height);
    int info = 0;
    dpotrf_("L", &pivots, x, &height, &info, 1);
    if (info != 0) {
      good_ = false;
      return;
    }
    if (rest == 0) return release(front);
    const double one = 1, minus = -1, zero = 0;
    dtrsm_("R", "L", "T", "N", &rest, &pivots, &one, x, &height, x + pivots, &height, 1, 1, 1, 1);
    updates_[front].reset(new double[static_cast<std::size_t>(rest) * static_cast<std::size_t>(rest)]);
    double* u = updates_[front].get();
    dsyrk_("L", "N", &rest, &pivots, &minus, x + pivots, &height, &zero, u, &rest, 1, 1);
    for (const int c : children_[front])
      add_update(c, rows.runs_of(c), pivots, height, u - pivots - static_cast<std::ptrdiff_t>(pivots) * rest, rest);
    release(front);
  }

  /// Entries of the matrix in the columns of the pivots.
  void assemble(int front, const FrontRows& rows, double* x, int height) const {
    for (int g = f_.pivot[front]; g < f_.pivot[front + 1]; ++g) {
      const int old = f_.order[g];
      double* columns = x + static_cast<std::ptrdiff_t>(rows[g]) * height;
      blocks_.add_own(old, columns + rows[g], height);
      for (int e = q_.graph.start[old]; e < q_.graph.start[old + 1]; ++e)
        if (const int other = new_group_[q_.graph.adjacent[e]]; other > g)
          blocks_.add_neighbour(old, e, columns + rows[other], height);
    }
  }

  /// Adds a child's update matrix, as far as it falls into the front's columns [from, to).
  void add_update(int child, const std::vector<Run>& runs, int from, int to, double* x, int height) const {
    const double* u = updates_[child].get();
    const std::ptrdiff_t size = f_.height(child) - f_.pivots(child);
    for (std::size_t k = 0; k < runs.size(); ++k) {
      if (runs[k].to < from || runs[k].to >= to) continue;
      for (int j = 0; j < runs[k].length; ++j) {
        const double* column = u + (runs[k].from + j) * size;
        double* into = x + static_cast<std::ptrdiff_t>(runs[k].to + j) * height;
        for (int i = j; i < runs[k].length; ++i) into[runs[k].to + i] += column[runs[k].from + i];
        for (std::size_t l = k + 1; l < runs.size(); ++l) {
          double* target = into + runs[l].to;
          const double* source = column + runs[l].from;
          for (int i = 0; i < runs[l].length; ++i) target[i] += source[i];
        }
      }
    }
  }

  void release(int front) {
    for (const int c : children_[front]) updates_[c].reset();
  }

  const Blocks& blocks_;
  const Quotient& q_;
  const Fronts& f_;
  FrontValues values_;
  std::vector<std::unique_ptr<double[]>> updates_; // of fronts whose parents are not yet processed: lower triangles
  std::vector<int> new_group_;
  std::vector<std::vector<int>> children_;
  std::vector<FrontRows> rows_;
  std::atomic<bool> good_ = true;
};

} // namespace

FrontValues factor_fronts(const SymmetricMatrix& lower, const Quotient& q, const Fronts& fronts, int threads) {
  const Blocks blocks(lower, q);
  if (!blocks.whole()) return nullptr;
  return Factor(blocks, q, fronts, threads).take();
}

} // namespace bedbow::linear
