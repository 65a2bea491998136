/// \file
/// Numbers of results.json.
#pragma once

#include "io/units/quantities_out.h"

#include <Eigen/Core>
#include <nlohmann/json.hpp>

#include <cmath>

namespace bedbow {

/// Twelve digits, and null for NaN (which would be written as null anyway, but must not remain in the JSON value).
inline nlohmann::ordered_json json_number(double value) {
  return std::isfinite(value) ? nlohmann::ordered_json(twelve_digits(value)) : nlohmann::ordered_json(nullptr);
}

/// Three numbers times a factor.
inline nlohmann::ordered_json json_vector(const Eigen::Vector3d& v, double factor = 1) {
  return nlohmann::ordered_json::array(
      {json_number(v.x() * factor), json_number(v.y() * factor), json_number(v.z() * factor)});
}

} // namespace bedbow
