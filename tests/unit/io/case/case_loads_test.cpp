#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

using test::bench;
using test::expect_error;

const std::string panel_beside = R"([[panel]]
name = "cheek"
corner = ["0 mm", "500 mm", "0 mm"]
edge_a = ["200 mm", "0 mm", "0 mm"]
edge_b = ["0 mm", "100 mm", "0 mm"]
thickness = "6 mm"
material = "DC01"
)";

TEST(CaseLoads, PointLinePressure) {
  const Machine m = test::machine(bench(panel_beside + R"([[load]]
on = "bed.web"
at = ["450 mm", "10 mm", "-50 mm"]
force = ["0 N", "2 kN", "-100 lbf"]
moment = ["1 N*m", "0 N*m", "2 N*mm"]
[[load]]
on = "bed.web"
from = ["0 mm", "10 mm", "0 mm"]
to = ["20 in", "10 mm", "0 mm"]
per_length = ["0 N/mm", "0 N/mm", "-10 N/mm"]
[[load]]
panel = "cheek"
pressure = "-2 kPa"
[[load]]
gravity = true
)"));
  ASSERT_EQ(m.loads.size(), 3U);
  EXPECT_TRUE(m.gravity);
  const Load& point = m.loads[0];
  EXPECT_EQ(point.kind, Load::Kind::point);
  EXPECT_EQ(point.on.kind, Ref::Kind::bar);
  EXPECT_EQ(point.from, Eigen::Vector3d(0.45, 0.01, -0.05));
  EXPECT_EQ(point.to, point.from);
  EXPECT_DOUBLE_EQ(point.force.y(), 2000);
  EXPECT_NEAR(point.force.z(), -444.8221615, 1e-6); // 100 lbf: NIST SP 811
  EXPECT_DOUBLE_EQ(point.moment.x(), 1);
  EXPECT_DOUBLE_EQ(point.moment.z(), 0.002);
  const Load& line = m.loads[1];
  EXPECT_EQ(line.kind, Load::Kind::line);
  EXPECT_DOUBLE_EQ(line.to.x(), 0.508);
  EXPECT_DOUBLE_EQ(line.force.z(), -10e3);
  const Load& pressure = m.loads[2];
  EXPECT_EQ(pressure.kind, Load::Kind::pressure);
  EXPECT_EQ(pressure.panel, 0);
  EXPECT_DOUBLE_EQ(pressure.pressure, -2000);
  EXPECT_EQ(pressure.on.kind, Ref::Kind::none);
}

TEST(CaseLoads, HoldsAndDials) {
  const Machine m = test::machine(bench(panel_beside + R"([[hold]]
at = ["0 mm", "500 mm", "0 mm"]
holds = ["x", "ry"]
[[hold]]
from = ["0 mm", "500 mm", "0 mm"]
to = ["200 mm", "500 mm", "0 mm"]
holds = ["z"]
[[dial]]
name = "mid"
on = "cheek"
at = ["100 mm", "2 ft", "0 mm"]
reading = "0.31 mm"
direction = "y"
[[dial]]
name = "end"
on = "bed.web"
at = ["900 mm", "10 mm", "0 mm"]
)"));
  ASSERT_EQ(m.holds.size(), 2U);
  EXPECT_EQ(m.holds[0].from, m.holds[0].to);
  EXPECT_EQ(m.holds[0].holds, (DofMask{true, false, false, false, true, false}));
  EXPECT_EQ(m.holds[1].to, Eigen::Vector3d(0.2, 0.5, 0));
  EXPECT_EQ(m.holds[1].set, -1);
  ASSERT_EQ(m.dials.size(), 2U);
  EXPECT_EQ(m.dials[0].name, "mid");
  EXPECT_EQ(m.dials[0].on.kind, Ref::Kind::panel);
  EXPECT_DOUBLE_EQ(m.dials[0].at.y(), 24 * 0.0254);
  EXPECT_DOUBLE_EQ(m.dials[0].reading.value(), 0.31e-3);
  EXPECT_EQ(m.dials[0].direction, 1);
  EXPECT_FALSE(m.dials[1].reading);
  EXPECT_EQ(m.dials[1].direction, -1);
  EXPECT_FALSE(m.gravity);
}

TEST(CaseLoads, WrongValues) {
  expect_error(bench(), R"([[load]]
name = "w"
on = "bed.web"
at = ["450 mm", "10 mm", "0 mm"]
force = ["0 N", "0 N", "-5 kg"]
)",
               5, "load.w.force", {"is a mass", "expected a force"});
  expect_error(bench(), R"([[load]]
name = "w"
on = "bed.web"
from = ["450 mm", "10 mm", "0 mm"]
force = ["0 N", "0 N", "-5 N"]
)",
               5, "load.w.force", {"along a line the load is `per_length`"});
  expect_error(bench(), R"([[load]]
name = "w"
on = "ground"
at = ["450 mm", "10 mm", "0 mm"]
force = ["0 N", "0 N", "-5 N"]
)",
               3, "load.w.on", {"a load on the ground has no effect"});
  expect_error(bench(), R"([[load]]
name = "w"
panel = "cheek"
pressure = "1 kPa"
)",
               3, "load.w.panel", {"there is no panel \"cheek\""});
  expect_error(bench(), R"([[load]]
name = "w"
points = "tip"
force = ["0 N", "0 N", "-5 N"]
)",
               3, "load.w.points", {"the case has no [mesh]"});
  expect_error(bench(), R"([[hold]]
name = "h"
at = ["0 mm", "0 mm", "0 mm"]
from = ["0 mm", "0 mm", "0 mm"]
to = ["1 mm", "0 mm", "0 mm"]
holds = ["x"]
)",
               3, "hold.h.at", {"give either a point `at`, or a line"});
  expect_error(bench(), R"([[dial]]
name = "d"
on = "bed.web"
at = ["0 mm", "0 mm", "0 mm"]
reading = "1 mm"
)",
               1, "dial.d.direction", {"missing key \"direction\""});
}

} // namespace
} // namespace bedbow
