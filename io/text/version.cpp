#include "io/text/version.h"

namespace bedbow {

std::string version() {
  return BEDBOW_VERSION;
}

} // namespace bedbow
