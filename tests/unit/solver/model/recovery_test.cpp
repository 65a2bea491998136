#include "io/case/case_reader.h"
#include "mesh/build/places.h"
#include "solver/analysis.h"
#include "solver/model/model.h"
#include "solver/model/recovery.h"
#include "solver/model/steps.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace bedbow {

// Statics along a loaded element against the element's own interpolation, unsymmetric section with its shear centre off
// the centroid. Both are exact, so they differ by rounding only.
TEST(Recovery, ForcesFurtherAlongAgreeWithTheElement) {
  BeamData data;
  data.E = 210e9;
  data.G = 80e9;
  data.section.A = 2e-3;
  data.section.Iyy = 3e-6;
  data.section.Izz = 1e-6;
  data.section.Iyz = 0.4e-6;
  data.section.J = 2e-7;
  data.section.Ay = 1.5e-3;
  data.section.Az = 1.2e-3;
  data.section.shear_centre = {0.004, -0.007};
  const double length = 0.3;
  Vector12d u;
  for (int i = 0; i < 12; ++i) u[i] = 1e-4 * std::sin(1.7 * i + 0.3);
  const BeamLineLoad load{{300, -2000, 5000}, {40, -25, 60}};
  const SectionForces first = beam_forces(data, length, u, load, 0);
  for (const double s : {0.25, 0.5, 1.0}) {
    const SectionForces whole = beam_forces(data, length, u, load, s);
    const SectionForces along = forces_further(data, load, first, s * length);
    const double force = 1e-9 * std::max(std::hypot(whole.Vy, whole.Vz), std::abs(whole.N));
    const double moment = force * length;
    EXPECT_NEAR(along.N, whole.N, force);
    EXPECT_NEAR(along.Vy, whole.Vy, force);
    EXPECT_NEAR(along.Vz, whole.Vz, force);
    EXPECT_NEAR(along.T, whole.T, moment);
    EXPECT_NEAR(along.My, whole.My, moment);
    EXPECT_NEAR(along.Mz, whole.Mz, moment);
  }
}

// Joints read a strip by functionals, results by its functions along one line: the same displacements by two ways.
TEST(Recovery, StripsMoveAtAPlaceAsAlongALine) {
  Machine machine = read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries()).machine;
  for (Body& body : machine.bodies)
    for (Bar& bar : body.bars) bar.model = BarModel::strip;
  const Registries registries = builtin_registries();
  const Model m = make_model(machine, registries);
  ASSERT_FALSE(m.mesh.strips.empty());
  const std::vector<StepSolution> steps = solve_steps(m, sheet_loads_of(machine, registries)).steps;
  ASSERT_FALSE(steps.empty());
  const StepSolution& step = steps.back();
  for (const BodyKind body : all_bodies)
    for (std::size_t b = 0; b < machine.body(body).bars.size(); ++b) {
      const Ref ref{Ref::Kind::bar, body, static_cast<int>(b)};
      const Bar& bar = machine.bar(ref);
      const std::vector<double> x{bar.start, 0.2134, 0.45, bar.end()};
      const double y = bar.at.x() + 0.3 * bar.shape.width, z = bar.at.y() - 0.6 * bar.shape.height;
      const std::vector<Vector6d> line = section_motions(m, step, ref, x, y, z);
      double most = 0;
      for (const Vector6d& v : line) most = std::max(most, v.norm());
      ASSERT_GT(most, 0);
      for (std::size_t i = 0; i < x.size(); ++i) {
        Place place = place_on_bar(machine, m.mesh, ref, {x[i], y, z});
        place.frame = Frame::fixed;
        EXPECT_LT((line[i] - place_motion(step, place)).norm(), 1e-11 * most) << machine.name_of(ref) << " at " << x[i];
      }
    }
}

} // namespace bedbow
