/// \file
/// Bending and transverse shear of the four-node shell: the Mindlin plate MITC4, whose shear strains are tied at the
/// middles of the edges so that thin plates do not lock (Bathe & Dvorkin, Int. J. Numer. Methods Eng. 21, 1985,
/// 367-383). Shear correction 5/6. See docs/theory/plates.md.
#pragma once

#include "solver/element/shell4_frame.h"

namespace bedbow::shell {

inline constexpr double shear_correction = 5.0 / 6;

/// Adds to the element's stiffness (24 x 24, element's axes).
void add_bending_stiffness(const Quad& quad, const ShellData& data, Matrix24d& stiffness);

/// Bending and shear resultants at the 2 x 2 Gauss points; `n` stays zero. \param u local displacements.
std::array<ShellResultants, 4> bending_resultants(const Quad& quad, const ShellData& data, const Vector24d& u);

} // namespace bedbow::shell
