// As many frequencies below a shift as K - omega^2 M has negative pivots (Sylvester's law of inertia; Parlett, The
// Symmetric Eigenvalue Problem, 1980, ch. 3, from memory); shapes orthogonal in M and in K.
#include "solver/model/model.h"
#include "solver/modes/modes.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

struct Vibrating {
  explicit Vibrating(const Machine& m)
      : machine(m)
      , registries(builtin_registries())
      , model(make_model(machine, registries))
      , solved(solve_steps(model, sheet_loads_of(machine, registries)))
      , state(solved.steps.empty() ? all_closed(model) : state_of(model, solved.steps.front()))
      , vibrating(model, state, registries.linear_solvers, false) {}
  Machine machine;
  Registries registries;
  Model model;
  StepsOutcome solved;
  JointState state;
  VibratingMachine vibrating;
};

void count(const Machine& machine, int wanted, int rigid) {
  const Vibrating v(machine);
  const Modes modes = v.vibrating.lowest(wanted);
  ASSERT_EQ(modes.values.size(), wanted);
  EXPECT_EQ(static_cast<int>(modes.names.size()), rigid);
  for (int i = rigid; i + 1 < wanted; ++i) {
    const double below = modes.values[i], above = modes.values[i + 1];
    if (above - below < 1e-6 * above) continue; // no room between repeated ones
    EXPECT_EQ(v.vibrating.count_below((below + above) / 2), i + 1) << "between mode " << i + 1 << " and the next";
  }
}

TEST(Sturm, HiveLidHasNoFrequencyBesidesThoseFound) {
  count(machine_of(project_file("cases/hive-lid/case.toml")), 12, 0);
}

TEST(Sturm, LooseClampHasOneMoreAtZero) {
  Machine m = machine_of(project_file("tests/cases/folder-x.toml"));
  m.posts.clear();
  for (Tie& t : m.ties) t.holds = {false, true, true, true, false, true};
  const Vibrating v(m);
  const Modes modes = v.vibrating.lowest(8);
  ASSERT_FALSE(modes.names.empty());
  EXPECT_NE(modes.names[0].find("clamp slides along x"), std::string::npos) << modes.names[0];
  EXPECT_EQ(modes.values[0], 0);
  const auto free = static_cast<int>(modes.names.size());
  for (int i = free; i + 1 < 8; ++i)
    EXPECT_EQ(v.vibrating.count_below((modes.values[i] + modes.values[i + 1]) / 2), i + 1);
}

TEST(Sturm, ShapesAreOrthogonalInMassAndStiffness) {
  const Vibrating v(machine_of(project_file("cases/hive-lid/case.toml")));
  const Modes modes = v.vibrating.lowest(12);
  const double shift = v.vibrating.shift();
  const JointedMatrix a = v.vibrating.shifted(shift);
  Eigen::MatrixXd au(modes.vectors.rows(), modes.vectors.cols());
  for (Eigen::Index j = 0; j < au.cols(); ++j) a.multiply(modes.vectors.col(j), au.col(j));
  Eigen::MatrixXd gram = modes.vectors.transpose() * au;
  double worst = 0;
  for (Eigen::Index i = 0; i < gram.rows(); ++i)
    for (Eigen::Index j = 0; j < gram.cols(); ++j) {
      const double scale = std::sqrt((modes.values[i] - shift) * (modes.values[j] - shift));
      worst = std::max(worst, std::abs(gram(i, j) / scale - (i == j)));
    }
  record("", "orthogonality of eigenvectors in K - sigma M", "worst entry", worst, 0, 1e-8);
  record("", "orthogonality of eigenvectors in M", "worst entry", modes.orthogonality, 0, 1e-8);
}

} // namespace
} // namespace bedbow::verification
