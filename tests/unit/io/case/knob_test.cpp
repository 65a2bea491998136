#include "io/case/case_reader.h"
#include "io/case/knob.h"
#include "mesh/build/mesher.h"
#include "solver/study/machine_knob.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace bedbow {
namespace {

const Knob* named(const std::vector<Knob>& all, const std::string& name) {
  const auto it = std::ranges::find(all, name, &Knob::name);
  return it == all.end() ? nullptr : &*it;
}

TEST(Knobs, AreSizesPlacesForcesAndPhysicalNumbers) {
  const Registries r = builtin_registries();
  const Case c = read_case(BEDBOW_SOURCE_DIR "/cases/rocking-clamp/case.toml", r);
  const auto all = knobs_of(c.source);
  ASSERT_TRUE(named(all, "cam.left.friction"));
  EXPECT_DOUBLE_EQ(named(all, "cam.left.friction")->si, 0.12);
  EXPECT_TRUE(named(all, "clamp.bar.rib.at[2]"));
  EXPECT_FALSE(named(all, "limits.bow"));
  EXPECT_FALSE(named(all, "solve.element_size"));
  const Case other = understand(turned(c.source, *named(all, "cam.left.friction"), 0.2), r);
  EXPECT_DOUBLE_EQ(other.machine.cams.front().friction, 0.2);
  EXPECT_DOUBLE_EQ(other.machine.cams.back().friction, 0.12);
}

TEST(MachineKnobs, AreWhatTheCaseNeedNotGive) {
  const Registries r = builtin_registries();
  Machine m = read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", r).machine;
  m.screws[1].shear_stiffness.reset();
  const auto all = machine_knobs(m, make_mesh(m, r.shapes), {"bolt steel 12.9"});
  std::vector<std::string> names;
  for (const MachineKnob& k : all) names.push_back(k.name);
  for (const char* name :
       {"S275JR: E and G", "DC01: E and G", "DC01: yield", "screws clamp plate on rib: shear stiffness"})
    EXPECT_NE(std::ranges::find(names, name), names.end()) << name;
  EXPECT_EQ(std::ranges::find(names, "bolt steel 12.9: E and G"), names.end());
  // The same metal, stiffer: nu stays.
  const auto steel = std::ranges::find(all, "S275JR: E and G", &MachineKnob::name);
  Machine stiffer = m;
  steel->set(stiffer, 2 * steel->value);
  for (std::size_t i = 0; i < m.materials.size(); ++i)
    if (m.materials[i].name == "S275JR") {
      EXPECT_DOUBLE_EQ(stiffer.materials[i].G, 2 * m.materials[i].G);
    }
}

} // namespace
} // namespace bedbow
