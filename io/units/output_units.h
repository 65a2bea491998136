/// \file
/// Units of displayed lengths, forces and stresses: the [output] table of a case. Result files for programs keep their
/// fixed units (mm, N, MPa, deg, Hz) whatever these are.
#pragma once

#include <string>

namespace bedbow {

/// One unit: what it is called and what it measures in SI base units.
struct OutputUnit {
  std::string name;
  double size = 1; ///< SI value of one of it: 0.001 for mm
};

struct OutputUnits {
  OutputUnit length{"mm", 1e-3};
  OutputUnit force{"kN", 1e3};
  OutputUnit stress{"MPa", 1e6};
};

/// Unit of force per length, as in N/mm: kN becomes N, since a kN per mm is too large a unit.
OutputUnit force_per_length(const OutputUnits& units);

/// Number of decimals that shows a quantity to about the given resolution.
/// \param resolution smallest step worth showing, SI, > 0. \return 0 to 9; 3 for mm at 1e-6 m, 4 for inches.
int decimals_for(const OutputUnit& unit, double resolution);

/// The value in that unit with its decimals, without the unit's name; "-" for NaN.
/// \param value SI.
std::string in_unit(double value, const OutputUnit& unit, double resolution);

/// A length, force, moment or angle with the name of its unit.
/// \param resolution smallest step worth showing [m]. \param value [m], [N], [N m], [rad].
std::string length_text(double value, const OutputUnits& units, double resolution);
std::string force_text(double value, const OutputUnits& units);
std::string moment_text(double value, const OutputUnits& units);
std::string degrees_text(double value);

/// Fixed decimals without a negative zero; "-" for NaN, "inf" for infinity.
std::string fixed(double value, int decimals);

} // namespace bedbow
