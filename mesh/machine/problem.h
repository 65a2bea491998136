/// \file
/// Errors and warnings about a case, collected so that one run can report all of them.
#pragma once

#include "mesh/machine/machine.h"

#include <string>
#include <vector>

namespace bedbow {

enum class Severity { error, warning };

/// One finding about a case and the place it belongs to.
struct Problem {
  Severity severity = Severity::error;
  SourcePos pos;    ///< 0 where there is no position, as for a file that is not text
  std::string key;  ///< dotted key or name of the faulty item: "bed.bar.web.height", "post left"; may be empty
  std::string text; ///< what was found, and what is expected
};

/// "3, 7, 9 and 12 more": numbers of cells or points in a message.
std::string number_list(const std::vector<int>& numbers);

/// Whether any of them is an error.
bool any_error(const std::vector<Problem>& problems);

/// Sorts by place, keeping the order of those at one place, and drops exact repeats.
void sort_by_place(std::vector<Problem>& problems);

} // namespace bedbow
