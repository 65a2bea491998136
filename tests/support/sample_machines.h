/// \file
/// Texts of small machines, to which tests add what they are about.
#pragma once

#include <string>
#include <string_view>

namespace bedbow::test {

/// A bed of one bar "web" on two supports, followed by `more`.
std::string bench(std::string_view more = "");
/// Bed "bed.square", clamp "clamp.flat", apron "apron.flat" and a sheet, supported but without posts and cams, followed
/// by `more`.
std::string folder(std::string_view more = "");

} // namespace bedbow::test
