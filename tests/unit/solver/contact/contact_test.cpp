#include "solver/contact/contact.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

namespace {

/// A rigid beam on compression-only springs of unit stiffness at the given places, pressed down by a unit force at
/// `load` (force along +z of a row is tension, so a pressed row carries a negative one).
CondensedSystem beam_on_springs(const std::vector<double>& places, double load) {
  const auto m = static_cast<Eigen::Index>(places.size());
  CondensedSystem s;
  s.compliance = Eigen::MatrixXd::Zero(m, m);
  s.rigid_elongation.resize(m, 2);
  s.free_elongation = Eigen::VectorXd::Zero(m);
  s.rigid_load = Eigen::Vector2d(-1, -load);
  for (Eigen::Index i = 0; i < m; ++i) {
    s.rigid_elongation.row(i) << 1, places[static_cast<std::size_t>(i)];
    s.laws.push_back({1, 0, UnilateralType::compression});
  }
  return s;
}

} // namespace

// A stiff footing on ground that can't pull: beyond the middle third a part of it lifts off. With two springs left of
// three, statics alone gives their forces.
TEST(Contact, LiftsTheFarSideOfAStiffFooting) {
  const ContactSolution s = solve_contact(beam_on_springs({-1, 0, 1}, 0.8));
  ASSERT_EQ(s.status, ContactStatus::ok);
  EXPECT_EQ(s.active, (std::vector<char>{0, 1, 1}));
  EXPECT_EQ(s.force[0], 0);
  EXPECT_NEAR(s.force[1], -0.2, 1e-12);
  EXPECT_NEAR(s.force[2], -0.8, 1e-12);
  EXPECT_GT(s.elongation[0], 0);
}

TEST(Contact, GivesUpAfterTheIterationsItMayTakeAndTellsWhatChanged) {
  const ContactSolution s = solve_contact(beam_on_springs({-1, 0, 1}, 0.8), {}, 1);
  EXPECT_EQ(s.status, ContactStatus::no_convergence);
  EXPECT_EQ(s.iterations, 1);
  ASSERT_EQ(s.history.size(), 1U);
  EXPECT_NE(s.history[0].find("iteration 1: 1 rows changed"), std::string::npos) << s.history[0];
}

// Pushed beyond its last spring the beam tips over: no spring can hold it.
TEST(Contact, SaysWhatMovesWhenNothingHoldsIt) {
  const ContactSolution s = solve_contact(beam_on_springs({-1, 0, 1}, 1.2));
  EXPECT_EQ(s.status, ContactStatus::mechanism);
  ASSERT_EQ(s.mechanism.size(), 2);
  EXPECT_NEAR(s.mechanism.cwiseAbs().maxCoeff(), 1, 1e-12);
}

} // namespace bedbow
