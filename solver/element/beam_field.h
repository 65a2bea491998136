/// \file
/// Displacement and forces along one beam element, with common terms computed once.
#pragma once

#include "solver/element/beam_lateral.h"

namespace bedbow {

/// One element between its end displacements, under its line load. Keeps references to its arguments.
class BeamField {
public:
  /// \param k of the same data and length. \param u end displacements, local axes.
  BeamField(const BeamData& data, const beam::Lateral& k, double length, const Vector12d& u, const BeamLineLoad& load);

  /// Displacement (u, theta) of the centroid at s = position / length in [0, 1]: nodal part plus the particular
  /// solution.
  [[nodiscard]] Vector6d motion(double s) const;

  /// Section forces at s in [0, 1], on the +x face of the cut.
  [[nodiscard]] SectionForces forces(double s) const;

private:
  const BeamData& data_;
  const beam::Lateral& k_;
  double length_;
  const Vector12d& u_;
  const BeamLineLoad& load_;
  beam::LateralLoad p_;
  beam::EndMotion ends_;
};

} // namespace bedbow
