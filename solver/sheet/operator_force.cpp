#include "solver/sheet/operator_force.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace bedbow {

namespace {

constexpr const char* en = "EN 1005-3:2002+A1:2008, basic force, professional use";
constexpr const char* das = "Das & Wang, Int. J. Occup. Safety Ergon. 10 (2004) 43-58, greatest over the workspace";

std::vector<EffortLimit> table() {
  using enum EffortKind;
  return {
      {"power grip", recommended, 250, en},
      {"arm up", recommended, 50, en},
      {"arm down", recommended, 75, en},
      {"arm out", recommended, 55, en},
      {"arm in", recommended, 75, en},
      {"arm push, trunk supported", recommended, 275, en},
      {"arm push", recommended, 62, en},
      {"arm pull, trunk supported", recommended, 225, en},
      {"arm pull", recommended, 55, en},
      {"whole body push", recommended, 200, en},
      {"whole body pull", recommended, 145, en},
      {"pedal, ankle", recommended, 250, en},
      {"pedal, leg", recommended, 475, en},
      {"men pull", strength, 400, das},
      {"men push, sitting", strength, 227, das},
      {"men push, standing", strength, 251, das},
      {"women pull, sitting", strength, 222, das},
      {"women pull, standing", strength, 244, das},
      {"women push, sitting", strength, 96, das},
      {"women push, standing", strength, 140, das},
  };
}

} // namespace

std::span<const EffortLimit> effort_limits() {
  static const std::vector<EffortLimit> limits = table();
  return limits;
}

const EffortLimit* find_effort_limit(std::string_view key) {
  const auto all = effort_limits();
  const auto it = std::ranges::find(all, key, &EffortLimit::key);
  return it == all.end() ? nullptr : &*it;
}

Check check_effort(double force, std::string_view key, std::optional<double> own) {
  const EffortLimit* limit = find_effort_limit(key);
  if (!limit) {
    std::string keys;
    for (const EffortLimit& l : effort_limits()) keys.append(keys.empty() ? "" : "; ").append(l.key);
    throw std::invalid_argument("unknown effort limit '" + std::string(key) + "'; available: " + keys);
  }
  return {limit->key, std::abs(force), overridden(own, {limit->force, limit->source})};
}

} // namespace bedbow
