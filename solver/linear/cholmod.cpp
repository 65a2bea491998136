#include "solver/linear/cholmod.h"

#include "solver/linear/cholmod_common.h"
#include "solver/linear/graph.h"
#include "solver/linear/simplicial.h"
#include "solver/linear/supernodal.h"

#include <stdexcept>

namespace bedbow {

namespace {

using CholmodL = ::cholmod_factor;
using linear::Common;
using linear::view;

class Cholmod final : public Factorization {
public:
  explicit Cholmod(CholmodL* l)
      : l_(l) {}
  ~Cholmod() override {
    Common common;
    cholmod_free_factor(&l_, &common.c);
  }
  Cholmod(const Cholmod&) = delete;
  Cholmod& operator=(const Cholmod&) = delete;

  [[nodiscard]] int size() const override { return static_cast<int>(l_->n); }
  void solve(Eigen::Ref<Eigen::MatrixXd> b) const override {
    if (b.size() == 0) return;
    Common common;
    cholmod_dense rhs{};
    rhs.nrow = b.rows();
    rhs.ncol = b.cols();
    rhs.d = b.outerStride();
    rhs.nzmax = rhs.d * rhs.ncol;
    rhs.x = b.data();
    rhs.xtype = CHOLMOD_REAL;
    rhs.dtype = CHOLMOD_DOUBLE;
    cholmod_dense* x = cholmod_solve(CHOLMOD_A, l_, &rhs, &common.c);
    if (!x) throw std::runtime_error("CHOLMOD could not solve: out of memory?");
    b = Eigen::Map<const Eigen::MatrixXd>(static_cast<const double*>(x->x), b.rows(), b.cols());
    cholmod_free_dense(&x, &common.c);
  }
  [[nodiscard]] int negative_pivots() const override { return 0; }
  [[nodiscard]] Eigen::MatrixXd compliance(const Eigen::SparseMatrix<double>& b) const override {
    if (!l_->is_super) return Factorization::compliance(b);
    return linear::half_products(linear::supernodes_of(*l_), b);
  }
  [[nodiscard]] std::size_t bytes() const override {
    return l_->xsize * sizeof(double) + l_->ssize * sizeof(int) + 3 * l_->n * sizeof(int);
  }

private:
  CholmodL* l_;
};

} // namespace

FactorOutcome cholmod_factor(const SymmetricMatrix& lower, const FactorHints& hints) {
  if (!hints.positive || lower.rows() == 0) return simplicial_factor(lower, hints);
  SymmetricMatrix packed;
  if (!lower.isCompressed()) {
    packed = lower;
    packed.makeCompressed();
  }
  cholmod_sparse a = view(lower.isCompressed() ? lower : packed);
  Common common;
  const linear::Quotient q = linear::quotient(lower);
  std::vector<int> order = linear::expand(linear::minimum_degree(q.graph), q.first);
  common.c.nmethods = 1;
  common.c.method[0].ordering = CHOLMOD_GIVEN;
  common.c.postorder = 1;
  CholmodL* l = cholmod_analyze_p(&a, order.data(), nullptr, 0, &common.c);
  if (!l) throw std::runtime_error("CHOLMOD could not analyse the matrix: out of memory?");
  cholmod_factorize(&a, l, &common.c);
  if (common.c.status < CHOLMOD_OK) {
    cholmod_free_factor(&l, &common.c);
    throw std::runtime_error("CHOLMOD could not factor the matrix: out of memory?");
  }
  if (l->minor < l->n) {
    const int unknown = static_cast<const int*>(l->Perm)[l->minor];
    cholmod_free_factor(&l, &common.c);
    return {nullptr, unknown, {}};
  }
  return {std::make_unique<Cholmod>(l), -1, {}};
}

} // namespace bedbow
