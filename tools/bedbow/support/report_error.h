/// \file
/// From an exception to a message on standard error and an exit code.
#pragma once

#include "mesh/machine/problem.h"

#include <exception>
#include <string>
#include <vector>

namespace bedbow {

/// Prints problems of a case on standard error, one per line, at most a hundred.
/// \param file name of the case.
void report_problems(const std::vector<Problem>& problems, const std::string& file);

/// Prints the exception's message, including all problems of a case, and returns the ExitCode of its class.
int report_error(const std::exception_ptr& error);

} // namespace bedbow
