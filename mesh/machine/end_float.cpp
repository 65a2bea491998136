#include "mesh/machine/end_float.h"

#include <limits>

namespace bedbow {

double end_float_of(const Machine& machine, std::size_t hinge) {
  return machine.hinges[hinge].end_float.value_or(hinge == 0 ? 0 : std::numeric_limits<double>::infinity());
}

bool hinges_locate(const Machine& machine) {
  for (std::size_t i = 0; i < machine.hinges.size(); ++i)
    if (end_float_of(machine, i) == 0) return true;
  return false;
}

} // namespace bedbow
