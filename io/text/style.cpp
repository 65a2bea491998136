#include "io/text/style.h"

#include <unistd.h>

#include <cstdlib>

namespace bedbow {

Style style_for(int descriptor) {
  const char* off = std::getenv("NO_COLOR");
  const char* terminal = std::getenv("TERM");
  const bool able = terminal != nullptr && std::string_view(terminal) != "dumb";
  return Style((off == nullptr || *off == '\0') && able && ::isatty(descriptor) != 0);
}

} // namespace bedbow
