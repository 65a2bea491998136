#include "solver/modes/jointed_matrix.h"

#include "solver/linear/dense.h"

#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// A rigid row gets this fraction of its own compliance, so that two rows with the same constraint share its force.
constexpr double rigid_share = 1e-12;

Eigen::Map<MatrixXd> as_matrix(Eigen::Ref<MatrixXd> b, Index column, Index start, Index size) {
  return {b.data() + column * b.outerStride() + start, size, 1};
}

} // namespace

JointRows joint_rows(const Mesh& mesh, const FreeMap& free, const std::vector<JointSpring>& rows, double angle) {
  // The row set is made again: its functionals refer to the unknowns of this map. It gives the same rows in the same
  // order.
  const JointSprings set(mesh, free.map);
  const std::vector<JointSpring> own = set.rows(mesh, angle);
  std::vector<Eigen::Triplet<double>> entries;
  std::vector<double> compliance;
  std::size_t next = 0;
  for (const JointSpring& wanted : rows) {
    while (next < own.size() && (own[next].joint != wanted.joint || own[next].direction != wanted.direction)) ++next;
    if (next == own.size()) throw std::logic_error("rows of another machine");
    bool any = false;
    for (auto [f, v] : own[next].terms) {
      const DisplacementFunctional& functional = set.functionals()[f];
      if (functional.component < 0) continue;
      for (auto [dof, value] : functional.terms) {
        entries.emplace_back(static_cast<int>(compliance.size()),
                             static_cast<int>(free.start[functional.component] + dof), v * value);
        any = any || v * value != 0;
      }
    }
    if (any) compliance.push_back(wanted.compliance);
  }
  JointRows out;
  out.compliance = Eigen::Map<const VectorXd>(compliance.data(), static_cast<Index>(compliance.size()));
  out.elongation.resize(out.compliance.size(), free.size);
  out.elongation.setFromTriplets(entries.begin(), entries.end());
  return out;
}

namespace {

std::vector<std::shared_ptr<const Factorization>> factored(const std::vector<SymmetricMatrix>& parts,
                                                           const FactorFunction& factor,
                                                           const std::vector<FactorHints>& hints) {
  std::vector<std::shared_ptr<const Factorization>> out(parts.size());
  for (std::size_t c = 0; c < parts.size(); ++c) {
    if (parts[c].rows() == 0) continue;
    FactorOutcome outcome = factor(parts[c], hints[c]);
    if (!outcome.factorization)
      throw std::runtime_error("part " + std::to_string(c + 1) + " could not be factored at unknown " +
                               std::to_string(outcome.zero_pivot) +
                               ": a shift on an eigenvalue, or no stiffness there");
    out[c] = std::move(outcome.factorization);
  }
  return out;
}

} // namespace

JointedMatrix::JointedMatrix(std::vector<SymmetricMatrix> parts, JointRows rows, const FactorFunction& factor,
                             const std::vector<FactorHints>& hints)
    : parts_(std::move(parts))
    , start_{0}
    , factors_(factored(parts_, factor, hints))
    , rows_(std::move(rows)) {
  condense();
}

JointedMatrix::JointedMatrix(std::vector<SymmetricMatrix> parts, JointRows rows,
                             std::vector<std::shared_ptr<const Factorization>> factors)
    : parts_(std::move(parts))
    , start_{0}
    , factors_(std::move(factors))
    , rows_(std::move(rows)) {
  condense();
}

void JointedMatrix::condense() {
  for (const SymmetricMatrix& part : parts_) start_.push_back(start_.back() + part.rows());
  const Index m = rows_.elongation.rows();
  condensed_ = MatrixXd::Zero(m, m);
  rows_of_.resize(parts_.size());
  responses_.resize(parts_.size());
  for (std::size_t c = 0; c < parts_.size(); ++c) {
    const Eigen::SparseMatrix<double, Eigen::RowMajor> own =
        rows_.elongation.middleCols(start_[c], start_[c + 1] - start_[c]);
    for (Index i = 0; i < m; ++i)
      if (own.row(i).nonZeros() > 0) rows_of_[c].push_back(i);
    const auto count = static_cast<Index>(rows_of_[c].size());
    MatrixXd& x = responses_[c];
    x = MatrixXd::Zero(own.cols(), count);
    for (Index j = 0; j < count; ++j) x.col(j) = own.row(rows_of_[c][j]).transpose();
    if (count > 0) factors_[c]->solve(x);
    for (Index j = 0; j < count; ++j) {
      const VectorXd seen = own * x.col(j);
      for (Index i : rows_of_[c]) condensed_(i, rows_of_[c][j]) += seen[i];
    }
  }
  condensed_ = (condensed_ + condensed_.transpose()).eval() / 2;
  scale_.resize(m);
  for (Index i = 0; i < m; ++i) {
    const double own = std::abs(condensed_(i, i)) + std::abs(rows_.compliance[i]);
    scale_[i] = 1 / std::sqrt(own);
    condensed_(i, i) += rows_.compliance[i] != 0 ? rows_.compliance[i] : rigid_share * own;
  }
  condensed_ = (scale_.asDiagonal() * condensed_ * scale_.asDiagonal()).eval();
  if (m > 0) lu_.compute(condensed_);
}

void JointedMatrix::solve(Eigen::Ref<MatrixXd> b) const {
  for (std::size_t c = 0; c < parts_.size(); ++c) {
    if (!factors_[c]) continue;
    if (b.cols() == 1)
      factors_[c]->solve(as_matrix(b, 0, start_[c], parts_[c].rows()));
    else
      factors_[c]->solve(b.middleRows(start_[c], parts_[c].rows()));
  }
  if (scale_.size() == 0) return;
  const MatrixXd force = scale_.asDiagonal() * lu_.solve(scale_.asDiagonal() * (rows_.elongation * b));
  for (std::size_t c = 0; c < parts_.size(); ++c) {
    const auto count = static_cast<Index>(rows_of_[c].size());
    if (count == 0) continue;
    MatrixXd own(count, b.cols());
    for (Index i = 0; i < count; ++i) own.row(i) = force.row(rows_of_[c][i]);
    b.middleRows(start_[c], parts_[c].rows()).noalias() -= responses_[c] * own;
  }
}

void JointedMatrix::multiply(const Eigen::Ref<const VectorXd>& x, Eigen::Ref<VectorXd> y) const {
  for (std::size_t c = 0; c < parts_.size(); ++c) {
    const Index n = parts_[c].rows();
    y.segment(start_[c], n) = parts_[c].selfadjointView<Eigen::Lower>() * x.segment(start_[c], n);
  }
  if (scale_.size() == 0) return;
  VectorXd force = rows_.elongation * x;
  for (Index i = 0; i < force.size(); ++i) force[i] = rows_.compliance[i] != 0 ? force[i] / rows_.compliance[i] : 0;
  y += rows_.elongation.transpose() * force;
}

int JointedMatrix::negative_eigenvalues() const {
  int count = 0;
  for (const auto& f : factors_)
    if (f) count += f->negative_pivots();
  if (scale_.size() == 0) return count;
  // In([A, S'; S, -C]) = In(A) + In(-C - S A^-1 S') = In(-C) + In(A + S' C^-1 S), Haynsworth 1968; negative compliances
  // count on the left hand side of -C.
  const int condensed_positive = static_cast<int>((symmetric_eigenvalues(condensed_).array() > 0).count());
  const int springs = static_cast<int>((rows_.compliance.array() >= 0).count());
  return count + condensed_positive - springs;
}

std::size_t JointedMatrix::bytes() const {
  auto numbers = static_cast<std::size_t>(condensed_.size() * 2);
  std::size_t all = 0;
  for (const MatrixXd& r : responses_) numbers += static_cast<std::size_t>(r.size());
  for (const auto& f : factors_) all += f ? f->bytes() : 0;
  return all + numbers * sizeof(double);
}

} // namespace bedbow
