/// \file
/// Reads cases in the reader's tests, and checks the errors reported for them.
#pragma once

#include "io/case/case_reader.h"

#include "tests/support/sample_machines.h"

#include <string>
#include <vector>

namespace bedbow::test {

Case read(const std::string& text);
Machine machine(const std::string& text);

/// Fails the test unless reading reports an error on that key, in that line of `more` counting from 1, that holds all
/// of the words. \param before the case in front of `more`.
void expect_error(const std::string& before, const std::string& more, int line, const std::string& key,
                  const std::vector<std::string>& words);

} // namespace bedbow::test
