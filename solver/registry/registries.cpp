#include "solver/registry/registries.h"

#include "solver/linear/builtin.h"

namespace bedbow {

Registries builtin_registries() {
  Registries r;
  builtin_shapes(r.shapes);
  builtin_moment_laws(r.moment_laws);
  builtin_linear_solvers(r.linear_solvers);
  builtin_elements(r.elements);
  return r;
}

} // namespace bedbow
