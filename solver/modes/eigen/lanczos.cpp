// The one file that includes Spectra: it takes longer to compile than any other.
#include "solver/modes/eigen/lanczos.h"

#include <Spectra/SymEigsBase.h>

#include <cmath>
#include <cstring>
#include <limits>
#include <new>
#include <stdexcept>
#include <string>

namespace bedbow {

namespace {

using Eigen::Index;
using Eigen::Map;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// Fraction of a vector's length below which it counts as orthogonal to the basis. Values are accurate to all digits as
// long as the basis is orthogonal to half of them (Simon 1984, from memory); vectors are refined afterwards.
constexpr double orthogonal = 1e-10;

/// A vector and its product with B.
struct Pair {
  explicit Pair(Index size)
      : vector(VectorXd::Constant(size, std::numeric_limits<double>::quiet_NaN()))
      , product(size) {}
  [[nodiscard]] bool is_of(const double* x) const {
    return std::memcmp(x, vector.data(), static_cast<std::size_t>(vector.size()) * sizeof(double)) == 0;
  }
  VectorXd vector, product;
  double length = 0; ///< in B
};

/// A^-1 G without its component along given vectors, and the inner product of B. A step of Lanczos needs products with
/// B of the same two vectors repeatedly, the residual f and the basis vector f / |f|: one product serves all.
class Pencil {
public:
  using Scalar = double;
  Pencil(const EigenProblem& p, const MatrixXd& out)
      : p_(p)
      , out_(out)
      , b_out_(out.rows(), out.cols())
      , residual_(p.size)
      , basis_(p.size)
      , image_(p.size) {
    p.inner(out, b_out_);
  }
  [[nodiscard]] Index rows() const { return p_.size; }
  void apply(const double* x, double* y) const {
    take_as_basis(x);
    if (p_.same)
      image_ = basis_.product;
    else
      p_.g(basis_.vector, image_);
    p_.inverse(image_);
    if (out_.cols() > 0) image_ -= out_ * (b_out_.transpose() * image_).eval();
    Map<VectorXd>(y, p_.size) = image_;
  }
  [[nodiscard]] double inner(const double* x, const double* y) const {
    const Map<const VectorXd> other(y, p_.size);
    if (x != y && basis_.is_of(x)) return basis_.product.dot(other);
    take_as_residual(y);
    return x == y ? residual_.length * residual_.length : residual_.product.dot(Map<const VectorXd>(x, p_.size));
  }
  /// X' B y, zero where y counts as orthogonal.
  template <class Columns> void overlaps(const Columns& x, const double* y, Eigen::Ref<VectorXd> out) const {
    take_as_residual(y);
    out.noalias() = x.transpose() * residual_.product;
    if (out.cwiseAbs().maxCoeff() <= orthogonal * residual_.length) out.setZero();
  }

private:
  void take_as_residual(const double* y) const {
    if (residual_.is_of(y)) return;
    residual_.vector = Map<const VectorXd>(y, p_.size);
    p_.inner(residual_.vector, residual_.product);
    residual_.length = std::sqrt(residual_.vector.dot(residual_.product));
  }
  void take_as_basis(const double* x) const {
    const Map<const VectorXd> v(x, p_.size);
    const double factor = 1 / residual_.length;
    constexpr double rounding = 4 * std::numeric_limits<double>::epsilon();
    const bool scaled = ((v - factor * residual_.vector).array().abs() <= rounding * v.array().abs()).all();
    basis_.vector = v;
    if (scaled)
      basis_.product = factor * residual_.product;
    else
      p_.inner(basis_.vector, basis_.product);
  }

  const EigenProblem& p_;
  const MatrixXd& out_;
  MatrixXd b_out_;
  mutable Pair residual_, basis_;
  mutable VectorXd image_;
};

} // namespace

} // namespace bedbow

/// Spectra's access to operator and inner product. Its own version computes every product with B again.
template <> class Spectra::ArnoldiOp<double, bedbow::Pencil, bedbow::Pencil> {
public:
  ArnoldiOp(const bedbow::Pencil& pencil, const bedbow::Pencil& /*the same*/)
      : pencil_(pencil) {}
  [[nodiscard]] Eigen::Index rows() const { return pencil_.rows(); }
  void perform_op(const double* x, double* y) const { pencil_.apply(x, y); }
  template <class X, class Y> double inner_product(const X& x, const Y& y) const {
    return pencil_.inner(x.data(), y.data());
  }
  template <class X> double norm(const X& x) const { return std::sqrt(pencil_.inner(x.data(), x.data())); }
  template <class X, class Y> void trans_product(const X& x, const Y& y, Eigen::Ref<Eigen::VectorXd> out) const {
    pencil_.overlaps(x, y.data(), out);
  }

private:
  const bedbow::Pencil& pencil_;
};

namespace bedbow {

namespace {

/// Spectra's solvers differ only in the operator that they wrap; ours exists, so their common base is sufficient.
class Lanczos : public Spectra::SymEigsBase<Pencil, Pencil> {
public:
  Lanczos(Pencil& pencil, const Search& search)
      : SymEigsBase(pencil, pencil, search.values, search.basis) {}
  /// Greatest |nu| found.
  [[nodiscard]] double scale() const { return scale_; }
  /// Largest value that has not converged; -infinity when all have.
  [[nodiscard]] double open_value() const {
    const VectorXd done = eigenvalues();
    for (Eigen::Index i = 0, j = 0; i < m_nev; ++i) {
      if (j == done.size() || done[j] != m_ritz_val[i]) return m_ritz_val[i];
      ++j;
    }
    return -std::numeric_limits<double>::infinity();
  }

private:
  void sort_ritzpair(Spectra::SortRule rule) override {
    scale_ = m_ritz_val.cwiseAbs().maxCoeff();
    SymEigsBase::sort_ritzpair(rule);
  }
  double scale_ = 0;
};

} // namespace

namespace {

EigenPairs run(const EigenProblem& p, const MatrixXd& out, const Search& search) {
  Pencil pencil(p, out);
  Lanczos lanczos(pencil, search);
  lanczos.init();
  lanczos.compute(Spectra::SortRule::LargestAlge, search.restarts, search.tolerance);
  EigenPairs pairs;
  pairs.values = lanczos.eigenvalues();
  pairs.vectors = lanczos.eigenvectors();
  pairs.operations = static_cast<int>(lanczos.num_operations());
  // The rest may be the cluster at zero, which never converges and is not wanted.
  pairs.scale = lanczos.scale();
  if (lanczos.open_value() > p.nothing * pairs.scale)
    throw EigenFailure(std::to_string(pairs.values.size()) + " of " + std::to_string(search.values) + " values found");
  return pairs;
}

} // namespace

EigenPairs lanczos(const EigenProblem& p, const MatrixXd& out, const Search& search) {
  try {
    return run(p, out, search);
  } catch (const EigenFailure&) {
    throw;
  } catch (const std::bad_alloc&) {
    throw;
  } catch (const std::exception& e) { // Spectra's message does not help a user
    throw EigenFailure(std::string("the iteration broke down: ") + e.what());
  }
}

} // namespace bedbow
