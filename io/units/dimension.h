/// \file
/// Kinds of physical quantities that a case file knows, and how people write them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace bedbow {

/// Exponents of length, mass, time and angle. The angle is included, so that N*m and N*m/rad differ.
struct Exponents {
  int length = 0, mass = 0, time = 0, angle = 0;
  bool operator==(const Exponents&) const = default;
};

enum class Dim {
  length,
  area,
  section_modulus,
  second_moment,
  angle,
  mass,
  density,
  force,
  stress,
  moment,
  force_per_length,
  stiffness,
  rotational_stiffness,
};

/// Name, example and accepted range of a kind of quantity.
struct DimensionInfo {
  Dim dim;
  Exponents exponents;
  std::string_view name;    ///< "length"
  std::string_view article; ///< "a" or "an"
  std::string_view example; ///< an accepted value: "900 mm"
  std::string_view units;   ///< some accepted units
  double least;             ///< smallest value accepted where a value must be positive, SI
  double greatest;          ///< largest magnitude accepted, SI
};

const DimensionInfo& info(Dim dim);

/// "a length", "an angle".
std::string with_article(Dim dim);

/// The kind that has these exponents, or nullopt. A force per length also means a stiffness.
std::optional<Dim> dimension_of(const Exponents& exponents);

} // namespace bedbow
