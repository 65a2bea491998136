#include "mesh/check/part_keys.h"

namespace bedbow {

std::string called(JointKind kind, const std::string& name, std::size_t index) {
  return name.empty() ? numbered(kind, index) : with_kind(info(kind).key, name);
}

std::string joint_key(const std::string& kind, const std::string& name, std::size_t index) {
  return kind + "." + (name.empty() ? std::to_string(index + 1) : name);
}

std::string bar_key(BodyKind body, const Bar& bar) {
  return to_string(body) + ".bar." + bar.name;
}

} // namespace bedbow
