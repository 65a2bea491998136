#include "io/case/case_reader.h"
#include "mesh/build/mesher.h"
#include "solver/analysis.h"
#include "solver/study/prepared.h"
#include "solver/study/summary_metrics.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

const Case& hive_lid() {
  static const Case c = read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries());
  return c;
}

/// The folder with a nose of loose fingers, 60 mm each.
Machine with_fingers() {
  Machine m = hive_lid().machine;
  Fingers f;
  for (int i = 0; i < 12; ++i) {
    f.widths.push_back(0.06);
    f.starts.push_back(0.09 + 0.06 * i);
  }
  f.reach = 0.03;
  f.thickness = 0.012;
  f.material = m.bar({Ref::Kind::bar, BodyKind::clamp, m.nose.bar}).material;
  m.fingers = f;
  m.solve.element_size = 0.015; // fingers move each by itself, and the nose is read at quarters of an element
  return m;
}

void expect_same(const SummaryMetrics& a, const SummaryMetrics& b, double within, const std::string& what) {
  EXPECT_NEAR(b.angle_spread / a.angle_spread, 1, within) << what;
  EXPECT_NEAR(b.utilisation / a.utilisation, 1, within) << what;
  for (std::size_t k = 0; k < 3; ++k) EXPECT_NEAR(b.bow[k], a.bow[k], within * a.bow[k] + 1e-7) << what;
}

} // namespace

// Two fingers meet at one x. The pad at the left edge of the right one was once put under the left one, so that every
// finger but the first was pressed at its middle and right edge only.
TEST(Pads, EachFingerIsPressedAtBothItsEdges) {
  const Machine m = with_fingers();
  const Mesh mesh = make_mesh(m, builtin_registries().shapes);
  for (std::size_t i = 0; i < mesh.fingers.size(); ++i) {
    std::vector<double> at;
    for (const Joint& j : mesh.joints) {
      if (j.kind != JointKind::pad) continue;
      const int node = j.b.terms.front().node;
      if (node == mesh.fingers[i].pad || node == mesh.fingers[i].tip) at.push_back(j.b.at.x());
    }
    const double left = std::max(m.fingers->starts[i], m.sheet->left());
    const double right = std::min(m.fingers->starts[i] + m.fingers->widths[i], m.sheet->right());
    if (right - left < 1e-9) {
      EXPECT_TRUE(at.empty());
      continue;
    }
    ASSERT_EQ(at.size(), 3U) << i;
    EXPECT_NEAR(at.front(), left, 1e-9);
    EXPECT_NEAR(at.back(), right, 1e-9);
  }
}

// A post 2 mm right of a screw had no pad under it, one 2 mm left of a screw had.
TEST(Pads, StandUnderEveryPostAndAddUpToTheSheet) {
  Machine m = hive_lid().machine;
  m.posts[1].at.x() = 0.327;
  m.posts[2].at.x() = 0.573;
  for (const double size : {0.015, 0.00375, 0.001}) {
    m.solve.element_size = size;
    const Mesh mesh = make_mesh(m, builtin_registries().shapes);
    double sum = 0;
    std::vector<double> at;
    for (const Joint& j : mesh.joints) {
      if (j.kind != JointKind::pad || (!at.empty() && j.a.at.x() == at.back())) continue; // a station's rows count once
      sum += j.tributary;
      at.push_back(j.a.at.x());
    }
    EXPECT_NEAR(sum, m.sheet->width, 1e-12) << size;
    for (const double x : {m.sheet->left(), 0.327, 0.573, m.sheet->right()})
      EXPECT_EQ(std::ranges::count_if(at, [&](double v) { return std::abs(v - x) < 1e-9; }), 1) << x << " at " << size;
  }
}

// Beyond the sheet, and only there, the faces meet once its thickness less the shims is used up; the strip beside the
// sheet's end is held apart by the sheet.
TEST(Pads, BeyondTheSheetLeaveItsThickness) {
  Machine m = hive_lid().machine;
  m.body(BodyKind::clamp).crown = {{0.0, 0.9}, {0.0, 0.0009}};
  const Mesh mesh = make_mesh(m, builtin_registries().shapes);
  double left = 1, right = 0, sum = 0, last = -1;
  for (const Joint& j : mesh.joints) {
    if (j.kind != JointKind::touch) continue;
    const double x = j.a.at.x();
    const bool further_row = x == last;
    last = x;
    EXPECT_TRUE(x < m.sheet->left() - 1e-9 || x > m.sheet->right() + 1e-9) << x;
    EXPECT_NEAR(j.gap[uz], 0.001 * x - m.sheet->thickness, 1e-12);
    EXPECT_EQ(j.sense[uz], UnilateralType::compression);
    left = std::min(left, x);
    right = std::max(right, x);
    if (!further_row) sum += j.tributary;
  }
  EXPECT_NEAR(left, 0, 1e-9);
  EXPECT_NEAR(right, 0.9, 1e-9);
  EXPECT_GT(sum, 0.9 - m.sheet->width - 0.03);
  EXPECT_LT(sum, 0.9 - m.sheet->width);
}

// Fingers, sheets that end within one, and sheets thicker and thinner than the one the fingers were meshed for: what
// the prepared machine says is what an analysis of that one sheet says. The stations differ, and so does the height of
// the fingers' roots on the bar, by a part of a millimetre in 60: one percent.
TEST(PreparedMachine, SaysWhatAnalyseSaysOfFingers) {
  const Registries registries = builtin_registries();
  const Machine m = with_fingers();
  const std::vector<SheetPlace> places{{0.1, 0.25}, {0.3, 0.4}, {0.6, 0.45}, {0.37, 0.47}};
  PreparedMachine prepared(m, registries, places);
  for (const SheetPlace& p : places)
    for (const double thickness : {0.8e-3, 1.5e-3, 2.5e-3}) {
      Machine alone = m;
      alone.sheet->width = p.width;
      alone.sheet->centre = p.centre;
      alone.sheet->thickness = thickness;
      for (Bar& bar : alone.body(BodyKind::clamp).bars) bar.at.y() += thickness - m.sheet->thickness;
      const Findings one = analyse(alone, registries, {.fields = false});
      const Findings other = prepared.solve(p, alone.sheet->material, thickness);
      ASSERT_EQ(one.status, Status::ok);
      ASSERT_EQ(other.status, Status::ok);
      expect_same(headline(one), headline(other), 0.01,
                  std::to_string(p.width) + " wide, " + std::to_string(thickness) + " thick");
    }
}

// A station 3.75 mm beside a sheet's end once took the pad from that end, where the pressure is greatest: the spread of
// this sheet came out 29 % too large, and the thickest sheet at mirrored places of a symmetrical machine differed.
TEST(PreparedMachine, SheetsEndOnAPadWhateverOthersLieThere) {
  const Registries registries = builtin_registries();
  const std::vector<SheetPlace> places{{0.1125, 0.25}, {0.1125, 0.65}};
  PreparedMachine prepared(hive_lid().machine, registries, places);
  const int material = hive_lid().machine.sheet->material;
  const SummaryMetrics left = headline(prepared.solve(places[0], material, 2.6e-3));
  const SummaryMetrics right = headline(prepared.solve(places[1], material, 2.6e-3));
  expect_same(left, right, 1e-3, "mirrored");
}

} // namespace bedbow
