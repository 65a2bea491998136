#include "solver/linear/multifrontal.h"

#include "solver/linear/cholmod.h"
#include "solver/linear/front_factor.h"
#include "solver/linear/front_rows.h"
#include "solver/linear/supernodal.h"
#include "solver/linear/tree_tasks.h"

#include <algorithm>
#include <array>
#include <exception>
#include <thread>

namespace bedbow {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using linear::FrontRows;
using linear::Fronts;
using linear::FrontValues;

/// y <- triangle^-1 y. For one column Eigen's vector solver, which avoids a copy of the triangle that is worthwhile
/// only for several.
template <class Triangle, class Columns> void solve_triangle(const Triangle& triangle, Columns& y) {
  if (y.cols() == 1) {
    auto column = y.col(0);
    triangle.solveInPlace(column);
  } else {
    triangle.solveInPlace(y);
  }
}

class Multifrontal final : public Factorization {
public:
  Multifrontal(const linear::Quotient& q, Fronts fronts, FrontValues values, int threads)
      : f_(std::move(fronts))
      , children_(f_.children())
      , unknown_(linear::expand(f_.order, q.first))
      , values_(std::move(values))
      , threads_(threads) {}

  [[nodiscard]] int size() const override { return static_cast<int>(unknown_.size()); }
  [[nodiscard]] int negative_pivots() const override { return 0; }
  [[nodiscard]] std::size_t bytes() const override {
    return f_.values.back() * sizeof(double) + (f_.rows.size() + 2 * unknown_.size()) * sizeof(int);
  }

  void solve(Eigen::Ref<MatrixXd> b) const override {
    if (b.size() == 0) return;
    MatrixXd x = b(unknown_, Eigen::all);
    // Each entry of the factor is read from memory twice, which takes as long as about twenty multiply-adds.
    const int threads =
        linear::threads_for(20. * static_cast<double>(f_.values.back()) * static_cast<double>(b.cols()), threads_);
    std::vector<FrontRows> rows(static_cast<std::size_t>(threads), FrontRows(f_));
    std::vector<MatrixXd> left(f_.parent.size()); // update of each front for its parent
    linear::upwards(f_, threads, [&](int front, int thread) { forward(front, rows[thread], x, left); });
    linear::downwards(f_, threads, [&](int front, int) { backward(front, x); });
    b(unknown_, Eigen::all) = x;
  }

  [[nodiscard]] MatrixXd compliance(const Eigen::SparseMatrix<double>& b) const override {
    return linear::half_products(supernodes(), b);
  }

private:
  [[nodiscard]] Eigen::Map<const MatrixXd> columns(int front) const {
    return {values_.get() + f_.values[front], f_.height(front), f_.pivots(front)};
  }

  /// y = L^-1 (b less the children's updates), and the front's own update.
  void forward(int front, FrontRows& rows, MatrixXd& x, std::vector<MatrixXd>& left) const {
    const auto l = columns(front);
    const Index pivots = l.cols(), rest = l.rows() - pivots;
    auto y = x.middleRows(f_.first[f_.pivot[front]], pivots);
    MatrixXd up = MatrixXd::Zero(rest, x.cols());
    if (!children_[front].empty()) rows.set(front);
    for (const int c : children_[front]) {
      for (const linear::Run& r : rows.runs_of(c))
        if (r.to < pivots)
          y.middleRows(r.to, r.length) += left[c].middleRows(r.from, r.length);
        else
          up.middleRows(r.to - pivots, r.length) += left[c].middleRows(r.from, r.length);
      left[c].resize(0, 0);
    }
    solve_triangle(l.topRows(pivots).triangularView<Eigen::Lower>(), y);
    up.noalias() -= l.bottomRows(rest) * y;
    left[front] = std::move(up);
  }

  void backward(int front, MatrixXd& x) const {
    const auto l = columns(front);
    const Index pivots = l.cols();
    MatrixXd above(l.rows() - pivots, x.cols());
    Index row = 0;
    for (const int g : f_.beyond(front)) {
      const int width = f_.first[g + 1] - f_.first[g];
      above.middleRows(row, width) = x.middleRows(f_.first[g], width);
      row += width;
    }
    auto y = x.middleRows(f_.first[f_.pivot[front]], pivots);
    y.noalias() -= l.bottomRows(above.rows()).transpose() * above;
    solve_triangle(l.topRows(pivots).triangularView<Eigen::Lower>().transpose(), y);
  }

  [[nodiscard]] linear::Supernodes supernodes() const {
    linear::Supernodes out;
    out.values_start.assign(f_.values.begin(), f_.values.end() - 1);
    out.values = values_.get();
    for (int front = 0; front < f_.size(); ++front) {
      out.first.push_back(f_.first[f_.pivot[front]]);
      out.rows_start.push_back(out.rows.size());
      for (const int g : f_.rows_of(front))
        for (int i = f_.first[g]; i < f_.first[g + 1]; ++i) out.rows.push_back(i);
    }
    out.first.push_back(size());
    out.rows_start.push_back(out.rows.size());
    out.place.resize(unknown_.size());
    for (std::size_t i = 0; i < unknown_.size(); ++i) out.place[unknown_[i]] = static_cast<int>(i);
    return out;
  }

  Fronts f_;
  std::vector<std::vector<int>> children_;
  std::vector<int> unknown_; // in the matrix's own numbering, by the fronts' numbering
  FrontValues values_;
  int threads_;
};

/// The fronts of the best of three orders: without cuts, with one, with three. The criterion is half the work plus
/// half the longest chain, whatever the number of cores, so that results do not depend on it.
Fronts best_fronts(const linear::Quotient& q) {
  constexpr int small = 1000; // groups: one core finishes before a second has started
  if (q.graph.size() < small) return make_fronts(q, linear::minimum_degree(q.graph));
  std::array<Fronts, 3> tried;
  const auto attempt = [&](int cuts) { tried[cuts] = make_fronts(q, linear::dissected_order(q.graph, cuts)); };
  std::exception_ptr trouble;
  {
    std::jthread other([&] {
      try {
        attempt(2);
      } catch (...) {
        trouble = std::current_exception();
      }
    });
    attempt(0);
    attempt(1);
  }
  if (trouble) std::rethrow_exception(trouble);
  const auto cost = [](const Fronts& f) { return f.total_work() + linear::longest_chain(f); };
  return std::move(*std::min_element(tried.begin(), tried.end(),
                                     [&](const Fronts& a, const Fronts& b) { return cost(a) < cost(b); }));
}

} // namespace

FactorOutcome multifrontal_factor(const SymmetricMatrix& lower, const FactorHints& hints) {
  if (!hints.positive || lower.rows() == 0 || !lower.isCompressed()) return cholmod_factor(lower, hints);
  const linear::Quotient q = linear::quotient(lower);
  Fronts fronts = best_fronts(q);
  FrontValues values = linear::factor_fronts(lower, q, fronts, linear::threads_for(fronts.total_work(), hints.threads));
  if (!values) return cholmod_factor(lower, hints); // which names the mechanism
  return {std::make_unique<Multifrontal>(q, std::move(fronts), std::move(values), hints.threads), -1, {}};
}

} // namespace bedbow
