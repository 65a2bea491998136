#include "solver/modes/eigen/symmetric_product.h"

#include <algorithm>

namespace bedbow {

using Eigen::Index;
using linear::lanes;
using linear::Vec;
using linear::vec;

SymmetricProduct::SymmetricProduct(const SymmetricMatrix& lower)
    : size_(lower.rows())
    , start_{0} {
  SymmetricMatrix slim = lower;
  slim.prune(0.0);
  const Eigen::SparseMatrix<double, Eigen::RowMajor, int> full = slim.selfadjointView<Eigen::Lower>();
  const int* outer = full.outerIndexPtr();
  for (Index first = 0; first < size_; first += lanes) {
    const Index rows = std::min<Index>(lanes, size_ - first);
    int longest = 0;
    for (Index r = 0; r < rows; ++r) longest = std::max(longest, outer[first + r + 1] - outer[first + r]);
    for (int k = 0; k < longest; ++k)
      for (Index r = 0; r < lanes; ++r) {
        const bool there = r < rows && k < outer[first + r + 1] - outer[first + r];
        column_.push_back(there ? full.innerIndexPtr()[outer[first + r] + k] : 0);
        value_.push_back(there ? full.valuePtr()[outer[first + r] + k] : 0);
      }
    start_.push_back(start_.back() + longest);
  }
}

void SymmetricProduct::one(const double* x, double* y) const {
  const int* column = column_.data();
  for (std::size_t slice = 0; slice + 1 < start_.size(); ++slice) {
    Vec sum = {};
    for (Index k = lanes * start_[slice]; k < lanes * start_[slice + 1]; k += lanes) {
      const Vec of{x[column[k]], x[column[k + 1]], x[column[k + 2]], x[column[k + 3]]};
      sum += vec(value_.data() + k) * of;
    }
    vec(y + lanes * slice) = sum;
  }
}

void SymmetricProduct::four(const double* x, double* y) const {
  const int* column = column_.data();
  for (std::size_t slice = 0; slice + 1 < start_.size(); ++slice) {
    Vec sum[lanes] = {};
    for (Index k = lanes * start_[slice]; k < lanes * start_[slice + 1]; k += lanes)
      for (int r = 0; r < lanes; ++r)
        sum[r] += vec(x + static_cast<std::ptrdiff_t>(lanes) * column[k + r]) * value_[static_cast<std::size_t>(k + r)];
    for (int r = 0; r < lanes; ++r) vec(y + lanes * (lanes * slice + static_cast<std::size_t>(r))) = sum[r];
  }
}

void SymmetricProduct::multiply(const Eigen::Ref<const Eigen::MatrixXd>& x, Eigen::Ref<Eigen::MatrixXd> y) const {
  const std::size_t padded = lanes * (start_.size() - 1);
  const auto columns = static_cast<int>(x.cols());
  linear::AlignedDoubles in(columns >= lanes ? lanes * padded : 0), out(std::max(in.size(), padded));
  int done = 0;
  for (; done + lanes <= columns; done += lanes) {
    for (Index i = 0; i < size_; ++i)
      for (int c = 0; c < lanes; ++c) in[static_cast<std::size_t>(lanes * i + c)] = x(i, done + c);
    four(in.data(), out.data());
    for (Index i = 0; i < size_; ++i)
      for (int c = 0; c < lanes; ++c) y(i, done + c) = out[static_cast<std::size_t>(lanes * i + c)];
  }
  for (; done < columns; ++done) {
    one(x.col(done).data(), out.data());
    y.col(done) = Eigen::Map<const Eigen::VectorXd>(out.data(), size_);
  }
}

} // namespace bedbow
