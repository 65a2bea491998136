#include "io/draw/heat_map.h"

#include "io/draw/plot_axis.h"
#include "io/text/xml.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

constexpr double top = 62, row_height = 34, below = 74;

struct Room {
  double width, left, right;
  int ticks;
  const char *title, *cell; ///< their font sizes
};
constexpr Room wide{760, 110, 24, 8, "16", "12"}, narrow{360, 78, 8, 4, "11.5", "9.5"};

std::string text_of(const char* format, auto... values) {
  std::array<char, 256> out{};
  std::snprintf(out.data(), out.size(), format, values...);
  return out.data();
}

std::string text_at(double x, double y, const char* anchor, const std::string& what, const char* more = "") {
  return text_of("<text x=\"%.2f\" y=\"%.2f\" text-anchor=\"%s\" ", x, y, anchor) +
         (*more ? more : R"(class="plot-ink")") + ">" + xml_text(what) + "</text>\n";
}

/// Pale to dark blue.
std::string shade(double share) {
  const auto mix = [&](double a, double b) { return static_cast<int>(std::lround(a + (b - a) * share)); };
  return text_of("#%02x%02x%02x", mix(236, 8), mix(242, 64), mix(250, 129));
}

struct ValueRange {
  double low = INFINITY, high = -INFINITY;
};

ValueRange value_range(const HeatMap& map) {
  ValueRange r;
  for (const HeatRow& row : map.rows)
    for (const HeatCell& c : row.cells)
      if (std::isfinite(c.value)) r = {std::min(r.low, c.value), std::max(r.high, c.value)};
  return r;
}

std::string draw_row(const HeatRow& row, double y, const ValueRange& range, const Room& room, const auto& px) {
  std::string out = text_at(room.left - 8, y + row_height / 2 + 4, "end", row.label);
  for (const HeatCell& c : row.cells) {
    const double share = range.high > range.low ? (c.value - range.low) / (range.high - range.low) : 0.5;
    const bool known = std::isfinite(c.value);
    out += text_of("<rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" fill=\"%s\" stroke=\"#fff\"/>\n",
                   px(c.from), y, px(c.to) - px(c.from), row_height, known ? shade(share).c_str() : "#d9d9d9");
    const std::string look = text_of("font-size=\"%s\" fill=\"%s\"", room.cell, known && share > 0.5 ? "#fff" : "#222");
    out += text_at((px(c.from) + px(c.to)) / 2, y + row_height / 2 + 4, "middle", c.text, look.c_str());
  }
  return out;
}

/// A dashed line through the gaps above, between and below the rows, so that no number is hidden.
std::string draw_mark(const HeatMap::Mark& m, double bottom, const auto& px) {
  std::string out;
  for (double y = top; y < bottom + 1; y += row_height)
    out += text_of("<line x1=\"%.2f\" y1=\"%.2f\" x2=\"%.2f\" y2=\"%.2f\" stroke=\"#d55e00\" "
                   "stroke-width=\"2.5\"/>\n",
                   px(m.x), y - 7, px(m.x), y + 7);
  return out + text_at(px(m.x), top - 12, "middle", m.label, "font-size=\"11\" fill=\"#d55e00\"");
}

} // namespace

std::string heat_map_svg(const HeatMap& map, HeatMapSize size) {
  const Room& room = size == HeatMapSize::wide ? wide : narrow;
  const double bottom = top + row_height * static_cast<double>(map.rows.size());
  const double middle = (room.left + room.width - room.right) / 2;
  const auto px = [&](double x) {
    return room.left + (x - map.x_low) / (map.x_high - map.x_low) * (room.width - room.left - room.right);
  };
  std::string out = text_of("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %g %g\" role=\"img\" "
                            "font-family=\"sans-serif\" font-size=\"%s\">\n",
                            room.width, bottom + below, size == HeatMapSize::wide ? "13" : "11");
  out += "<title>" + xml_text(map.title) + "</title>\n<rect class=\"plot-paper\" width=\"100%\" height=\"100%\" " +
         "fill=\"#fff\"/>\n";
  const std::string heading = text_of("class=\"plot-ink\" font-size=\"%s\" font-weight=\"bold\"", room.title);
  out += text_at(room.width / 2, 24, "middle", map.title, heading.c_str());
  out += text_at(room.left - 8, top - 12, "end", map.row_head);
  const ValueRange range = value_range(map);
  double y = top;
  for (const HeatRow& row : map.rows) {
    out += draw_row(row, y, range, room, px);
    y += row_height;
  }
  for (const HeatMap::Mark& m : map.marks) out += draw_mark(m, bottom, px);
  const Axis axis = axis_over(map.x_low, map.x_high, room.ticks, true);
  for (const double v : axis.marks())
    if (v >= map.x_low && v <= map.x_high) out += text_at(px(v), bottom + 17, "middle", axis.label(v));
  out += text_at(middle, bottom + 38, "middle", map.x_label);
  return out + text_at(middle, bottom + 58, "middle", map.note) + "</svg>\n";
}

} // namespace bedbow
