// Two parts and rows between them against the same thing summed as one dense matrix.
#include "solver/linear/auto.h"
#include "solver/linear/dense.h"
#include "solver/modes/jointed_matrix.h"

#include "tests/unit/solver/linear/linear_matrices.h"
#include <Eigen/Cholesky>
#include <gtest/gtest.h>

namespace bedbow {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

struct Pair {
  /// \param compliance of the rows, 0: rigid.
  Pair(double shift, const VectorXd& compliance)
      : parts{test::random_band(30, 4, shift, 3), test::random_band(20, 3, shift, 4)} {
    std::srand(2);
    rows.compliance = compliance;
    const MatrixXd dense = MatrixXd::Random(compliance.size(), 50);
    rows.elongation = dense.sparseView();
    whole = MatrixXd::Zero(50, 50);
    whole.topLeftCorner(30, 30) = test::full(parts[0]);
    whole.bottomRightCorner(20, 20) = test::full(parts[1]);
    std::vector<Index> rigid;
    for (Index i = 0; i < compliance.size(); ++i) {
      if (compliance[i] == 0)
        rigid.push_back(i);
      else
        whole += dense.row(i).transpose() * dense.row(i) / compliance[i];
    }
    // Movements that the rigid rows allow.
    const MatrixXd held = dense(rigid, Eigen::all);
    if (rigid.empty())
      allowed = MatrixXd::Identity(50, 50);
    else
      allowed = Eigen::FullPivLU<MatrixXd>(held).kernel();
  }
  [[nodiscard]] JointedMatrix jointed(bool positive) const {
    FactorHints hints;
    hints.positive = positive;
    return {parts, rows, auto_factor, {hints, hints}};
  }
  [[nodiscard]] MatrixXd condensed() const { return allowed.transpose() * whole * allowed; }
  std::vector<SymmetricMatrix> parts;
  JointRows rows;
  MatrixXd whole, allowed;
};

void solves_as_one(const VectorXd& compliance) {
  const Pair p(9, compliance);
  const JointedMatrix a = p.jointed(true);
  ASSERT_EQ(a.size(), 50);
  const MatrixXd b = MatrixXd::Random(50, 3);
  const MatrixXd reference = p.allowed * p.condensed().ldlt().solve(p.allowed.transpose() * b);
  MatrixXd x = b;
  a.solve(x);
  EXPECT_LE((x - reference).norm(), 1e-9 * reference.norm());
  VectorXd one = b.col(0), back(50);
  a.solve(one);
  EXPECT_LE((one - reference.col(0)).norm(), 1e-9 * reference.norm());
  a.multiply(one, back); // but for the constraints' forces, which do no work on allowed movements
  EXPECT_LE((p.allowed.transpose() * (back - b.col(0))).norm(), 1e-8);
}

TEST(JointedMatrix, WithSpringsSolvesAsOneMatrix) {
  solves_as_one(VectorXd::Constant(4, 0.5));
}
TEST(JointedMatrix, WithRigidRowsObeysThem) {
  solves_as_one(VectorXd::Zero(3));
  solves_as_one(Eigen::Vector4d(0, 0.1, 0, 2));
}
TEST(JointedMatrix, NegativeComplianceTakesASpringAway) {
  solves_as_one(Eigen::Vector2d(-20, 0.1));
}

// Sylvester's law of inertia (from memory).
TEST(JointedMatrix, CountsNegativeEigenvaluesOfTheWhole) {
  for (const double shift : {-3.0, -1.0, 0.3, 2.0})
    for (const VectorXd& compliance : {VectorXd(VectorXd::Constant(4, 0.5)), VectorXd(VectorXd::Zero(3)),
                                       VectorXd(Eigen::Vector4d(0, 0.1, 0, -2))}) {
      const Pair p(shift, compliance);
      const VectorXd values = symmetric_eigenvalues(p.condensed());
      EXPECT_EQ(p.jointed(false).negative_eigenvalues(), (values.array() < 0).count()) << shift << " " << compliance;
    }
}

TEST(JointedMatrix, SaysWhichPartCannotBeFactored) {
  Pair p(9, VectorXd::Constant(1, 0.5));
  p.parts[1] *= 0;
  try {
    const JointedMatrix a = p.jointed(true);
    FAIL() << "factored a matrix of zeros";
  } catch (const std::runtime_error& e) {
    EXPECT_NE(std::string(e.what()).find("part 2"), std::string::npos) << e.what();
  }
}

} // namespace
} // namespace bedbow
