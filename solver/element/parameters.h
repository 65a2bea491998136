/// \file
/// Parameters passed to an element about its bar or plate.
#pragma once

#include "solver/element/element_entry.h"
#include "solver/element/shell4.h"

#include <span>
#include <string>
#include <vector>

namespace bedbow {

struct KnownParameter {
  const char *name, *unit;
};

/// All parameters that an element may request. \param dimension 1: along a line, 2: over a surface.
std::span<const KnownParameter> known_parameters(int dimension);

/// "E, G, nu, ..." of known_parameters, for messages.
std::string known_parameter_names(int dimension);

/// Values [SI] in the order in which the element declares them. Throws std::invalid_argument for a name that is not
/// known, and where the section has an Iyz or a shear centre off its centroid that the element does not request.
std::vector<double> line_parameters(const ElementEntry& element, const BeamData& data, double nu);

/// The same over a surface. Throws std::invalid_argument for a name that is not known.
std::vector<double> surface_parameters(const ElementEntry& element, const ShellData& data);

/// Axes of a line where none are given. \param corners 3 x 2, its ends. \return rows: along, width, height (towards z,
/// or y for an upright line).
Eigen::Matrix3d line_axes(const Eigen::Matrix3Xd& corners);

} // namespace bedbow
