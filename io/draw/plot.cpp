#include "io/draw/plot.h"

#include "io/draw/plot_layout.h"
#include "io/text/xml.h"
#include "io/units/output_units.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

// Okabe and Ito without their yellow, which is too pale for a thin line on white.
constexpr std::array colours{"#0072b2", "#d55e00", "#009e73", "#cc79a7", "#56b4e9", "#e69f00", "#000000"};
constexpr std::array dashes{"", "8 4", "2 3", "10 3 2 3", "14 4", "5 2"};

/// SVG text with numbers to hundredths of a pixel.
class Svg {
public:
  Svg& operator<<(const std::string& text) {
    text_ += text;
    return *this;
  }
  Svg& operator<<(double number) {
    text_ += fixed(number, 2);
    return *this;
  }
  [[nodiscard]] const std::string& text() const { return text_; }

private:
  std::string text_;
};

class Painter {
public:
  Painter(const Plot& plot, const PlotSize& size)
      : plot_(plot)
      , size_(size)
      , lay_(lay_out(plot, size)) {}

  std::string paint() {
    head();
    axes();
    limits();
    for (std::size_t i = 0; i < plot_.series.size(); ++i) series(i);
    legend();
    svg_ << "</svg>\n";
    return svg_.text();
  }

private:
  [[nodiscard]] double px(double x) const { return lay_.frame.left + lay_.x.place(x) * lay_.frame.width; }
  [[nodiscard]] double py(double y) const { return lay_.frame.top + (1 - lay_.y.place(y)) * lay_.frame.height; }

  void head() {
    const PlotFrame& f = lay_.frame;
    svg_ << "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"plot\" role=\"img\" width=\"" << size_.width
         << "\" height=\"" << size_.height << "\" viewBox=\"0 0 " << size_.width << " " << size_.height
         << "\" font-family=\"system-ui, 'DejaVu Sans', sans-serif\" font-size=\"" << plot_text << "\" data-frame=\"";
    for (const double v : {f.left, f.top, f.width, f.height}) svg_ << v << " ";
    svg_ << number(f.x_low) + " " + number(f.x_high) + " " + number(f.y_low) + " " + number(f.y_high) + "\">\n";
    svg_ << "<title>" + xml_text(plot_.title) + "</title>\n<desc>" + xml_text(plot_alternative(plot_)) + "</desc>\n";
    svg_ << "<rect class=\"plot-paper\" fill=\"#ffffff\" width=\"" << size_.width << "\" height=\"" << size_.height
         << "\"/>\n";
    // A title too long for the space is set smaller rather than cut off.
    const double height = std::min(plot_title, plot_title * (size_.width - 20) / title_width(plot_.title, plot_title));
    text(10, 10 + plot_title, plot_.title, "start", " font-weight=\"600\" font-size=\"" + fixed(height, 1) + "\"");
  }

  static std::string number(double value) {
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%.9g", value);
    return text.data();
  }

  void text(double x, double y, const std::string& what, const std::string& anchor, const std::string& more = "") {
    svg_ << "<text class=\"plot-ink\" fill=\"#1a1a1a\" x=\"" << x << "\" y=\"" << y
         << "\" text-anchor=\"" + anchor + "\"" + more + ">" + xml_text(what) + "</text>\n";
  }

  void rule(const std::string& look, double x1, double y1, double x2, double y2) {
    svg_ << "<line " + look + " x1=\"" << x1 << "\" y1=\"" << y1 << "\" x2=\"" << x2 << "\" y2=\"" << y2 << "\"/>\n";
  }

  void axes() {
    const PlotFrame& f = lay_.frame;
    const double right = f.left + f.width;
    const double bottom = f.top + f.height;
    const std::string grid = R"(class="plot-grid" stroke="#d5d5d5")";
    const std::string zero = R"(class="plot-axis" stroke="#6a6a6a")";
    for (const double mark : lay_.y.marks()) {
      rule(std::abs(mark) < lay_.y.step * 1e-6 ? zero : grid, f.left, py(mark), right, py(mark));
      text(f.left - 6, py(mark) + plot_text * 0.35, lay_.y.label(mark), "end");
    }
    for (const double mark : lay_.x.marks()) {
      rule(grid, px(mark), f.top, px(mark), bottom);
      text(px(mark), bottom + plot_text + 5, lay_.x.label(mark), "middle");
    }
    rule(zero, f.left, bottom, right, bottom);
    text(f.left + f.width / 2, bottom + 2 * plot_text + 12, plot_.x_label, "middle");
    const double x = 10 + plot_text * 0.8;
    const double y = f.top + f.height / 2;
    text(x, y, plot_.y_label, "middle", " transform=\"rotate(-90 " + fixed(x, 2) + " " + fixed(y, 2) + ")\"");
  }

  void limits() {
    for (const PlotLimit& l : plot_.limits)
      rule(limit_look(), lay_.frame.left, py(l.value), lay_.frame.left + lay_.frame.width, py(l.value));
  }

  static std::string limit_look() {
    return R"(class="plot-limit" stroke="#8a1c1c" stroke-width="2" stroke-dasharray="3 5")";
  }

  static std::string line_look(std::size_t i) {
    return "class=\"plot-line plot-" + std::to_string(i % colours.size()) + "\" fill=\"none\" stroke=\"" +
           plot_colour(i) + "\" stroke-width=\"2\" stroke-dasharray=\"" + dashes.at(i % dashes.size()) + "\"";
  }

  static std::string mark_look(std::size_t i) {
    return "class=\"plot-mark plot-" + std::to_string(i % colours.size()) + "\" fill=\"" + plot_colour(i) + "\"";
  }

  /// Circles, squares and triangles in turn.
  void mark(std::size_t i, double x, double y) {
    constexpr double r = 3.5;
    svg_ << "<path " + mark_look(i) + " d=\"M" << x << " " << y;
    if (i % 3 == 0)
      svg_ << "m-3.5 0a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0 -7 0z\"/>\n";
    else if (i % 3 == 1)
      svg_ << "m-3 -3h6v6h-6z\"/>\n";
    else
      svg_ << "m0 " << -r - 0.5 << "l" << r + 0.5 << " 7h" << -2 * r - 1 << "z\"/>\n";
  }

  void series(std::size_t i) {
    const PlotSeries& s = plot_.series[i];
    if (s.kind == PlotSeries::Kind::points) {
      for (std::size_t k = 0; k < s.x.size(); ++k)
        if (std::isfinite(s.x[k]) && std::isfinite(s.y[k])) mark(i, px(s.x[k]), py(s.y[k]));
      return;
    }
    svg_ << "<path " + line_look(i) + " d=\"";
    bool down = false; // whether the pen is on the paper
    for (std::size_t k = 0; k < s.x.size(); ++k) {
      const bool shown = std::isfinite(s.x[k]) && std::isfinite(s.y[k]);
      if (shown) svg_ << (down ? "L" : "M") << px(s.x[k]) << " " << py(s.y[k]);
      down = shown;
    }
    svg_ << "\"/>\n";
  }

  void legend() {
    for (std::size_t i = 0; i < lay_.legend.size(); ++i) {
      const LegendItem& item = lay_.legend[i];
      const double y = item.y - plot_text * 0.35;
      if (i >= plot_.series.size())
        rule(limit_look(), item.x, y, item.x + plot_swatch, y);
      else if (plot_.series[i].kind == PlotSeries::Kind::points)
        mark(i, item.x + plot_swatch / 2, y);
      else
        rule(line_look(i), item.x, y, item.x + plot_swatch, y);
      text(item.x + plot_swatch + 6, item.y, item.name, "start");
    }
  }

  const Plot& plot_;
  PlotSize size_;
  PlotLayout lay_;
  Svg svg_;
};

} // namespace

std::string plot_svg(const Plot& plot, const PlotSize& size) {
  return Painter(plot, size).paint();
}

PlotFrame plot_frame(const Plot& plot, const PlotSize& size) {
  return lay_out(plot, size).frame;
}

std::string plot_alternative(const Plot& plot) {
  if (!plot.description.empty()) return plot.description;
  std::string out = plot.y_label + " over " + plot.x_label + ".";
  const auto three_digits = [](double value) {
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%.3g", value);
    return std::string(text.data());
  };
  for (const PlotSeries& s : plot.series) {
    std::size_t low = s.y.size();
    std::size_t high = s.y.size();
    for (std::size_t k = 0; k < s.y.size(); ++k) {
      if (!std::isfinite(s.y[k])) continue;
      if (low == s.y.size() || s.y[k] < s.y[low]) low = k;
      if (high == s.y.size() || s.y[k] > s.y[high]) high = k;
    }
    if (low == s.y.size()) {
      out += " " + s.name + ": no values.";
      continue;
    }
    out += " " + s.name + ": least " + three_digits(s.y[low]) + " at " + three_digits(s.x[low]) + ", greatest " +
           three_digits(s.y[high]) + " at " + three_digits(s.x[high]) + ".";
  }
  for (const PlotLimit& l : plot.limits) out += " " + l.name + ": " + three_digits(l.value) + ".";
  return out;
}

std::string plot_colour(std::size_t series) {
  return colours.at(series % colours.size());
}

} // namespace bedbow
