// `stock` once recommended a machine whose web hung in the air, whose cams stood beside their bars and whose flange
// missed the face, without a word. A machine with any such fault is named for it.
#include "io/case/case_reader.h"
#include "mesh/check/buildable.h"

#include "tests/unit/mesh/check/faulty_machines.h"
#include <gtest/gtest.h>

#include <algorithm>

namespace bedbow {

namespace {

using test::FaultyMachine;

Machine shipped(const std::string& name) {
  return read_case(BEDBOW_SOURCE_DIR "/cases/" + name + "/case.toml", builtin_registries()).machine;
}

std::vector<Fault> faults_in(const Machine& m) {
  return buildable(m, builtin_registries().shapes, {});
}

std::string listed(const std::vector<Fault>& faults) {
  std::string out;
  for (const Fault& f : faults)
    out += word_for(fault_kinds, f.kind) + " of " + f.part + " and " + f.other + ": " + std::to_string(f.value) +
           " for " + std::to_string(f.limit) + "\n";
  return out;
}

/// The named fault is among those found. Others may follow from it: a plate made narrower misses screws, too.
void expect_named(const FaultyMachine& faulty) {
  Machine m = shipped(faulty.from);
  faulty.change(m);
  const std::vector<Fault> found = faults_in(m);
  const auto named = [&](const Fault& f) {
    const auto is = [](const std::string& a, const std::string& b) { return b.empty() || a == b; };
    return f.kind == faulty.kind && ((is(f.part, faulty.part) && is(f.other, faulty.other)) ||
                                     (f.part == faulty.other && f.other == faulty.part));
  };
  EXPECT_TRUE(std::ranges::any_of(found, named)) << faulty.story << "; found:\n" << listed(found);
}

TEST(Buildable, NamesTheFaultsOfTheShop) {
  const auto all = test::faults_of_the_shop();
  EXPECT_EQ(all.size(), 20U);
  for (const FaultyMachine& f : all) expect_named(f);
}

TEST(Buildable, NamesTheFaultsOfTheDrawing) {
  const auto all = test::faults_of_the_drawing();
  EXPECT_EQ(all.size(), 20U);
  for (const FaultyMachine& f : all) expect_named(f);
}

/// The fault of that kind and part in a changed hive-lid.
Fault fault_of(FaultKind kind, const std::string& part, void (*change)(Machine&)) {
  Machine m = shipped("hive-lid");
  change(m);
  for (const Fault& f : faults_in(m))
    if (f.kind == kind && f.part == part) return f;
  ADD_FAILURE() << "no such fault of " << part;
  return {};
}

// Figures by hand from the drawing.
TEST(Buildable, SaysByHowMuch) {
  constexpr double hair = 1e-9;
  const Fault gap =
      fault_of(FaultKind::gap, "bed.top", [](Machine& m) { m.body(BodyKind::bed).bars[1].at.y() -= 0.024; });
  EXPECT_NEAR(gap.value, 0.024, hair);
  const Fault edge = fault_of(FaultKind::edge_distance, "post left end", [](Machine& m) { m.posts[0].at.x() = 0.015; });
  EXPECT_NEAR(edge.value, 0.015, hair);
  EXPECT_NEAR(edge.limit, 1.2 * 0.022, hair); // EN 1993-1-8 Table 3.3, hole of an M20 by ISO 273
  EXPECT_TRUE(edge.tight);
  const Fault nut = fault_of(FaultKind::nut_room, "post left end", [](Machine& m) { m.posts[0].at.y() = 0.063; });
  EXPECT_NEAR(nut.value, 0.013, hair);  // the rib ends at y = 50 mm
  EXPECT_NEAR(nut.limit, 0.0185, hair); // washer of an M20 by ISO 7089
  const Fault back = fault_of(FaultKind::setback, "the nose", [](Machine& m) { m.nose.setback = 0.0005; });
  EXPECT_NEAR(back.limit, 0.0035, 1e-6); // thickness and inside radius
  const Fault cam = fault_of(FaultKind::off_bar, "cam left", [](Machine& m) { m.cams[0].at.x() = 0.004; });
  EXPECT_NEAR(cam.value, 0.006, hair); // half of its 20 mm
}

// A change answers for what it does, not for what it was given.
TEST(Buildable, OnlyWorseFaultsAreNew) {
  Machine drawn = shipped("hive-lid");
  drawn.posts[0].at.x() = 0.015;
  const auto before = faults_in(drawn);
  ASSERT_FALSE(before.empty());
  Machine other = drawn;
  other.body(BodyKind::clamp).bars[1].shape.height += 0.02;
  other.body(BodyKind::clamp).bars[1].at.y() += 0.01;
  EXPECT_EQ(listed(new_faults(faults_in(other), before)), "");
  other.posts[0].at.x() = 0.012;
  EXPECT_NE(listed(new_faults(faults_in(other), before)), "");
}

TEST(Buildable, NothingToSeeInThePlane) {
  Machine m = shipped("hive-lid");
  m.posts[0].at.y() = 0.2;
  m.solve.dimension = 2;
  EXPECT_TRUE(faults_in(m).empty());
}

// A flat in the bore of a hollow section was taken for two bars in one place.
TEST(Buildable, ABarMayLieInABore) {
  Machine m = shipped("roof-flashing");
  Bar core = m.body(BodyKind::bed).bars[0];
  core.name = "core";
  core.shape.kind = "rectangle";
  core.shape.width -= 2 * core.shape.wall;
  core.shape.height -= 2 * core.shape.wall;
  core.shape.wall = 0;
  core.start = 0.1; // clear of the studs
  core.length = 1;
  m.body(BodyKind::bed).bars.push_back(core);
  EXPECT_EQ(listed(faults_in(m)), "");
  m.body(BodyKind::bed).bars.back().at.x() += 0.002;
  EXPECT_NE(listed(faults_in(m)), "");
}

TEST(Buildable, ShippedCasesPass) {
  for (const char* name : {"hive-lid", "hive-lid-stock", "hive-lid-sweep", "bracketed-bed", "built-up-bed",
                           "rocking-clamp", "roof-flashing", "trestle-bed", "trestle-fit", "bench-folder"})
    EXPECT_EQ(listed(faults_in(shipped(name))), "") << name;
}

} // namespace

} // namespace bedbow
