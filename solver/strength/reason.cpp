#include "solver/strength/reason.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bedbow {

void sort_reasons(std::vector<Reason>& reasons) {
  // To eight digits: of parts that are equal by symmetry the first stays first, whatever their last digits.
  const auto rank = [](const Reason& r) { return std::pair(r.failure, -std::round(std::log(r.over()) * 1e8)); };
  std::ranges::stable_sort(reasons, {}, rank);
}

} // namespace bedbow
