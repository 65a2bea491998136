#include "solver/linear/halves.h"

#include "solver/linear/cholmod.h"
#include "solver/linear/cholmod_common.h"
#include "solver/linear/graph.h"
#include "solver/linear/process.h"
#include "solver/linear/supernodal.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <thread>

namespace bedbow {

namespace {

using CholmodL = ::cholmod_factor;
using linear::Common;

constexpr int least_size = 20000;       // unknowns: below, one core is done before a second has begun
constexpr double widest_cut = 1.0 / 40; // of all unknowns

struct Cut {
  std::array<std::vector<int>, 2> inside; ///< unknowns of either half, ascending
  std::vector<int> cut;                   ///< ascending
};

Cut cut_in_two(const linear::Quotient& q) {
  const std::vector<int> order = linear::reverse_cuthill_mckee(q.graph);
  std::vector<char> side(order.size(), 0);
  for (std::size_t i = order.size() / 2; i < order.size(); ++i) side[order[i]] = 1;
  Cut out;
  for (int g = 0; g < q.graph.size(); ++g) {
    const auto near = q.graph.neighbours(g);
    const bool touches =
        side[g] == 0 && std::any_of(near.begin(), near.end(), [&](int other) { return side[other] == 1; });
    auto& list = touches ? out.cut : out.inside[side[g]];
    for (int k = q.first[g]; k < q.first[g + 1]; ++k) list.push_back(k);
  }
  return out;
}

/// Rows and columns of the lower triangle: first those inside, then the cut's, either ascending.
SymmetricMatrix part_of(const SymmetricMatrix& lower, const std::vector<int>& inside, const std::vector<int>& cut) {
  const auto border = static_cast<int>(inside.size());
  std::vector<int> local(lower.rows(), -1);
  for (int i = 0; i < border; ++i) local[inside[i]] = i;
  for (std::size_t i = 0; i < cut.size(); ++i) local[cut[i]] = border + static_cast<int>(i);
  const auto n = border + static_cast<int>(cut.size());
  // An entry of a cut's column in an inside row changes places. Taken in three rounds, the rows of every column come in
  // ascending order: inside rows, cut rows that changed places, the other cut rows.
  const auto round = [&](const std::vector<int>& columns, bool inside_rows, bool cut_rows, const auto& f) {
    for (const int c : columns)
      for (SymmetricMatrix::InnerIterator it(lower, c); it; ++it) {
        const int r = local[it.row()];
        if (r >= 0 && (r < border ? inside_rows : cut_rows))
          f(std::max(r, local[c]), std::min(r, local[c]), it.value());
      }
  };
  const auto rounds = [&](const auto& f) {
    round(inside, true, false, f);
    round(cut, true, true, f);
    round(inside, false, true, f);
  };
  SymmetricMatrix out(n, n);
  int* start = out.outerIndexPtr();
  std::fill(start, start + n + 1, 0);
  rounds([&](int, int c, double) { ++start[c + 1]; });
  for (int i = 0; i < n; ++i) start[i + 1] += start[i];
  out.resizeNonZeros(start[n]);
  std::vector<int> at(start, start + n);
  rounds([&](int r, int c, double v) {
    out.innerIndexPtr()[at[c]] = r;
    out.valuePtr()[at[c]++] = v;
  });
  return out;
}

/// Minimum degree inside, then the cut as it comes: two thirds of the work of ordering all and moving the cut.
std::vector<int> cut_last(const linear::Quotient& q, int border) {
  int inside = 0;
  while (inside < q.graph.size() && q.first[inside] < border) ++inside;
  linear::Graph g;
  for (int i = 0; i < inside; ++i) {
    for (const int other : q.graph.neighbours(i))
      if (other < inside) g.adjacent.push_back(other);
    g.start.push_back(static_cast<int>(g.adjacent.size()));
  }
  std::vector<int> order = linear::minimum_degree(g);
  for (int i = inside; i < q.graph.size(); ++i) order.push_back(i);
  return order;
}

/// One half and the cut, factored with the cut last.
class Half {
public:
  /// \param cut how many of the last unknowns are the cut.
  Half(const SymmetricMatrix& a, int cut)
      : n_(static_cast<int>(a.rows()))
      , cut_(cut) {
    const linear::Quotient q = linear::quotient(a);
    const std::vector<int> groups = cut_last(q, n_ - cut_);
    std::vector<int> order = linear::expand(groups, q.first);
    cholmod_sparse view = linear::view(a);
    common_.c.nmethods = 1;
    common_.c.method[0].ordering = CHOLMOD_GIVEN;
    common_.c.postorder = 1;
    l_ = cholmod_analyze_p(&view, order.data(), nullptr, 0, &common_.c);
    if (!l_) throw std::runtime_error("CHOLMOD could not analyse the matrix: out of memory?");
    const int* perm = static_cast<const int*>(l_->Perm);
    good_ = l_->is_super && std::all_of(perm + (n_ - cut_), perm + n_, [&](int i) { return i >= n_ - cut_; });
    if (!good_) return;
    cholmod_factorize(&view, l_, &common_.c);
    good_ = common_.c.status >= CHOLMOD_OK && l_->minor == l_->n && l_->is_super;
    if (good_) corner_ = corner();
  }
  ~Half() { cholmod_free_factor(&l_, &common_.c); }
  Half(const Half&) = delete;
  Half& operator=(const Half&) = delete;

  [[nodiscard]] bool good() const { return good_; }
  [[nodiscard]] std::size_t bytes() const { return l_->xsize * sizeof(double) + l_->ssize * sizeof(int); }

  /// Adds the half's Schur complement, cut's order.
  void add_schur(Eigen::MatrixXd& s) const {
    const Eigen::MatrixXd product = corner_ * corner_.transpose();
    for (int j = 0; j < cut_; ++j)
      for (int i = 0; i < cut_; ++i) s(cut_place(i), cut_place(j)) += product(i, j);
  }

  /// First half of a solve: y = L^-1 (b inside, 0 on the cut), and what the cut feels of it.
  Eigen::MatrixXd forward(const Eigen::MatrixXd& inside, Eigen::MatrixXd& felt) const {
    Eigen::MatrixXd y = Eigen::MatrixXd::Zero(n_, inside.cols());
    const int* perm = static_cast<const int*>(l_->Perm);
    for (int i = 0; i < n_ - cut_; ++i) y.row(i) = inside.row(perm[i]);
    substitute(CHOLMOD_L, y);
    const Eigen::MatrixXd r = corner_ * y.bottomRows(cut_);
    felt.resize(cut_, inside.cols());
    for (int i = 0; i < cut_; ++i) felt.row(cut_place(i)) = r.row(i);
    return y;
  }

  /// Second half: the inside from y and the cut's movements.
  Eigen::MatrixXd backward(Eigen::MatrixXd y, const Eigen::MatrixXd& cut) const {
    Eigen::MatrixXd x(cut_, cut.cols());
    for (int i = 0; i < cut_; ++i) x.row(i) = cut.row(cut_place(i));
    y.bottomRows(cut_) = corner_.transpose() * x;
    substitute(CHOLMOD_Lt, y);
    Eigen::MatrixXd inside(n_ - cut_, y.cols());
    const int* perm = static_cast<const int*>(l_->Perm);
    for (int i = 0; i < n_ - cut_; ++i) inside.row(perm[i]) = y.row(i);
    return inside;
  }

  /// Compliance of the inside seen by some columns, cut held, added to c. \param b unknowns of this half, none of the
  /// cut. \return what the cut feels of them.
  Eigen::MatrixXd add_compliance(const Eigen::SparseMatrix<double>& b, Eigen::MatrixXd& c) const {
    const Eigen::MatrixXd left = linear::add_half_products(*l_, n_ - cut_, b, c);
    Eigen::MatrixXd felt(cut_, b.cols());
    for (int i = 0; i < cut_; ++i) felt.row(cut_place(i)) = left.row(i);
    return felt;
  }
  [[nodiscard]] int size() const { return n_; }

private:
  [[nodiscard]] int cut_place(int i) const { return static_cast<const int*>(l_->Perm)[n_ - cut_ + i] - (n_ - cut_); }

  /// L_ss, dense.
  [[nodiscard]] Eigen::MatrixXd corner() const {
    Eigen::MatrixXd out = Eigen::MatrixXd::Zero(cut_, cut_);
    const int* super = static_cast<const int*>(l_->super);
    const int* pi = static_cast<const int*>(l_->pi);
    const int* px = static_cast<const int*>(l_->px);
    const int* s = static_cast<const int*>(l_->s);
    const auto* x = static_cast<const double*>(l_->x);
    const int first = n_ - cut_;
    for (std::size_t k = 0; k < l_->nsuper; ++k) {
      const int rows = pi[k + 1] - pi[k];
      for (int c = std::max(super[k], first); c < super[k + 1]; ++c)
        for (int i = c - super[k]; i < rows; ++i)
          out(s[pi[k] + i] - first, c - first) =
              x[static_cast<std::size_t>(px[k]) + i + static_cast<std::size_t>(c - super[k]) * rows];
    }
    return out;
  }

  void substitute(int system, Eigen::MatrixXd& b) const {
    Common common;
    cholmod_dense rhs{};
    rhs.nrow = b.rows();
    rhs.ncol = b.cols();
    rhs.d = b.rows();
    rhs.nzmax = rhs.d * rhs.ncol;
    rhs.x = b.data();
    rhs.xtype = CHOLMOD_REAL;
    rhs.dtype = CHOLMOD_DOUBLE;
    cholmod_dense* x = cholmod_solve(system, l_, &rhs, &common.c);
    if (!x) throw std::runtime_error("CHOLMOD could not solve: out of memory?");
    b = Eigen::Map<const Eigen::MatrixXd>(static_cast<const double*>(x->x), b.rows(), b.cols());
    cholmod_free_dense(&x, &common.c);
  }

  int n_, cut_;
  mutable Common common_;
  CholmodL* l_ = nullptr;
  bool good_ = false;
  Eigen::MatrixXd corner_;
};

/// Runs f(0) and f(1), the second in a thread of its own; rethrows what either throws.
template <class F> void both(const F& f) {
  std::exception_ptr trouble;
  {
    std::jthread other([&] {
      single_thread_openmp();
      try {
        f(1);
      } catch (...) {
        trouble = std::current_exception();
      }
    });
    f(0);
  }
  if (trouble) std::rethrow_exception(trouble);
}

class Halves final : public Factorization {
public:
  Halves(Cut cut, std::array<std::unique_ptr<Half>, 2> halves, Eigen::LLT<Eigen::MatrixXd> joint, int size)
      : cut_(std::move(cut))
      , halves_(std::move(halves))
      , joint_(std::move(joint))
      , size_(size) {}
  [[nodiscard]] int size() const override { return size_; }
  [[nodiscard]] int negative_pivots() const override { return 0; }
  [[nodiscard]] std::size_t bytes() const override {
    return halves_[0]->bytes() + halves_[1]->bytes() + cut_.cut.size() * cut_.cut.size() * sizeof(double);
  }
  void solve(Eigen::Ref<Eigen::MatrixXd> b) const override {
    std::array<Eigen::MatrixXd, 2> y, felt;
    both([&](int h) {
      const Eigen::MatrixXd inside = b(cut_.inside[h], Eigen::all);
      y[h] = halves_[h]->forward(inside, felt[h]);
    });
    Eigen::MatrixXd x = b(cut_.cut, Eigen::all) + felt[0] + felt[1];
    joint_.solveInPlace(x);
    b(cut_.cut, Eigen::all) = x;
    both([&](int h) { b(cut_.inside[h], Eigen::all) = halves_[h]->backward(std::move(y[h]), x); });
  }

  [[nodiscard]] Eigen::MatrixXd compliance(const Eigen::SparseMatrix<double>& b) const override {
    std::array<Eigen::MatrixXd, 2> c, felt;
    both([&](int h) {
      c[h] = Eigen::MatrixXd::Zero(b.cols(), b.cols());
      felt[h] = halves_[h]->add_compliance(rows_of(b, cut_.inside[h], halves_[h]->size()), c[h]);
    });
    Eigen::MatrixXd w = Eigen::MatrixXd(rows_of(b, cut_.cut, static_cast<int>(cut_.cut.size()))) + felt[0] + felt[1];
    joint_.matrixL().solveInPlace(w);
    const Eigen::MatrixXd whole = c[0] + c[1] + w.transpose() * w;
    return 0.5 * (whole + whole.transpose());
  }

private:
  /// Those rows of b, in their order, as the first of so many.
  [[nodiscard]] Eigen::SparseMatrix<double> rows_of(const Eigen::SparseMatrix<double>& b, const std::vector<int>& list,
                                                    int rows) const {
    std::vector<int> local(static_cast<std::size_t>(size_), -1);
    for (std::size_t i = 0; i < list.size(); ++i) local[list[i]] = static_cast<int>(i);
    std::vector<Eigen::Triplet<double>> entries;
    for (int j = 0; j < b.cols(); ++j)
      for (Eigen::SparseMatrix<double>::InnerIterator it(b, j); it; ++it)
        if (local[it.row()] >= 0) entries.emplace_back(local[it.row()], j, it.value());
    Eigen::SparseMatrix<double> out(rows, b.cols());
    out.setFromTriplets(entries.begin(), entries.end());
    return out;
  }

  Cut cut_;
  std::array<std::unique_ptr<Half>, 2> halves_;
  Eigen::LLT<Eigen::MatrixXd> joint_;
  int size_;
};

/// Less A_ss, which both halves have counted.
void take_once(const SymmetricMatrix& lower, const std::vector<int>& cut, Eigen::MatrixXd& s) {
  const SymmetricMatrix a = part_of(lower, {}, cut);
  for (int c = 0; c < a.cols(); ++c)
    for (SymmetricMatrix::InnerIterator it(a, c); it; ++it) {
      s(it.row(), c) -= it.value();
      if (it.row() != c) s(c, it.row()) -= it.value();
    }
}

} // namespace

FactorOutcome halves_factor(const SymmetricMatrix& lower, const FactorHints& hints) {
  if (!hints.positive || lower.rows() < least_size || !lower.isCompressed()) return cholmod_factor(lower, hints);
  Cut cut = cut_in_two(linear::quotient(lower));
  if (static_cast<double>(cut.cut.size()) > widest_cut * static_cast<double>(lower.rows()) || cut.cut.empty())
    return cholmod_factor(lower, hints);
  std::array<std::unique_ptr<Half>, 2> halves;
  both([&](int h) {
    halves[h] = std::make_unique<Half>(part_of(lower, cut.inside[h], cut.cut), static_cast<int>(cut.cut.size()));
  });
  if (!halves[0]->good() || !halves[1]->good()) return cholmod_factor(lower, hints); // which names what moves
  const auto n = static_cast<Eigen::Index>(cut.cut.size());
  Eigen::MatrixXd s = Eigen::MatrixXd::Zero(n, n);
  for (const auto& h : halves) h->add_schur(s);
  take_once(lower, cut.cut, s);
  Eigen::LLT<Eigen::MatrixXd> joint(s);
  if (joint.info() != Eigen::Success) return cholmod_factor(lower, hints);
  return {std::make_unique<Halves>(std::move(cut), std::move(halves), std::move(joint), static_cast<int>(lower.rows())),
          -1,
          {}};
}

} // namespace bedbow
