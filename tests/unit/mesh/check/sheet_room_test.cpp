// Nobody was told how deep a sheet goes in, or how short a flange may be. Figures by hand from cases/hive-lid.
#include "io/case/case_reader.h"
#include "io/case/fault_text.h"
#include "mesh/check/sheet_room.h"

#include <gtest/gtest.h>

namespace bedbow {

namespace {

Machine hive_as_drawn() {
  return read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries()).machine;
}

TEST(SheetRoom, ToTheStudsWithinTheSheet) {
  const auto room = sheet_room(hive_as_drawn(), builtin_registries().shapes);
  ASSERT_TRUE(room && room->depth);
  EXPECT_NEAR(*room->depth, 0.060, 1e-12); // middle studs M20 at y = 70 mm; those at the ends are beside the sheet
  EXPECT_EQ(room->depth_by, "post left middle");
  EXPECT_NEAR(room->least_flange, 0.0035, 1e-12); // 1.5 mm and an inside radius of 2 mm; the face begins at 1 mm
}

TEST(SheetRoom, NothingBehindANarrowSheet) {
  Machine m = hive_as_drawn();
  m.sheet->width = 0.2; // 350 to 550 mm
  const auto room = sheet_room(m, builtin_registries().shapes);
  ASSERT_TRUE(room);
  EXPECT_FALSE(room->depth);
  m.sheet->width = 0.76; // 70 to 830 mm: the eccentrics end there, and are beside it
  EXPECT_NEAR(*sheet_room(m, builtin_registries().shapes)->depth, 0.060, 1e-12);
}

TEST(SheetRoom, AFaceOffTheLineNeedsALongerFlange) {
  Machine m = hive_as_drawn();
  m.body(BodyKind::apron).bars[0].at.x() -= 0.005;
  EXPECT_NEAR(sheet_room(m, builtin_registries().shapes)->least_flange, 0.006, 1e-12);
}

// A builder who draws in inches once read millimetres.
TEST(FaultText, SpeaksTheUnitsOfTheCase) {
  Fault f;
  f.kind = FaultKind::gap;
  f.part = "bed.top";
  f.other = "bed.web";
  f.value = 0.0254;
  OutputUnits inches;
  inches.length = {"in", 0.0254};
  EXPECT_NE(fault_text(f, inches).find("by 1.00"), std::string::npos) << fault_text(f, inches);
  EXPECT_EQ(fault_text(f, inches).find(" mm"), std::string::npos);
  EXPECT_EQ(faults_line({f, f, f, f}, inches, 1).find("bed.top: it misses the bar bed.web"), 0U);
  EXPECT_NE(faults_line({f, f, f, f}, inches, 1).find("and 3 more"), std::string::npos);
}

TEST(FaultText, HasWordsForEveryKind) {
  for (const auto& kind : fault_kinds) {
    Fault f;
    f.kind = kind.value;
    EXPECT_GT(fault_text(f, {}).size(), 20U) << kind.word;
  }
}

} // namespace

} // namespace bedbow
