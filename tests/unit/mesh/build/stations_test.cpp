#include "mesh/build/stations.h"

#include "tests/unit/mesh/build/plain_machine.h"
#include <gtest/gtest.h>

#include <algorithm>

namespace bedbow {
namespace {

void expect_places(const std::vector<double>& found, const std::vector<double>& wanted) {
  ASSERT_EQ(found.size(), wanted.size());
  for (std::size_t i = 0; i < found.size(); ++i) EXPECT_NEAR(found[i], wanted[i], 1e-12);
}

TEST(Stations, DivideABarEvenly) {
  expect_places(make_stations(test::plain_bed(), {}), {0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9});
  Machine m = test::plain_bed();
  m.solve.element_size = 0.4;
  expect_places(make_stations(m, {}), {0, 0.3, 0.6, 0.9});
}

// Every position along x is a station, and no element is longer than the element size.
TEST(Stations, CoverEndsJointsAndLoads) {
  Machine m = test::plain_bed();
  m.body(BodyKind::clamp).bars = {test::plain_bar("flat", 0.06, 0.02, 0.03, 0.01, 0.033, 0.8)};
  Post post;
  post.at = {0.111, left_out, left_out};
  m.posts = {post};
  Screws row;
  row.x = {0.222, 0.2221};
  m.screws = {row};
  Weld weld;
  weld.from = 0.317; // to the end of their common length
  m.welds = {weld};
  Support support;
  support.at = {0.444, 0, 0};
  m.supports = {support};
  Load load;
  load.kind = Load::Kind::line;
  load.on = test::bed_bar;
  load.from = {0.555, 0, 0};
  load.to = {0.666, 0, 0};
  m.loads = {load};
  Sheet sheet;
  sheet.centre = 0.45;
  sheet.width = 0.642;
  m.sheet = sheet;
  const auto stations = make_stations(m, {0.777});
  for (const double x : {0.0, 0.9, 0.033, 0.833, 0.111, 0.222, 0.2221, 0.317, 0.444, 0.555, 0.666, 0.129, 0.771, 0.777})
    EXPECT_GE(station_at(stations, x), 0) << x;
  EXPECT_TRUE(std::ranges::is_sorted(stations));
  EXPECT_DOUBLE_EQ(stations.front(), 0);
  EXPECT_DOUBLE_EQ(stations.back(), 0.9);
  for (std::size_t i = 1; i < stations.size(); ++i) {
    EXPECT_LE(stations[i] - stations[i - 1], m.solve.element_size + 2 * same_place);
    EXPECT_GT(stations[i] - stations[i - 1], same_place);
  }
}

TEST(Stations, PlacesWithinRoundingAreOne) {
  Machine m = test::plain_bed();
  m.solve.element_size = 1;
  expect_places(make_stations(m, {0.5, 0.5 + same_place / 2}), {0, 0.5 + same_place / 4, 0.9});
  expect_places(make_stations(m, {0.5, 0.5 + 3 * same_place}), {0, 0.5, 0.5 + 3 * same_place, 0.9});
}

TEST(Stations, AreFoundWithinRounding) {
  const std::vector<double> s{0, 0.1, 0.2};
  EXPECT_EQ(station_at(s, 0.1), 1);
  EXPECT_EQ(station_at(s, 0.1 + same_place / 2), 1);
  EXPECT_EQ(station_at(s, 0.2 - same_place / 2), 2);
  EXPECT_EQ(station_at(s, 0.15), -1);
  EXPECT_EQ(station_at(s, 0.3), -1);
}

} // namespace
} // namespace bedbow
