/// \file
/// Built-in section shapes. How each lies in its own axes before `turn` (y to the right, z up, beam into the page):
/// - rectangle: width along y, height along z
/// - tube: rectangular hollow section, outside width and height, wall
/// - round: solid, diameter. pipe: diameter outside, wall
/// - angle: horizontal leg (width) along +y at the bottom, vertical leg (height) along +z at the front, wall
/// - channel: vertical web (height) at the front, flanges (width) towards +y, wall
/// - section: given properties, see given_section
/// Corners are sharp: root and corner radii are neglected. Equations and sources: docs/theory/sections.md.
#pragma once

#include "mesh/piece/registry.h"
#include "mesh/piece/section.h"

namespace bedbow {

/// Adds every built-in shape. Throws std::invalid_argument when a name is taken.
void builtin_shapes(Registry<ShapeEntry>& shapes);

/// The section turned about x by an angle [rad], positive from y to z. Shear flexibility across the turned axes keeps
/// its diagonal: exact for quarter turns.
Section turned(const Section& section, double angle);

/// Sections in their own axes; `turn` is not applied. \param nu Poisson's ratio, -1 < nu <= 0.5.
/// All throw std::invalid_argument naming the size at fault and what would be right.
Section rectangle_section(const Shape& shape, double nu);
Section tube_section(const Shape& shape, double nu);
Section round_section(const Shape& shape, double nu);
Section pipe_section(const Shape& shape, double nu);
Section angle_section(const Shape& shape, double nu);
Section channel_section(const Shape& shape, double nu);

/// Section of given properties. Shape::given holds, SI units:
/// A, Iyy, Izz, J: needed, > 0. Iyz: default 0.
/// Ay, Az: effective shear areas, default 5/6 A.
/// shear_centre_y, shear_centre_z: from the centroid, default 0.
/// Wt: torsional section modulus, greatest shear stress = T / Wt; default J over the lesser side, which is safe for
/// solid, open and closed sections.
/// Shape::width and height, where given, say how far the section reaches; default: the rectangle of the same A and I.
/// Shear stress is 1.25 V over the effective area (1.5 V/A of a rectangle).
Section given_section(const Shape& shape, double nu);

} // namespace bedbow
