// The assembler includes the files unchanged; CMake gives their directory, and rebuilds this when they change.
#include "io/report/report_resources.h"

// NOLINTBEGIN(hicpp-no-assembler)
asm(".pushsection .rodata\n"
    ".global bedbow_report_js, bedbow_report_js_end, bedbow_report_css, bedbow_report_css_end\n"
    ".hidden bedbow_report_js, bedbow_report_js_end, bedbow_report_css, bedbow_report_css_end\n"
    "bedbow_report_js: .incbin \"" BEDBOW_REPORT_DIST "/report.js\"\n"
    "bedbow_report_js_end:\n"
    "bedbow_report_css: .incbin \"" BEDBOW_REPORT_DIST "/report.css\"\n"
    "bedbow_report_css_end:\n"
    ".popsection\n");
// NOLINTEND(hicpp-no-assembler)

extern "C" {
extern const char bedbow_report_js[], bedbow_report_js_end[], bedbow_report_css[], bedbow_report_css_end[];
}

namespace bedbow {

std::string_view report_script() {
  return {bedbow_report_js, bedbow_report_js_end};
}

std::string_view report_style() {
  return {bedbow_report_css, bedbow_report_css_end};
}

} // namespace bedbow
