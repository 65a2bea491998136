// Stress of flats that bend across their width, on a grid of points of the middle plane: stations by rows across.
#include "mesh/build/strips.h"
#include "solver/findings/results.h"
#include "solver/findings/surface_stress.h"
#include "solver/model/recovery.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Rows across: every line, and even divisions of at most an eighth of the width between them.
std::vector<double> rows_across(const AcrossFunctions& across) {
  constexpr int divisions = 8;
  const std::vector<double> pieces = across.pieces();
  std::vector<double> rows{pieces.front()};
  for (std::size_t i = 0; i + 1 < pieces.size(); ++i) {
    const double size = pieces[i + 1] - pieces[i];
    const int n = std::max(1, static_cast<int>(std::ceil(divisions * size / across.width() - 1e-9)));
    for (int k = 1; k <= n; ++k) rows.push_back(pieces[i] + size * k / n);
  }
  return rows;
}

/// Section forces in the flat's axes.
struct FlatForces {
  double axial, in_plane_moment, in_plane_shear, moment, shear; ///< in-plane moment: stretches where c > 0
  FlatForces(const SectionForces& f, bool standing)
      : axial(f.N)
      , in_plane_moment(standing ? f.My : -f.Mz)
      , in_plane_shear(standing ? f.Vz : f.Vy)
      , moment(standing ? f.Mz : f.My)
      , shear(standing ? -f.Vy : f.Vz) {}
};

/// Resultants at one section of an element, row by row. In the plane they are the beam's; the moment along has the mean
/// that equilibrium demands.
std::vector<ShellResultants> section_resultants(const StripSection& q, const std::vector<double>& rows,
                                                const std::vector<AcrossValues>& across, const FlatForces& f,
                                                double length, const Eigen::VectorXd& u, double s) {
  const double b = q.dofs.width;
  const StripAmplitudes amplitudes = strip_amplitudes(q, length, u, s);
  const double missing = f.moment / b - strip_mean_moment(q, amplitudes);
  std::vector<ShellResultants> out;
  out.reserve(rows.size());
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const double c = rows[r], xi = 2 * c / b;
    const StripMoments m = strip_moments(q, across[r], amplitudes);
    out.push_back(
        {{f.axial / b + 12 * f.in_plane_moment * c / (b * b * b), 0, 1.5 * f.in_plane_shear / b * (1 - xi * xi)},
         {m.along + missing, m.across, m.twist},
         {f.shear / b, 0}});
  }
  return out;
}

} // namespace

ShellStress strip_stress(const Model& m, const StepSolution& step, const BarLayout& l, bool judged) {
  const StripElement& head = m.mesh.strips[l.first_strip];
  const StripSection& q = m.data.strips[head.across];
  const AcrossFunctions& functions = m.mesh.across[head.across];
  const Bar& bar = m.machine.bar(l.owner);
  const Eigen::Matrix3d axes = FlatAxes{l.standing}.matrix();
  ShellStress out;
  out.owner = l.owner;
  out.thickness = q.thickness;
  out.material = bar.material;
  out.frame = m.mesh.nodes[l.nodes.front()].frame;
  const std::vector<double> rows = rows_across(functions);
  std::vector<AcrossValues> across;
  for (double c : rows) across.push_back(functions.at(c));
  const int per_station = static_cast<int>(rows.size());
  const Eigen::Vector3d middle(0, bar.at.x(), bar.at.y());
  for (double x : l.stations)
    for (double c : rows) {
      out.points.emplace_back(middle + axes.transpose() * Eigen::Vector3d(x, c, 0));
      out.normals.emplace_back(axes.row(2));
    }
  if (!judged) { // to be drawn
    out.motion.resize(out.points.size());
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const Eigen::Vector3d& at = out.points[r];
      const std::vector<Vector6d> line = section_motions(m, step, l.owner, l.stations, at.y(), at.z());
      for (std::size_t i = 0; i < line.size(); ++i) out.motion[i * rows.size() + r] = line[i];
    }
  }
  std::vector<std::array<ShellResultants, 4>> at_corners;
  for (std::size_t i = 0; i + 1 < l.stations.size(); ++i) {
    const int element = l.first_element + static_cast<int>(i);
    const Eigen::VectorXd u = strip_unknowns(m.mesh, m.mesh.strips[l.first_strip + i], step.motion);
    std::array<std::vector<ShellResultants>, 2> at;
    for (std::size_t e = 0; e < 2; ++e)
      at[e] =
          section_resultants(q, rows, across, {element_forces(m, step, element, static_cast<double>(e)), l.standing},
                             m.mesh.beams[element].length, u, static_cast<double>(e));
    const int first = static_cast<int>(i) * per_station;
    for (int r = 0; r + 1 < per_station; ++r) {
      const auto k = static_cast<std::size_t>(r);
      out.quads.push_back({first + r, first + per_station + r, first + per_station + r + 1, first + r + 1});
      at_corners.push_back({at[0][k], at[1][k], at[1][k + 1], at[0][k + 1]});
    }
  }
  fill_surface(std::move(at_corners), judged, out);
  return out;
}

} // namespace bedbow
