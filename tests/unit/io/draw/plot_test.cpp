#include "io/draw/plot.h"
#include "io/draw/plot_axis.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <regex>
#include <sstream>

namespace bedbow {

namespace {

Plot parabola() {
  Plot plot{"Bow <of> the clamp", "x [mm]", "bow [mm]"};
  PlotSeries s{"clamp", {}, {}};
  for (int i = 0; i <= 10; ++i) {
    s.x.push_back(100 + 60.0 * i);
    s.y.push_back(0.03 * i * (10 - i) / 25);
  }
  plot.series.push_back(s);
  plot.limits.push_back({"limit", 0.25});
  return plot;
}

/// The points of the first line drawn.
std::vector<std::pair<double, double>> drawn(const std::string& svg) {
  std::smatch found;
  const std::regex path("class=\"plot-line plot-0\"[^>]*d=\"([^\"]*)\"");
  if (!std::regex_search(svg, found, path)) return {};
  std::vector<std::pair<double, double>> out;
  std::string d = found[1];
  for (char& c : d)
    if (c == 'M' || c == 'L') c = ' ';
  std::istringstream in(d);
  for (double x = 0, y = 0; in >> x >> y;) out.emplace_back(x, y);
  return out;
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

TEST(PlotAxis, StepsAreRoundAndHoldTheData) {
  const Axis a = axis_over(0.013, 0.287, 5);
  EXPECT_DOUBLE_EQ(a.step, 0.1);
  EXPECT_DOUBLE_EQ(a.low, 0);
  EXPECT_DOUBLE_EQ(a.high, 0.30000000000000004);
  EXPECT_EQ(a.decimals, 1);
  const Axis b = axis_over(-370, 1220, 8);
  EXPECT_DOUBLE_EQ(b.step, 200);
  EXPECT_EQ(b.label(-200), "\u2212200");
  EXPECT_EQ(b.marks().size(), 10U) << "-400 to 1400";
  EXPECT_EQ(axis_over(0, 5e-5, 5).decimals, 5);
}

TEST(PlotAxis, ATightAxisEndsAtTheData) {
  const Axis a = axis_over(150, 750, 6, true);
  EXPECT_DOUBLE_EQ(a.low, 150);
  EXPECT_DOUBLE_EQ(a.high, 750);
  EXPECT_DOUBLE_EQ(a.marks().front(), 200);
  EXPECT_DOUBLE_EQ(a.marks().back(), 700);
}

TEST(PlotAxis, WhatIsNoRangeIsMadeOne) {
  const double inf = std::numeric_limits<double>::infinity();
  EXPECT_LT(axis_over(inf, -inf, 5).low, axis_over(inf, -inf, 5).high);
  const Axis flat = axis_over(7, 7, 5);
  EXPECT_LT(flat.low, 7);
  EXPECT_GT(flat.high, 7);
  EXPECT_GT(axis_over(0, 0, 5).high, 0);
  EXPECT_DOUBLE_EQ(axis_over(3, 1, 2).low, 1);
}

TEST(Plot, ValuesStandWhereTheFrameSays) {
  const Plot plot = parabola();
  const PlotFrame f = plot_frame(plot);
  const auto points = drawn(plot_svg(plot));
  ASSERT_EQ(points.size(), plot.series[0].x.size());
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double x = f.x_low + (points[i].first - f.left) / f.width * (f.x_high - f.x_low);
    const double y = f.y_high - (points[i].second - f.top) / f.height * (f.y_high - f.y_low);
    // Half of the hundredth of a pixel to which places are written.
    EXPECT_NEAR(x, plot.series[0].x[i], 0.006 / f.width * (f.x_high - f.x_low));
    EXPECT_NEAR(y, plot.series[0].y[i], 0.006 / f.height * (f.y_high - f.y_low));
  }
  EXPECT_GE(f.y_high, 0.25) << "the limit is in sight";
}

TEST(Plot, AGapBreaksTheLine) {
  Plot plot = parabola();
  plot.series[0].y[4] = std::nan("");
  const std::string svg = plot_svg(plot);
  EXPECT_EQ(drawn(svg).size(), 10U);
  std::smatch found;
  ASSERT_TRUE(std::regex_search(svg, found, std::regex("plot-line plot-0\"[^>]*d=\"([^\"]*)\"")));
  EXPECT_EQ(count(found[1], "M"), 2U);
}

TEST(Plot, TextIsSafeAndSaysWhatIsSeen) {
  const std::string svg = plot_svg(parabola());
  EXPECT_NE(svg.find("Bow &lt;of&gt; the clamp"), std::string::npos);
  EXPECT_NE(svg.find("<desc>bow [mm] over x [mm]. clamp: least 0 at 100, greatest 0.03 at 400. limit: 0.25.</desc>"),
            std::string::npos);
  EXPECT_EQ(svg.find("nan"), std::string::npos);
}

TEST(Plot, PointsHaveOneMarkEachAndOneInTheLegend) {
  Plot plot = parabola();
  plot.series[0].kind = PlotSeries::Kind::points;
  EXPECT_EQ(count(plot_svg(plot), "class=\"plot-mark"), 12U);
}

TEST(Plot, ALongLegendGoesOnInTheNextRow) {
  Plot plot = parabola();
  for (int i = 0; i < 6; ++i) plot.series.push_back({"bend " + std::to_string(i * 15) + " deg", {100, 700}, {0, 0.1}});
  EXPECT_GT(plot_frame(plot, {380, 320}).top, plot_frame(plot, {1400, 320}).top + 30);
}

TEST(Plot, LengthsThatDifferAreNamed) {
  Plot plot = parabola();
  plot.series[0].y.pop_back();
  try {
    plot_svg(plot);
    FAIL() << "accepted";
  } catch (const std::logic_error& e) {
    EXPECT_STREQ(e.what(),
                 "plot \"Bow <of> the clamp\": series \"clamp\" has 11 x and 10 y; they must be equal in number");
  }
}

TEST(Plot, EmptyPlotsAreStillPlots) {
  EXPECT_NE(plot_svg({"Nothing", "x", "y"}).find("</svg>"), std::string::npos);
}

} // namespace

} // namespace bedbow
