#include "solver/reason.h"

#include <algorithm>

namespace bedbow {

void sort_reasons(std::vector<Reason>& reasons) {
  std::ranges::stable_sort(reasons, [](const Reason& a, const Reason& b) {
    return a.failure != b.failure ? a.failure < b.failure : a.over() > b.over();
  });
}

} // namespace bedbow
