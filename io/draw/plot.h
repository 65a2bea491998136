/// \file
/// Line and point plots as SVG: axes with units, a legend, limits, a text alternative, colours that colour-blind
/// readers can tell apart, and a separate dash or marker for each series, so that nothing depends on colour alone.
///
///     Plot plot{"Bow of the clamp", "x along the bend line [mm]", "bow [mm]"};
///     plot.series.push_back({"clamp", x, bow});
///     plot.limits.push_back({"limit", 0.25});
///     write_file("bow.svg", plot_svg(plot));
#pragma once

#include <string>
#include <vector>

namespace bedbow {

/// One series of values. NaN in y breaks the line there.
struct PlotSeries {
  enum class Kind { line, points };
  std::string name;
  std::vector<double> x{}, y{}; ///< of equal length, in the unit of their axis
  Kind kind = Kind::line;
};

/// A limit, drawn across the plot.
struct PlotLimit {
  std::string name;
  double value = 0; ///< in the unit of y
};

struct Plot {
  std::string title;
  std::string x_label, y_label; ///< with the unit: "x along the bend line [mm]"
  std::vector<PlotSeries> series{};
  std::vector<PlotLimit> limits{};
  std::string description{}; ///< text alternative; made from the series where it is empty
  std::string file{};        ///< name of its file without ending: "bow_clamp"
};

/// Size of a plot in its own units (px at natural size).
struct PlotSize {
  double width = 720, height = 400;
};

/// Position of the values in the picture, so that a script can find them under the pointer.
struct PlotFrame {
  double left = 0, top = 0, width = 0, height = 0; ///< of the plotting area
  double x_low = 0, x_high = 1, y_low = 0, y_high = 1;
};

/// The plot as one svg element, which is a whole SVG 1.1 file too. Throws std::logic_error naming a series whose
/// x and y differ in length.
/// The elements carry classes (plot-paper, plot-ink, plot-grid, plot-line plot-0 ...), by which a page may recolour
/// them; the attribute data-frame holds the PlotFrame's numbers in their order.
std::string plot_svg(const Plot& plot, const PlotSize& size = {});

/// The frame that plot_svg uses for the same arguments.
PlotFrame plot_frame(const Plot& plot, const PlotSize& size = {});

/// Text alternative of the plot: the description, or for each series its least and greatest value and their positions.
std::string plot_alternative(const Plot& plot);

/// Colours of series 0, 1, ...: Okabe and Ito, "Color Universal Design", 2008. Further series repeat them.
std::string plot_colour(std::size_t series);

} // namespace bedbow
