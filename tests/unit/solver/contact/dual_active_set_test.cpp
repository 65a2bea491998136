#include "solver/contact/dual_active_set.h"

#include <Eigen/LU>
#include <gtest/gtest.h>

#include <random>

namespace bedbow {

namespace {

/// A part with two rigid movements on one-sided rows of both kinds, some ten thousand times as stiff as others, with
/// gaps and an elastic compliance that couples them all.
CondensedSystem random_system(std::mt19937& random, Eigen::Index m) {
  std::uniform_real_distribution<double> unit(-1, 1);
  const auto any = [&] { return unit(random); };
  CondensedSystem s;
  const Eigen::MatrixXd half = Eigen::MatrixXd::NullaryExpr(m, m, any);
  s.compliance = half * half.transpose();
  s.rigid_elongation = Eigen::MatrixXd::NullaryExpr(m, 2, any);
  s.free_elongation = Eigen::VectorXd::NullaryExpr(m, any);
  s.rigid_load = Eigen::Vector2d(any(), any());
  for (Eigen::Index i = 0; i < m; ++i)
    s.laws.push_back(
        {any() > 0 ? 1.0 : 1e-4, 0.3 * any(), any() > 0 ? UnilateralType::tension : UnilateralType::compression});
  return s;
}

/// The answer by trying every set of rows, each as a plain linear system of forces and movements: the set whose forces
/// and gaps all have the right sign. \return false when there is none.
bool tried_all(const CondensedSystem& s, Eigen::VectorXd& force) {
  const auto m = static_cast<Eigen::Index>(s.laws.size());
  for (unsigned set = 0; set < 1U << m; ++set) {
    Eigen::MatrixXd a = Eigen::MatrixXd::Zero(m + 2, m + 2);
    Eigen::VectorXd b = Eigen::VectorXd::Zero(m + 2);
    a.bottomLeftCorner(2, m) = s.rigid_elongation.transpose();
    b.tail(2) = s.rigid_load;
    for (Eigen::Index i = 0; i < m; ++i) {
      if (set >> i & 1U) {
        a.row(i).head(m) = s.compliance.row(i);
        a(i, i) += s.laws[i].compliance;
        a.row(i).tail(2) = -s.rigid_elongation.row(i);
        b[i] = s.free_elongation[i] - s.laws[i].gap;
      } else {
        a(i, i) = 1;
      }
    }
    const Eigen::FullPivLU<Eigen::MatrixXd> lu(a);
    if (!lu.isInvertible()) continue;
    const Eigen::VectorXd x = lu.solve(b);
    const Eigen::VectorXd elongation = s.free_elongation - s.compliance * x.head(m) + s.rigid_elongation * x.tail(2);
    bool right = true;
    for (Eigen::Index i = 0; i < m && right; ++i) {
      const double sign = s.laws[i].sense == UnilateralType::tension ? 1 : -1;
      right = set >> i & 1U ? sign * x[i] >= 0 : sign * (elongation[i] - s.laws[i].gap) <= 0;
    }
    if (!right) continue;
    force = x.head(m);
    return true;
  }
  return false;
}

ContactSolution opened(const CondensedSystem& s) {
  CondensedSprings rows(s);
  ContactSolution out;
  dual_active_set(rows, s, 1000, out);
  return out;
}

} // namespace

// Three to seven rows have 8 to 128 sets, all of which can be tried.
TEST(ContactOpening, FindsTheOneSetOfRowsThatIsRight) {
  std::mt19937 random(20261);
  int held = 0;
  int loose = 0;
  for (int i = 0; i < 300; ++i) {
    const CondensedSystem s = random_system(random, 3 + i % 5);
    const ContactSolution a = opened(s);
    Eigen::VectorXd force;
    if (tried_all(s, force)) {
      ++held;
      ASSERT_EQ(a.status, ContactStatus::ok) << "system " << i;
      EXPECT_LT((a.force - force).norm(), 1e-9 * (1 + force.norm())) << "system " << i;
    } else {
      ++loose;
      ASSERT_EQ(a.status, ContactStatus::mechanism) << "system " << i;
      ASSERT_EQ(a.mechanism.size(), 2);
      // Where it goes, the loads do work on it and no row comes in the way.
      EXPECT_GT(a.mechanism.dot(s.rigid_load), 0) << "system " << i;
      const Eigen::VectorXd moved = s.rigid_elongation * a.mechanism;
      for (Eigen::Index r = 0; r < moved.size(); ++r)
        EXPECT_LT(moved[r] * (s.laws[r].sense == UnilateralType::tension ? 1 : -1), 1e-9)
            << "system " << i << " row " << r;
    }
  }
  EXPECT_GT(held, 50);
  EXPECT_GT(loose, 50);
}

// Both methods have one answer, if Newton's steps come to any.
TEST(ContactOpening, AgreesWithNewtonsSteps) {
  std::mt19937 random(20262);
  int held = 0;
  for (int i = 0; i < 50; ++i) {
    const CondensedSystem s = random_system(random, 30);
    const ContactSolution a = opened(s);
    const ContactSolution b = solve_contact(s);
    ASSERT_EQ(a.status, b.status) << "system " << i;
    if (a.status != ContactStatus::ok) continue;
    ++held;
    EXPECT_EQ(a.active, b.active) << "system " << i;
    EXPECT_LT((a.force - b.force).norm(), 1e-9 * (1 + b.force.norm())) << "system " << i;
  }
  EXPECT_GT(held, 25);
}

} // namespace bedbow
