#include "solver/modes/mass.h"

#include "solver/assembly/mass_walk.h"
#include "solver/modes/node_block.h"

#include <cmath>

namespace bedbow {

namespace {

bool alike(const BeamElement& a, const BeamElement& b) {
  return std::abs(a.length - b.length) <= 1e-13 * a.length && a.axes == b.axes && a.release_a == b.release_a &&
         a.release_b == b.release_b;
}

} // namespace

Matrix12d beam_mass_of(const Mesh& mesh, const ElementData& data, int element, bool lumped) {
  const BeamElement& e = mesh.beams[element];
  Matrix12d m = beam_local_mass(mesh, data, element, lumped);
  if (const BeamReleases releases = releases_of(e); releases.any) {
    const Matrix12d t = release_map(beam_local_stiffness(mesh, data, element), releases);
    m = (t.transpose() * m * t).eval();
  }
  return e.axes.isIdentity(0) ? m : beam_to_global(m, e.axes);
}

std::vector<SymmetricMatrix> assemble_mass(const Machine& machine, const Mesh& mesh, const DofMap& map,
                                           const ElementData& data, bool lumped) {
  // Neighbouring elements of a bar are identical: the last matrix is reused while data, length and axes are the same.
  Matrix12d last;
  int of = -1;
  const BeamMatrix beams = [&](int i) -> const Matrix12d& {
    if (of >= 0 && data.of_beam[i] == data.of_beam[of] && alike(mesh.beams[i], mesh.beams[of])) return last;
    of = i;
    return last = beam_mass_of(mesh, data, i, lumped);
  };
  const ShellMatrix shells = [&](int i) { return shell_mass_of(machine, mesh, data, i, lumped); };
  Eigen::MatrixXd strip;
  int strip_of = -1; // identical neighbours share a stiffness, so their mass is the same
  const StripMatrix strips = [&](int i) -> const Eigen::MatrixXd& {
    if (strip_of == data.of_bending[i]) return strip;
    strip_of = data.of_bending[i];
    const StripElement& e = mesh.strips[i];
    return strip = strip_mass(data.strips[e.across], mesh.beams[e.beam].length);
  };
  std::vector<SymmetricMatrix> out = assemble(mesh, map, beams, strips, shells, false);
  for_each_mass(machine, mesh, data, [&](const MassItem& item) {
    if (item.kind != MassItem::Kind::rod || item.mass() == 0) return;
    const Joint& j = mesh.joints[item.index];
    for (const Place* p : {&j.a, &j.b})
      for (const PlaceTerm& t : p->terms) {
        if (t.weight == 0) continue;
        const NodeLink& l = map.links[t.node];
        Matrix6d m = Matrix6d::Zero();
        m.diagonal().head<3>().setConstant(t.weight * item.mass() / 2);
        const Matrix6d c = carry(l.arm + t.lever() / t.weight);
        add_node_block(out, map, l.ref, c.transpose() * m * c);
      }
  });
  return out;
}

} // namespace bedbow
