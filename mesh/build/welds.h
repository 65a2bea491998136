/// \file
/// Two bars joined along x without slip.
#pragma once

#include "mesh/build/mesh.h"

namespace bedbow {

/// Stiffness of a seam at a station along each axis [N/m], whatever the mesh: as good as rigid. About x it is that
/// times width^2 / 12. \param E the greater Young's modulus of the two that it joins [Pa]. \param width of the faces
/// that meet [m].
double seam_stiffness(double E, double width);

/// x over which a weld joins its bars [m]: their common length, within its from and to.
struct SeamSpan {
  double from, to;
};
SeamSpan seam_span(const Machine& machine, const Weld& weld);

/// Where the seams of a weld run: at its place, or with two sides along either edge of the faces that meet.
/// \return (y, z) [m].
std::vector<Eigen::Vector2d> weld_lines(const Machine& machine, const Mesh& mesh, const Weld& weld);

/// Joins the two bars along the line where they meet, over their common length (within the weld's from and to): at
/// every station both move together there and roll together. A weld on both sides has two such lines. Sections may turn
/// about y and z against each other, so that an open section warps when it twists. Between stations the bars are
/// independent: the error falls with the square of the element size. See docs/theory/fasteners.md.
void add_weld(const Machine& machine, const Weld& weld, int index, Mesh& mesh);

} // namespace bedbow
