#include "solver/contact/dual_active_set.h"

#include <Eigen/LU>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

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

/// The same with rows that slide at a bound among them.
CondensedSystem random_sliding_system(std::mt19937& random, Eigen::Index m) {
  CondensedSystem s = random_system(random, m);
  std::uniform_real_distribution<double> unit(0, 1);
  for (SpringLaw& law : s.laws)
    if (unit(random) < 0.4) {
      law.sense = UnilateralType::both;
      law.bound = unit(random);
    }
  return s;
}

int states_of(const SpringLaw& law) {
  return law.sense == UnilateralType::both ? 3 : 2;
}

/// A row's force where it does not stick: none, or its bound either way.
double known_force(const SpringLaw& law, int state) {
  if (law.sense != UnilateralType::both) return 0;
  return state == row_pulled ? law.bound : -law.bound;
}

/// Whether a row's force and stretch are right for its state.
bool is_right(const SpringLaw& law, int state, double force, double elongation) {
  const double past = elongation - law.gap;
  if (law.sense == UnilateralType::both) {
    if (state == row_active) return std::abs(force) <= law.bound;
    return (state == row_pulled ? past : -past) >= law.compliance * law.bound;
  }
  const double sign = law.sense == UnilateralType::tension ? 1 : -1;
  return state == row_active ? sign * force >= 0 : sign * past <= 0;
}

/// The answer by trying every set of states, each as a plain linear system of forces and movements: the set whose
/// forces and gaps are all right. \return false when there is none.
bool tried_all(const CondensedSystem& s, Eigen::VectorXd& force) {
  const auto m = static_cast<Eigen::Index>(s.laws.size());
  int sets = 1;
  for (const SpringLaw& law : s.laws) sets *= states_of(law);
  std::vector<int> state(s.laws.size());
  for (int set = 0; set < sets; ++set) {
    for (int i = 0, rest = set; i < m; rest /= states_of(s.laws[i]), ++i) {
      state[i] = rest % states_of(s.laws[i]);
      if (states_of(s.laws[i]) == 3) ++state[i]; // sticks, pulled, pushed
    }
    Eigen::MatrixXd a = Eigen::MatrixXd::Zero(m + 2, m + 2);
    Eigen::VectorXd b = Eigen::VectorXd::Zero(m + 2);
    a.bottomLeftCorner(2, m) = s.rigid_elongation.transpose();
    b.tail(2) = s.rigid_load;
    for (Eigen::Index i = 0; i < m; ++i) {
      if (state[i] == row_active) {
        a.row(i).head(m) = s.compliance.row(i);
        a(i, i) += s.laws[i].compliance;
        a.row(i).tail(2) = -s.rigid_elongation.row(i);
        b[i] = s.free_elongation[i] - s.laws[i].gap;
      } else {
        a(i, i) = 1;
        b[i] = known_force(s.laws[i], state[i]);
      }
    }
    const Eigen::FullPivLU<Eigen::MatrixXd> lu(a);
    if (!lu.isInvertible()) continue;
    const Eigen::VectorXd x = lu.solve(b);
    const Eigen::VectorXd elongation = s.free_elongation - s.compliance * x.head(m) + s.rigid_elongation * x.tail(2);
    bool right = true;
    for (Eigen::Index i = 0; i < m && right; ++i) right = is_right(s.laws[i], state[i], x[i], elongation[i]);
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

// Friction between sheet and nose went round in circles where a part of it stuck and a part slid. With known bounds it
// is part of the same energy, and has one answer.
TEST(ContactOpening, FindsWhatSlidesAndWhatSticks) {
  std::mt19937 random(20263);
  int held = 0, slid = 0;
  for (int i = 0; i < 300; ++i) {
    const CondensedSystem s = random_sliding_system(random, 3 + i % 4);
    Eigen::VectorXd force;
    const bool is_held = tried_all(s, force);
    for (const ContactSolution& a : {opened(s), solve_contact(s)}) {
      if (!is_held) {
        EXPECT_EQ(a.status, ContactStatus::mechanism) << "system " << i;
        continue;
      }
      ASSERT_EQ(a.status, ContactStatus::ok) << "system " << i;
      EXPECT_LT((a.force - force).norm(), 1e-9 * (1 + force.norm())) << "system " << i;
      held += 1;
      slid += std::ranges::count_if(a.active, [](char c) { return c == row_pulled || c == row_pushed; }) > 0;
    }
  }
  EXPECT_GT(held, 100);
  EXPECT_GT(slid, 50);
}

} // namespace bedbow
