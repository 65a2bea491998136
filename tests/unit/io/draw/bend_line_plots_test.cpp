#include "io/draw/bend_line_plots.h"
#include "solver/findings/bend_line.h"

#include "tests/unit/support/findings_fixture.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

TEST(BendLinePlots, DistanceFromTheChord) {
  // A parabola on a slope: the chord takes the slope away, x (L - x) stays.
  std::vector<double> x;
  std::vector<double> w;
  for (int i = 0; i <= 6; ++i) {
    x.push_back(0.1 + 0.1 * i);
    w.push_back(3 + 0.5 * x.back() + 1e-3 * 0.1 * i * (0.6 - 0.1 * i));
  }
  const auto d = from_chord(x, w);
  for (int i = 0; i <= 6; ++i) EXPECT_NEAR(d[static_cast<std::size_t>(i)], 1e-3 * 0.1 * i * (0.6 - 0.1 * i), 1e-15);
  // The plot counts along w, the bow square to the chord.
  EXPECT_NEAR(*std::max_element(d.begin(), d.end()), bow_from_chord(x, w) * std::sqrt(1 + 0.5 * 0.5), 1e-15);
}

TEST(BendLinePlots, StepsWithoutValuesAreLeftOut) {
  const Findings f = test::findings();
  const auto plots = bend_line_plots(f, {}, {});
  for (const Plot& p : plots) {
    EXPECT_FALSE(p.series.empty()) << p.title;
    for (const PlotSeries& s : p.series)
      EXPECT_TRUE(std::any_of(s.y.begin(), s.y.end(), [](double v) { return std::isfinite(v); })) << p.title;
  }
  EXPECT_EQ(plots.back().file, "angle_deviation");
  EXPECT_EQ(plots.back().series.size(), 1U) << "no angle while clamping";
}

TEST(BendLinePlots, DeviationIsCountedFromTheMean) {
  Findings f = test::findings();
  StepResult& bend = f.steps.back();
  bend.bow.angle_mean = 0.01;
  for (double& v : bend.bend_line.angle_deviation) v = 0.01 + 0.001;
  const auto plots = bend_line_plots(f, {}, {});
  for (const double v : plots.back().series.back().y) EXPECT_NEAR(v, 0.001 * 180 / std::numbers::pi, 1e-12);
}

TEST(BendLinePlots, ClampForceIsShownPerLength) {
  Findings f = test::findings();
  f.steps[0].bend_line.clamp_force.assign(f.steps[0].bend_line.x.size(), 8000); // N/m
  f.steps[0].bend_line.clamp_reserve = f.steps[0].bend_line.clamp_force;
  OutputUnits us{{"in", 0.0254}, {"lbf", 4.4482216152605}, {"ksi", 6.894757e6}};
  for (const auto& [units, value] : {std::pair{OutputUnits{}, 8.0}, std::pair{us, 8000 * 0.0254 / 4.4482216152605}})
    for (const Plot& p : bend_line_plots(f, {}, units))
      if (p.file == "clamp_pressure" || p.file == "clamp_reserve") {
        EXPECT_NEAR(p.series[0].y[0], value, 1e-9) << p.y_label;
      }
}

TEST(BendLinePlots, NoBendLineNoPlots) {
  EXPECT_TRUE(bend_line_plots(test::frame_findings(), {}, {}).empty());
}

} // namespace

} // namespace bedbow
