/// \file
/// Layout of a plot's legend and frame. For io/draw/plot.cpp.
#pragma once

#include "io/draw/plot.h"
#include "io/draw/plot_axis.h"

#include <string>
#include <vector>

namespace bedbow {

inline constexpr double plot_text = 13;  ///< height of the text
inline constexpr double plot_title = 16; ///< of the title
inline constexpr double plot_swatch = 26;

/// Width of text in a common sans serif at about 0.56 of its height a letter.
double text_width(const std::string& text, double height = plot_text);

/// The same for the bold letters of a title, about 0.68 of their height.
double title_width(const std::string& text, double height);

struct LegendItem {
  std::string name;
  double x = 0, y = 0; ///< left end and base line
};

struct PlotLayout {
  Axis x, y;
  PlotFrame frame;
  std::vector<LegendItem> legend; ///< series, then limits
};

/// Throws std::logic_error naming a series whose x and y differ in length.
PlotLayout lay_out(const Plot& plot, const PlotSize& size);

} // namespace bedbow
