/// \file
/// Natural frequencies and load factors of a case, through the whole program.
#pragma once

#include "tests/verification/support/whole_program.h"

namespace bedbow::verification {

/// Modes of a case with so many frequencies asked for; the machine may be free. Checks residual and orthogonality.
Findings vibrating(const std::string& text, int modes);
/// Load factors of a case, ascending; checks residual and orthogonality.
Findings buckling(const std::string& text, int factors);
/// Frequencies above zero [Hz].
std::vector<double> frequencies(const Findings& findings);

/// [[member]] of equal sections from one point to another [mm]. \param shape TOML of its section, with line ends.
std::string member(const std::string& name, const Eigen::Vector3d& from, const Eigen::Vector3d& to,
                   const std::string& shape, int divisions);
/// [[hold]] of a point [mm]. \param holds "x", "z", ...
std::string hold(const Eigen::Vector3d& at, const std::string& holds);
/// A section without shear flexibility: A, Iyy, Izz, J in mm.
std::string slender(double A, double Iyy, double Izz, double J);
/// Title and one material of the name "m".
std::string head(double E_GPa, double nu, double density);

} // namespace bedbow::verification
