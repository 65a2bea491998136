/// \file
/// Text that is safe inside XML, for .pvd and SVG files.
#pragma once

#include <string>
#include <string_view>

namespace bedbow {

/// Text for an element or a quoted attribute: & < > " ' as entities, characters invalid in XML (control characters,
/// broken UTF-8) as '?'.
std::string xml_text(std::string_view text);

} // namespace bedbow
