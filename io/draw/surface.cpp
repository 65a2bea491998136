#include "io/draw/surface.h"

namespace bedbow {

Surface surface_of(const Fields& fields) {
  Surface surface;
  for (const BarField& bar : fields.bars) add_bar(surface, bar);
  for (const ShellField& shell : fields.shells) add_shell(surface, shell);
  return surface;
}

} // namespace bedbow
