/// \file
/// What a report's page is made with: script and style, bundled from tools/report into dist/ and held in the program,
/// so that neither building nor running it needs anything else.
#pragma once

#include <string_view>

namespace bedbow {

std::string_view report_script(); ///< tools/report/dist/report.js, with the licences of what it holds
std::string_view report_style();  ///< tools/report/dist/report.css

} // namespace bedbow
