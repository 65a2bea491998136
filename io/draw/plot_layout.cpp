#include "io/draw/plot_layout.h"

#include "io/text/text.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr double edge = 10;           ///< free all around
constexpr double legend_row = 20;     ///< from one base line to the next
constexpr double legend_gap = 18;     ///< between two names
constexpr double letter_width = 0.56; ///< of a letter's height
constexpr double bold_width = 0.68;   ///< of a bold one

struct Range {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  void hold(double value) {
    if (!std::isfinite(value)) return;
    low = std::min(low, value);
    high = std::max(high, value);
  }
};

void check_series(const Plot& plot) {
  for (const PlotSeries& s : plot.series)
    if (s.x.size() != s.y.size())
      throw std::logic_error("plot \"" + plot.title + "\": series \"" + s.name + "\" has " +
                             std::to_string(s.x.size()) + " x and " + std::to_string(s.y.size()) +
                             " y; they must be equal in number");
}

std::vector<LegendItem> legend_of(const Plot& plot, double width, double& y) {
  std::vector<std::string> names;
  for (const PlotSeries& s : plot.series) names.push_back(s.name);
  for (const PlotLimit& l : plot.limits) names.push_back(l.name);
  std::vector<LegendItem> out;
  double x = edge;
  for (const std::string& name : names) {
    const double wide = plot_swatch + 6 + text_width(name);
    if (x > edge && x + wide > width - edge) {
      x = edge;
      y += legend_row;
    }
    out.push_back({name, x, y});
    x += wide + legend_gap;
  }
  return out;
}

} // namespace

double text_width(const std::string& text, double height) {
  return display_width(text) * height * letter_width;
}

double title_width(const std::string& text, double height) {
  return display_width(text) * height * bold_width;
}

PlotLayout lay_out(const Plot& plot, const PlotSize& size) {
  check_series(plot);
  Range x;
  Range y;
  for (const PlotSeries& s : plot.series) {
    for (const double v : s.x) x.hold(v);
    for (const double v : s.y) y.hold(v);
  }
  for (const PlotLimit& l : plot.limits) y.hold(l.value);

  PlotLayout out;
  out.x = axis_over(x.low, x.high, static_cast<int>(size.width / 70), true);
  out.y = axis_over(y.low, y.high, static_cast<int>(size.height / 60));
  double base = edge + plot_title + 24;
  out.legend = legend_of(plot, size.width, base);
  double widest = 0;
  for (const double mark : out.y.marks()) widest = std::max(widest, text_width(out.y.label(mark)));
  const double left = edge + plot_text + 10 + widest + 6;
  const double top = base + 16;
  const double below = 2 * plot_text + 22;
  out.frame = {left,
               top,
               size.width - left - 2 * edge,
               std::max(20.0, size.height - top - below),
               out.x.low,
               out.x.high,
               out.y.low,
               out.y.high};
  return out;
}

} // namespace bedbow
