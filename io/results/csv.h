/// \file
/// Comma-separated values (RFC 4180, with line feeds), decimal points, UTF-8.
#pragma once

#include "solver/findings/findings.h"

#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// A field, quoted where it holds a comma, a quote or a line break.
std::string csv_field(std::string_view text);

/// Shortest decimal form of twelve digits; empty for NaN.
std::string csv_number(double value);

/// One row with its line break.
std::string csv_row(const std::vector<std::string>& fields);

/// bend_line.csv: a head, then one row per step and station, in mm, deg and N/mm.
std::string bend_line_csv(const Findings& findings);

} // namespace bedbow
