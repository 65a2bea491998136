/// \file
/// `bedbow solve --sensitivity`: what matters, as an answer of its own.
#pragma once

#include "io/case/case_reader.h"
#include "tools/bedbow/commands/answer_command.h"

namespace bedbow {

/// Solves the case with every quantity moved by 0.1 mm or 1 % and tells what that changes, sorted. \return exit code.
int tell_sensitivity(const AnswerArguments& a, const OpenCase& open);

} // namespace bedbow
