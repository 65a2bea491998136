/// \file
/// The program's exit status. One error class, one code.
#pragma once

namespace bedbow {

enum ExitCode : int {
  exit_ok = 0,             ///< done; solved and within limits
  exit_limit_exceeded = 1, ///< solved, a limit is exceeded
  exit_wrong_case = 2,     ///< the case or the command line is wrong (CaseError, std::invalid_argument)
  exit_unsolvable = 3,     ///< the structure can't be solved: a mechanism, no convergence (a Status in the result, any
                           ///< other exception; a bare std::logic_error is a mistake in the program)
  exit_file = 4,           ///< a file could not be read or written (FileError)
};

} // namespace bedbow
