/// \file
/// Springback of a bent sheet by integration: elastic-plastic fibres through the thickness, section by section along
/// grip, bend and flange, loaded and unloaded. Shares nothing with the program.
#pragma once

#include <functional>

namespace bedbow::verification {

/// A sheet bent in plane strain. Any consistent units.
struct FibreSheet {
  double thickness = 0, radius = 0;   ///< radius of the middle line under load
  double angle = 0;                   ///< of the bend after unloading [rad]
  double flange = 0, grip = 0;        ///< lengths over which the moment falls to nothing
  double modulus = 0;                 ///< E' = E / (1 - nu^2)
  std::function<double(double)> flow; ///< plane-strain yield stress at a total plane-strain strain > 0
};

/// Angles by which the parts turn back when the apron lets go [rad], and the moment per width that bent them.
struct FibreSpringback {
  double arc = 0, flange = 0, grip = 0, moment = 0;
  double set = 0; ///< plastic turn that stays in the flange [rad]
};
FibreSpringback fibre_springback(const FibreSheet& sheet);

} // namespace bedbow::verification
