#include "io/text/step_label.h"

#include "solver/model/step_name.h"

namespace bedbow {

std::string step_label(const std::string& name) {
  return name == clamp_step ? "clamped" : name;
}

} // namespace bedbow
