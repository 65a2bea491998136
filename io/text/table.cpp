#include "io/text/table.h"

#include "io/text/text.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr int between = 2;

std::string marked(const std::string& text, Mark mark, const Style& style) {
  switch (mark) {
  case Mark::good:
    return style.good(text);
  case Mark::bad:
    return style.bad(text);
  case Mark::none:
    break;
  }
  return text;
}

/// Text, coloured, with the spaces outside the colour.
std::string cell(const TextTable::Cell& c, Align align, int width, bool last, const Style& style) {
  const std::string space(static_cast<std::size_t>(std::max(0, width - display_width(c.text))), ' ');
  const std::string text = c.text.empty() ? "" : marked(c.text, c.mark, style);
  if (align == Align::right) return space + text;
  return last ? text : text + space;
}

void end_line(std::string& out) {
  out.erase(out.find_last_not_of(' ') + 1);
  out += '\n';
}

} // namespace

void TextTable::row(std::vector<Cell> cells) {
  if (cells.size() != columns_.size())
    throw std::logic_error("a row of " + std::to_string(cells.size()) + " cells in a table of " +
                           std::to_string(columns_.size()) + " columns");
  rows_.push_back(std::move(cells));
}

std::vector<int> TextTable::widths() const {
  std::vector<int> widths;
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    int w = display_width(columns_[c].head);
    for (const auto& r : rows_) w = std::max(w, display_width(r[c].text));
    widths.push_back(w);
  }
  return widths;
}

int TextTable::width() const {
  const std::vector<int> w = widths();
  return std::accumulate(w.begin(), w.end(), 0) + between * (static_cast<int>(w.size()) - 1);
}

std::string TextTable::render(const Style& style, int indent) const {
  const std::vector<int> w = widths();
  std::string out;
  const auto line = [&](const auto& text_of) {
    out += std::string(static_cast<std::size_t>(indent), ' ');
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      const bool last = c + 1 == columns_.size();
      out += cell(text_of(c), columns_[c].align, w[c], last, style);
      if (!last) out += std::string(between, ' ');
    }
    end_line(out);
  };
  line([&](std::size_t c) { return Cell(columns_[c].head); });
  for (const auto& r : rows_) line([&](std::size_t c) { return r[c]; });
  return out;
}

} // namespace bedbow
