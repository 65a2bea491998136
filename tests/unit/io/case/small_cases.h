/// \file
/// Small cases for the reader's tests, and a check of the errors reported for a case.
#pragma once

#include "io/case/case_reader.h"

#include <string>
#include <string_view>
#include <vector>

namespace bedbow::test {

/// A bed of one bar "web" on two supports, followed by `more`.
std::string bench(std::string_view more = "");
/// Bed "bed.square", clamp "clamp.flat", apron "apron.flat" and a sheet, supported but without posts and cams, followed
/// by `more`.
std::string folder(std::string_view more = "");

Case read(const std::string& text);
Machine machine(const std::string& text);

/// Fails the test unless reading reports an error on that key, in that line of `more` counting from 1, that holds all
/// of the words. \param before the case in front of `more`.
void expect_error(const std::string& before, const std::string& more, int line, const std::string& key,
                  const std::vector<std::string>& words);

} // namespace bedbow::test
