// A whole machine as strips against the same as plates: bow, bend angle, forces, frequencies.
#include "tests/verification/modes/vibration.h"
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>
#include <regex>
#include <utility>

namespace bedbow::verification {
namespace {

constexpr auto as_plates = "the same as plates, elements of 7.5 mm";

/// Couples that joints bring in on rigid arms bend the place where they enter; a strip has that too stiff by up to 14 %
/// (docs/theory/strips.md), and frequencies go with the root of stiffness.
constexpr double stiffness = 0.14, frequency = stiffness / 2;

/// The hive-lid folder with every flat of one model.
std::string hive_lid(const std::string& model, double element_mm) {
  const std::string text =
      std::regex_replace(project_file("cases/hive-lid/case.toml"), std::regex("shape = \"rectangle\""),
                         "model = \"" + model + "\"\nshape = \"rectangle\"");
  return replaced(text, "[solve]\n", "[solve]\nelement_size = " + mm(element_mm) + "\n");
}

Findings quickly_solved(const Machine& machine) {
  AnalysisOptions options;
  options.fields = options.certificate = options.slip_bounds = false;
  return analyse(machine, builtin_registries(), options);
}

Findings hive_lid_solved(const std::string& model, double element_mm) {
  return quickly_solved(machine_of(hive_lid(model, element_mm)));
}

/// The same machine with its sheet off the middle.
Findings off_centre(double centre_mm) {
  return quickly_solved(
      machine_of(replaced(hive_lid("strip", 15), "centre = \"450 mm\"", "centre = " + mm(centre_mm))));
}

} // namespace

// As beams: clamp bow 0.031 for 0.054 mm, spread 0.256 for 0.314 deg.
TEST(StripMachines, BowAndAngleOfHiveLid) {
  const Findings strips = hive_lid_solved("strip", 15), plates = hive_lid_solved("plate", 7.5);
  ASSERT_EQ(strips.steps.size(), plates.steps.size());
  constexpr double tolerance = 0.05;
  for (std::size_t s = 0; s < strips.steps.size(); ++s) {
    const StepResult &is = strips.steps[s], &should = plates.steps[s];
    for (const BodyKind body : all_bodies)
      if (const double bow = should.bow.bow[static_cast<std::size_t>(body)]; bow > 1e-5) // less is nothing to a builder
        record("", as_plates, "hive-lid, " + is.name + ", bow of the " + to_string(body),
               is.bow.bow[static_cast<std::size_t>(body)] * 1e3, bow * 1e3, tolerance, "mm");
    if (std::isnan(should.bow.angle_spread) || is.name == "clamp") continue;
    record("", as_plates, "hive-lid, " + is.name + ", spread of the bend angle", is.bow.angle_spread,
           should.bow.angle_spread, tolerance, "rad");
    for (const JointKind kind : {JointKind::post, JointKind::cam})
      for (const JointResult& j : joints_of(should, kind))
        record("", as_plates, "hive-lid, " + is.name + ", " + info(kind).key + " " + j.name,
               joint(joints_of(is, kind), j.name).value, j.value, 0.02, "N");
  }
}

// The machine is the same from either end, so a sheet left of its middle and one right of it are mirror images.
TEST(StripMachines, MirroredSheetsHaveMirroredForces) {
  const Findings left = off_centre(400), right = off_centre(500);
  ASSERT_EQ(left.steps.size(), right.steps.size());
  for (std::size_t s = 0; s < left.steps.size(); ++s) {
    const auto one = joints_of(left.steps[s], JointKind::post), other = joints_of(right.steps[s], JointKind::post);
    ASSERT_EQ(one.size(), other.size());
    for (std::size_t k = 0; k < one.size(); ++k)
      EXPECT_NEAR(one[k].value, other[other.size() - 1 - k].value, 1e-8 * one[k].value);
  }
}

TEST(StripMachines, OrderOfBarsDoesNotMatter) {
  Machine machine = machine_of(hive_lid("strip", 15));
  const Findings drawn = quickly_solved(machine);
  Body& bed = machine.body(BodyKind::bed);
  ASSERT_EQ(bed.bars.size(), 2U);
  std::swap(bed.bars[0], bed.bars[1]);
  bed.edge_bar = 1 - bed.edge_bar;
  const auto follow = [](Ref& r) {
    if (r.kind == Ref::Kind::bar && r.body == BodyKind::bed) r.index = 1 - r.index;
  };
  const auto follow_all = [&](auto& list) {
    for (JointBase& j : list)
      for (Ref& r : j.joins) follow(r);
  };
  follow_all(machine.posts);
  follow_all(machine.cams);
  follow_all(machine.hinges);
  follow_all(machine.supports);
  follow_all(machine.screws);
  for (Dial& d : machine.dials) follow(d.on);
  const Findings swapped = quickly_solved(machine);
  ASSERT_EQ(drawn.steps.size(), swapped.steps.size());
  for (std::size_t s = 0; s < drawn.steps.size(); ++s)
    for (const JointKind kind : {JointKind::post, JointKind::cam}) {
      const auto one = joints_of(drawn.steps[s], kind), other = joints_of(swapped.steps[s], kind);
      for (std::size_t k = 0; k < one.size(); ++k) EXPECT_NEAR(one[k].value, other[k].value, 1e-9 * one[k].value);
    }
}

TEST(StripModes, FrequenciesOfHiveLid) {
  const std::vector<double> strips = frequencies(vibrating(hive_lid("strip", 15), 6)),
                            plates = frequencies(vibrating(hive_lid("plate", 7.5), 6));
  ASSERT_EQ(strips.size(), plates.size());
  for (std::size_t i = 0; i < strips.size(); ++i)
    record("", as_plates, "hive-lid, frequency " + std::to_string(i + 1), strips[i], plates[i], frequency, "Hz");
}

TEST(StripModes, BucklingOfHiveLid) {
  const Findings strips = buckling(hive_lid("strip", 15), 1), plates = buckling(hive_lid("plate", 7.5), 1);
  ASSERT_FALSE(strips.modes->buckling_factors.empty());
  ASSERT_FALSE(plates.modes->buckling_factors.empty());
  record("", as_plates, "hive-lid, least load factor", strips.modes->buckling_factors[0],
         plates.modes->buckling_factors[0], stiffness);
}

} // namespace bedbow::verification
