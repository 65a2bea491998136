/// \file
/// Numbers as results.json has them.
#pragma once

#include "io/units/quantities_out.h"

#include <Eigen/Core>
#include <nlohmann/json.hpp>

#include <cmath>

namespace bedbow {

/// Twelve digits, and null for what is no number (NaN would be written as null anyway, but must not stand in the value
/// handed on).
inline nlohmann::ordered_json json_number(double value) {
  return std::isfinite(value) ? nlohmann::ordered_json(twelve_digits(value)) : nlohmann::ordered_json(nullptr);
}

/// Three numbers times a factor.
inline nlohmann::ordered_json json_vector(const Eigen::Vector3d& v, double factor = 1) {
  return nlohmann::ordered_json::array(
      {json_number(v.x() * factor), json_number(v.y() * factor), json_number(v.z() * factor)});
}

} // namespace bedbow
