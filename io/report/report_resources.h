/// \file
/// Script and style of a report's page, bundled from tools/report into dist/ and embedded in the program, so that
/// neither building nor running it needs anything else.
#pragma once

#include <string_view>

namespace bedbow {

std::string_view report_script(); ///< tools/report/dist/report.js, with the licences of its parts
std::string_view report_style();  ///< tools/report/dist/report.css

} // namespace bedbow
