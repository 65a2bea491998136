/// \file
/// Tables of text in straight columns.
#pragma once

#include "io/text/style.h"

#include <string>
#include <vector>

namespace bedbow {

enum class Align { left, right };
enum class Mark { none, good, bad };

/// Rows of cells under a head. Cells are plain text; a mark colours one without changing its width.
class TextTable {
public:
  struct Column {
    std::string head;
    Align align = Align::right;
  };
  struct Cell {
    std::string text;
    Mark mark = Mark::none;
    Cell(std::string t, Mark m = Mark::none)
        : text(std::move(t))
        , mark(m) {}
    Cell(const char* t)
        : text(t) {}
  };

  explicit TextTable(std::vector<Column> columns)
      : columns_(std::move(columns)) {}
  /// Adds a row. Throws std::logic_error unless it has one cell per column.
  void row(std::vector<Cell> cells);
  [[nodiscard]] bool empty() const { return rows_.empty(); }
  [[nodiscard]] const std::vector<Column>& columns() const { return columns_; }
  [[nodiscard]] const std::vector<std::vector<Cell>>& rows() const { return rows_; }
  /// Lines with their ends, no trailing spaces; columns two spaces apart. \param indent before each line.
  [[nodiscard]] std::string render(const Style& style, int indent = 2) const;
  /// Columns that the widest line takes, without indent.
  [[nodiscard]] int width() const;

private:
  [[nodiscard]] std::vector<int> widths() const;
  std::vector<Column> columns_;
  std::vector<std::vector<Cell>> rows_;
};

} // namespace bedbow
