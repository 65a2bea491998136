/// \file
/// Machines without a case file for the mesher's tests.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/piece/shapes.h"

#include <string>

namespace bedbow::test {

inline Registry<ShapeEntry> plain_shapes() {
  Registry<ShapeEntry> shapes{"section shape"};
  builtin_shapes(shapes);
  return shapes;
}

/// A bar of steel, width x height with its centroid at (y, z) [m].
inline Bar plain_bar(const std::string& name, double width, double height, double y, double z, double start = 0,
                     double length = 0.9) {
  Bar bar;
  bar.name = name;
  bar.shape.width = width;
  bar.shape.height = height;
  bar.at = {y, z};
  bar.start = start;
  bar.length = length;
  bar.material = 0;
  return bar;
}

/// A bed of one bar, 20 x 100, from x = 0 to 0.9, in elements of 100 mm at most.
inline Machine plain_bed() {
  Machine m;
  Material steel;
  steel.name = "steel";
  steel.E = 210e9;
  steel.nu = 0.3;
  steel.G = 80e9;
  m.materials = {steel};
  for (const BodyKind k : all_bodies) m.body(k).kind = k;
  Body& bed = m.body(BodyKind::bed);
  bed.length = 0.9;
  bed.material = 0;
  bed.edge_bar = 0;
  bed.bars = {plain_bar("web", 0.02, 0.1, 0.01, -0.05)};
  m.solve.element_size = 0.1;
  return m;
}

inline constexpr Ref bed_bar{Ref::Kind::bar, BodyKind::bed, 0};

} // namespace bedbow::test
