/// \file
/// A table of values over x as shaded rows of an SVG picture, one row per value of a second quantity, with marks along
/// x.
#pragma once

#include <string>
#include <vector>

namespace bedbow {

struct HeatCell {
  double from = 0, to = 0; ///< along x
  double value = 0;        ///< NaN: none possible here
  std::string text;        ///< written into it
};

struct HeatRow {
  std::string label; ///< at its left
  std::vector<HeatCell> cells;
};

struct HeatMap {
  std::string title, x_label;
  std::string row_head;      ///< above the rows' labels
  std::vector<HeatRow> rows; ///< from the top
  struct Mark {
    double x = 0;
    std::string label;
  };
  std::vector<Mark> marks; ///< dashed lines: where the posts stand
  double x_low = 0, x_high = 1;
  std::string note; ///< below the picture: meaning of the shade
};

enum class HeatMapSize { wide, narrow };

/// The picture as one svg element: the greater the value, the darker. Values are also written, so that nothing depends
/// on the shade alone.
/// The elements carry classes (plot-paper, plot-ink) by which a page may colour paper and words anew.
/// \param size narrow: for a telephone, 360 wide.
std::string heat_map_svg(const HeatMap& map, HeatMapSize size = HeatMapSize::wide);

} // namespace bedbow
