/// \file
/// From an exception to a message on standard error and an exit code.
#pragma once

#include <exception>

namespace bedbow {

/// Prints what the exception says, all problems of a case included, and returns the ExitCode of its class.
int report_error(const std::exception_ptr& error);

} // namespace bedbow
