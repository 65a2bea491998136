#include "io/case/case_reader.h"
#include "solver/analysis.h"
#include "solver/study/capacity.h"
#include "solver/study/summary_metrics.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

namespace {

const Case& hive_lid() {
  static const Case c = read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries());
  return c;
}

} // namespace

// The prepared machine must say what a machine analysed by itself says. The two have different stations, and the
// pressure under the nose is one pad a station: that moves bow and spread by less than one percent.
TEST(PreparedMachine, SaysWhatAnalyseSays) {
  const Registries registries = builtin_registries();
  const std::vector<SheetPlace> places{{0.1, 0.15}, {0.3, 0.4}, {0.6, 0.45}, {0.9, 0.45}};
  PreparedMachine prepared(hive_lid().machine, registries, places);
  for (const SheetPlace& p : places)
    for (const double thickness : {0.8e-3, 2e-3}) {
      Machine alone = hive_lid().machine;
      alone.sheet->width = p.width;
      alone.sheet->centre = p.centre;
      alone.sheet->thickness = thickness;
      const SummaryMetrics a = headline(analyse(alone, registries, {.fields = false}));
      const SummaryMetrics b = headline(prepared.solve(p, alone.sheet->material, thickness));
      EXPECT_NEAR(b.angle_spread / a.angle_spread, 1, 0.01) << p.width << " " << thickness;
      EXPECT_NEAR(b.utilisation / a.utilisation, 1, 0.01) << p.width << " " << thickness;
      for (std::size_t k = 0; k < 3; ++k) EXPECT_NEAR(b.bow[k], a.bow[k], 0.01 * a.bow[k] + 1e-7);
    }
}

// What is called thickest passes by an analysis of its own, and a tenth of a millimetre more does not.
TEST(Capacity, ThickestIsWhereTheVerdictTurns) {
  const Registries registries = builtin_registries();
  CapacityTask task;
  task.places = {{0.3, 0.4}, {0.6, 0.45}, {0.9, 0.45}};
  task.materials = {hive_lid().machine.sheet->material};
  const CapacityTable table = find_capacity(hive_lid().machine, registries, task);
  ASSERT_EQ(table.rows.size(), 3U);
  for (const Capacity& c : table.rows) {
    Machine alone = hive_lid().machine;
    alone.sheet->width = c.place.width;
    alone.sheet->centre = c.place.centre;
    for (const auto& [more, pass] : {std::pair{-0.1e-3, true}, std::pair{0.1e-3, false}}) {
      alone.sheet->thickness = c.thickness + more;
      EXPECT_EQ(analyse(alone, registries, {.fields = false}).verdict.pass, pass) << c.place.width << " " << more;
    }
  }
  EXPECT_GT(table.rows[0].thickness, table.rows[1].thickness); // a narrower sheet may be thicker
  EXPECT_GT(table.rows[1].thickness, table.rows[2].thickness);
}

// Friction takes the push off the studs: the same machine bends thicker sheet that holds itself. With either
// coefficient the answer is where an analysis with it turns.
TEST(Capacity, IsThatOfTheSheetsFriction) {
  const Registries registries = builtin_registries();
  CapacityTask task;
  task.places = {{0.1, 0.45}};
  task.materials = {hive_lid().machine.sheet->material};
  double thickest[2];
  for (const int held : {0, 1}) {
    Machine m = hive_lid().machine;
    m.sheet->friction = held ? 0.15 : 0;
    thickest[held] = find_capacity(m, registries, task).rows.at(0).thickness;
    m.sheet->width = 0.1;
    for (const auto& [more, pass] : {std::pair{-0.1e-3, true}, std::pair{0.1e-3, false}}) {
      m.sheet->thickness = thickest[held] + more;
      EXPECT_EQ(analyse(m, registries, {.fields = false}).verdict.pass, pass) << held << " " << more;
    }
  }
  EXPECT_GT(thickest[1], 1.1 * thickest[0]);
}

TEST(Capacity, WantsALimit) {
  Machine m = hive_lid().machine;
  m.limits = {};
  CapacityTask task;
  task.places = {{0.3, 0.4}};
  task.materials = {m.sheet->material};
  EXPECT_THROW(find_capacity(m, builtin_registries(), task), std::invalid_argument);
}

} // namespace bedbow
