/// \file
/// `bedbow solve --sensitivity`: influence of every quantity, as a separate answer.
#pragma once

#include "io/case/case_reader.h"
#include "tools/bedbow/commands/answer_command.h"

namespace bedbow {

/// Solves the case with every quantity varied by 0.1 mm or 1 % and prints the changes, sorted. \return exit code.
int tell_sensitivity(const AnswerArguments& a, const OpenCase& open);

} // namespace bedbow
