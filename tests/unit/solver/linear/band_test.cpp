#include "solver/linear/band.h"
#include "solver/linear/dense.h"

#include "linear_matrices.h"
#include <gtest/gtest.h>

#include <numeric>

namespace bedbow {

using test::free_beam;
using test::full;
using test::lower_of;
using test::random_band;

// Against Eigen's dense solver, over sizes that do and do not fill bundles of four.
TEST(Band, SolvesAsDenseDoes) {
  for (const int n : {1, 2, 3, 4, 5, 7, 16, 61, 200})
    for (const int half_band : {0, 1, 3, 5, 12, 35, 80}) {
      const SymmetricMatrix a = random_band(n, half_band, 2.0 * half_band + 2, n * 100 + half_band);
      BandLdlt f(a);
      ASSERT_FALSE(f.factor(a)) << n << " " << half_band;
      EXPECT_EQ(f.negative_pivots(), 0);
      const Eigen::MatrixXd dense = full(a);
      for (const int k : {0, 1, 2, 3, 7, 8, 9, 17}) {
        const Eigen::MatrixXd b = Eigen::MatrixXd::Random(n, k);
        Eigen::MatrixXd x = b;
        f.solve(x);
        const Eigen::MatrixXd reference = dense.ldlt().solve(b);
        EXPECT_LE((x - reference).norm(), 1e-13 * reference.norm()) << n << " " << half_band << " " << k;
      }
    }
}

// Sylvester: as many negative pivots as negative eigenvalues.
TEST(Band, CountsNegativePivots) {
  for (const double shift : {-20.0, -3.0, 0.5, 3.0}) {
    const SymmetricMatrix a = random_band(90, 9, shift, 7);
    BandLdlt f(a);
    ASSERT_FALSE(f.factor(a, false));
    const Eigen::VectorXd values = symmetric_eigenvalues(full(a));
    EXPECT_EQ(f.negative_pivots(), (values.array() < 0).count()) << shift;
    const Eigen::MatrixXd b = Eigen::MatrixXd::Random(90, 5);
    Eigen::MatrixXd x = b;
    f.solve(x);
    EXPECT_LE((full(a) * x - b).norm(), 1e-9 * b.norm());
  }
}

TEST(Band, NegativePivotBreaksWhenPositiveIsAsked) {
  SymmetricMatrix a = random_band(20, 3, 8, 3);
  a.coeffRef(13, 13) = -5;
  BandLdlt f(a);
  const auto broken = f.factor(a, true);
  ASSERT_TRUE(broken);
  EXPECT_EQ(broken->unknown, 13);
}

TEST(Band, IrregularEnvelopeAndOrder) {
  SymmetricMatrix a = random_band(83, 6, 20, 11);
  a.coeffRef(60, 2) = 1.5; // a rod across the machine
  a.coeffRef(82, 0) = -2.5;
  a.coeffRef(41, 20) = 0.5;
  a.makeCompressed();
  std::vector<int> order(83);
  for (int i = 0; i < 83; ++i) order[i] = (i * 37 + 5) % 83;
  const Eigen::MatrixXd b = Eigen::MatrixXd::Random(83, 11);
  const Eigen::MatrixXd reference = full(a).ldlt().solve(b);
  for (const bool shuffled : {false, true}) {
    BandLdlt f(a, shuffled ? std::span<const int>(order) : std::span<const int>());
    ASSERT_FALSE(f.factor(a));
    Eigen::MatrixXd x = b;
    f.solve(x);
    EXPECT_LE((x - reference).norm(), 1e-12 * reference.norm());
    Eigen::MatrixXd w = b;
    f.forward(w);
    const Eigen::Map<const Eigen::VectorXd> d(f.pivots().data(), 83);
    const Eigen::MatrixXd c = w.transpose() * d.cwiseInverse().asDiagonal() * w;
    EXPECT_LE((c - b.transpose() * reference).norm(), 1e-12 * c.norm());
  }
}

TEST(Band, ComplianceSkipsLeadingZerosOnly) {
  const int n = 130;
  const SymmetricMatrix a = random_band(n, 14, 30, 5);
  BandLdlt f(a);
  ASSERT_FALSE(f.factor(a));
  for (const int k : {0, 1, 5, 8, 19}) {
    Eigen::SparseMatrix<double> b(n, k);
    for (int c = 0; c < k; ++c) {
      b.insert((c * 53 + 7) % n, c) = 1.0 + c;
      if (c % 2) b.coeffRef((c * 29 + 90) % n, c) -= 0.5;
    }
    if (k == 5) b.col(3) *= 0; // a column of nothing
    const Eigen::MatrixXd dense(b);
    const Eigen::MatrixXd reference = dense.transpose() * full(a).ldlt().solve(dense);
    const Eigen::MatrixXd c = f.compliance(b);
    ASSERT_EQ(c.rows(), k);
    EXPECT_LE((c - reference).norm(), 1e-13 * (reference.norm() + 1));
    EXPECT_EQ(c, c.transpose());
  }
}

// A cantilever of many short elements has a last pivot far below its diagonal, and is sound: tip deflection L^3 / 3.
TEST(Band, SlenderCantileverIsNoMechanism) {
  for (const int elements : {10, 100, 400}) {
    const Eigen::MatrixXd k = free_beam(elements, 1.0 / elements).bottomRightCorner(2 * elements, 2 * elements);
    const SymmetricMatrix a = lower_of(k);
    BandLdlt f(a);
    ASSERT_FALSE(f.factor(a)) << elements;
    Eigen::MatrixXd x = Eigen::MatrixXd::Zero(2 * elements, 1);
    x(2 * elements - 2) = 1;
    f.solve(x);
    // Condition grows with the fourth power of the number of elements.
    EXPECT_NEAR(x(2 * elements - 2), 1.0 / 3, 1e-16 * std::pow(elements, 4) + 1e-12);
  }
}

// Left free, or held in one place only, the same beam moves as a rigid body; the movement is named.
TEST(Band, FreeBeamIsAMechanism) {
  for (const int elements : {3, 10, 100, 400}) {
    const double l = 1.0 / elements;
    const Eigen::MatrixXd k = free_beam(elements, l);
    const SymmetricMatrix free = lower_of(k);
    BandLdlt f(free);
    EXPECT_TRUE(f.factor(free)) << elements;

    const int n = 2 * elements + 1; // w = 0 at the first node: it swings about it
    const SymmetricMatrix hinged = lower_of(k.bottomRightCorner(n, n));
    BandLdlt h(hinged);
    const auto broken = h.factor(hinged);
    ASSERT_TRUE(broken) << elements;
    EXPECT_EQ(broken->unknown, n - 1); // nothing is left for the last unknown
    Eigen::VectorXd swing(n);
    swing[0] = 1;
    for (int i = 1; i <= elements; ++i) {
      swing[2 * i - 1] = i * l;
      swing[2 * i] = 1;
    }
    EXPECT_LE((broken->mechanism - swing).norm(), 1e-6 * swing.norm()) << elements;
  }
}

TEST(Band, UnknownWithoutStiffnessIsNamed) {
  SymmetricMatrix a = random_band(40, 4, 10, 2);
  for (int i = 0; i < 40; ++i) {
    if (i <= 17 && 17 - i <= 4) a.coeffRef(17, i) = 0;
    if (i > 17 && i - 17 <= 4) a.coeffRef(i, 17) = 0;
  }
  std::vector<int> backwards(40);
  std::iota(backwards.rbegin(), backwards.rend(), 0);
  for (const bool reversed : {false, true}) {
    BandLdlt f(a, reversed ? std::span<const int>(backwards) : std::span<const int>());
    const auto broken = f.factor(a);
    ASSERT_TRUE(broken);
    EXPECT_EQ(broken->unknown, 17);
    EXPECT_EQ(broken->mechanism, Eigen::VectorXd::Unit(40, 17));
  }
}

TEST(Band, FactorsAgainInTheSameMemory) {
  const SymmetricMatrix a = random_band(50, 8, 20, 1), b = random_band(50, 8, 25, 2);
  BandLdlt f(a), fresh(b);
  ASSERT_FALSE(f.factor(a));
  ASSERT_FALSE(f.factor(b));
  ASSERT_FALSE(fresh.factor(b));
  Eigen::MatrixXd x = Eigen::MatrixXd::Ones(50, 4), y = x;
  f.solve(x);
  fresh.solve(y);
  EXPECT_EQ(x, y);
  f.clear();
  for (int j = 0; j < 50; ++j)
    for (SymmetricMatrix::InnerIterator it(b, j); it; ++it) {
      f.add(static_cast<int>(it.row()), j, 0.25 * it.value());
      f.add(j, static_cast<int>(it.row()), 0.75 * it.value()); // either triangle
    }
  ASSERT_FALSE(f.factor_in_place());
  Eigen::MatrixXd z = Eigen::MatrixXd::Ones(50, 4);
  f.solve(z);
  EXPECT_LE((z - y).norm(), 1e-14 * y.norm());
}

TEST(Band, EntryOutsideTheEnvelopeIsRefused) {
  BandLdlt f(random_band(30, 2, 5, 1));
  EXPECT_THROW((void)f.factor(random_band(30, 9, 20, 1)), std::logic_error);
  EXPECT_THROW((void)f.factor(random_band(31, 2, 5, 1)), std::logic_error);
  EXPECT_THROW(BandLdlt(random_band(3, 1, 5, 1), std::vector<int>{0, 1, 1}), std::logic_error);
}

} // namespace bedbow
