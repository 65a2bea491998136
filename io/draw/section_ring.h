/// \file
/// A section's outline prepared for drawing: fine enough to show how stress varies around it, with the shear factors at
/// each point and the triangles of the end face.
#pragma once

#include "mesh/piece/section.h"

#include <array>
#include <vector>

namespace bedbow {

/// Points around the outline of a section.
struct SectionRing {
  std::vector<StressPoint> points;           ///< of all loops, numbered consecutively
  std::vector<std::array<int, 2>> edges;     ///< along the loops, material on the left
  std::vector<std::array<int, 3>> triangles; ///< of the face, counter-clockwise seen from +x
};

/// Ring of a section. Long edges are split into halves or quarters. Shear between the section's stress points is
/// interpolated by distance from the two nearest: for pictures; the figures in results come from the points themselves.
/// A section without outline (given properties) is drawn as its bounding box, or as a square of its area.
SectionRing section_ring(const Section& section);

/// Stress on the outline: direct and shear [Pa].
struct RingStress {
  double sigma = 0, tau = 0;
  [[nodiscard]] double von_mises() const;
  /// The two principal stresses of the surface, greater first: sigma/2 +- sqrt(sigma^2/4 + tau^2).
  [[nodiscard]] std::array<double, 2> principal() const;
};
RingStress ring_stress(const SectionProperties& properties, const StressPoint& point, const SectionForces& forces);

} // namespace bedbow
