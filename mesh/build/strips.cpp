#include "mesh/build/strips.h"

#include "mesh/build/seats.h"
#include "mesh/build/stations.h"
#include "mesh/piece/hermite.h"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace bedbow {

std::vector<int> nodes_of(const Mesh& mesh, const StripElement& strip) {
  const BeamElement& beam = mesh.beams[static_cast<std::size_t>(strip.beam)];
  std::vector<int> out(beam.nodes.begin(), beam.nodes.end());
  for (int first : strip.first)
    for (int k = 0; k < strip.flat.nodes; ++k) out.push_back(first + k);
  return out;
}

Eigen::Matrix3d FlatAxes::matrix() const {
  Eigen::Matrix3d out = Eigen::Matrix3d::Identity();
  if (standing) out << 1, 0, 0, 0, 0, 1, 0, -1, 0;
  return out;
}

namespace mesher {

namespace {

/// Degree of the functions across. With lines where forces stand it keeps forces within 4 % of fine plates.
constexpr int degree = 3;

constexpr int dofs_per_node = 6;

} // namespace

bool bends_across(const Machine& machine, const Bar& bar) {
  return bar.model == BarModel::strip && machine.solve.dimension == 3 && bar.element.empty() &&
         bar.shape.kind == "rectangle" && bar.shape.turn == 0 && bar.shape.width != bar.shape.height;
}

void add_strips(Builder& b, BarLayout& l) {
  const Bar& bar = b.machine.bar(l.owner);
  l.standing = bar.shape.height > bar.shape.width;
  const double width = std::max(bar.shape.width, bar.shape.height);
  b.mesh.across.emplace_back(width, strip_lines(b, l), degree);
  const int amplitudes = b.mesh.across.back().amplitudes();
  const int per_station = (amplitudes + dofs_per_node - 1) / dofs_per_node;
  std::vector<int> first;
  for (int node : l.nodes) {
    first.push_back(static_cast<int>(b.mesh.nodes.size()));
    for (int k = 0; k < per_station; ++k) {
      Node n = b.mesh.nodes[static_cast<std::size_t>(node)];
      n.amplitudes = std::min(dofs_per_node, amplitudes - dofs_per_node * k);
      b.mesh.nodes.push_back(n);
    }
  }
  l.first_strip = static_cast<int>(b.mesh.strips.size());
  for (std::size_t i = 0; i + 1 < l.nodes.size(); ++i)
    b.mesh.strips.push_back({l.first_element + static_cast<int>(i),
                             static_cast<int>(b.mesh.across.size()) - 1,
                             {first[i], first[i + 1]},
                             {l.standing, std::min(bar.shape.width, bar.shape.height), per_station}});
}

} // namespace mesher

StripPlaceSum::StripPlaceSum(const Machine& machine, const Mesh& mesh, const BarLayout& layout)
    : mesh_(mesh)
    , layout_(layout)
    , strip_(mesh.strips[static_cast<std::size_t>(layout.first_strip)])
    , axes_(FlatAxes{layout.standing}.matrix())
    , origin_(0, machine.bar(layout.owner).at.x(), machine.bar(layout.owner).at.y()) {
  terms_.reserve(2 * (1 + static_cast<std::size_t>(strip_.flat.nodes))); // a spot's; a patch may reach further
}

PlaceTerm& StripPlaceSum::term(int node) {
  const auto known = std::ranges::find(terms_, node, &PlaceTerm::node);
  return known != terms_.end() ? *known : *terms_.insert(terms_.end(), {node});
}

void StripPlaceSum::add(double x, double c, double share) {
  const std::vector<double>& stations = layout_.stations;
  const auto upper = std::lower_bound(stations.begin(), stations.end() - 1, x - same_place);
  const auto i = static_cast<std::size_t>(std::max<std::ptrdiff_t>(upper - stations.begin(), 1)) - 1;
  const double L = stations[i + 1] - stations[i];
  double s = (x - stations[i]) / L;
  if (s < same_place / L) s = 0;
  if (s > 1 - same_place / L) s = 1;
  const AcrossValues across = mesh_.across[static_cast<std::size_t>(strip_.across)].at(c);
  const double width = mesh_.across[static_cast<std::size_t>(strip_.across)].width();
  const StripDofs dofs{layout_.standing, width};
  const Hermite cubics(s, L);
  const std::array<double, 2> value{cubics.value[0], cubics.value[2]}, gradient{cubics.value[1], cubics.value[3]};
  const std::array<double, 2> value_slope{cubics.slope[0], cubics.slope[2]},
      gradient_slope{cubics.slope[1], cubics.slope[3]};
  const std::array<double, 2> linear{1 - s, s};
  middle_ += share * (origin_ + axes_.transpose() * Eigen::Vector3d(x, c, 0));
  Matrix6d to_global = Matrix6d::Zero();
  to_global.topLeftCorner<3, 3>() = to_global.bottomRightCorner<3, 3>() = axes_.transpose();
  const auto far_end = static_cast<std::size_t>(layout_.first_strip) + i;
  for (std::size_t e = 0; e < 2; ++e) {
    if (s == (e == 0 ? 1. : 0.)) continue; // all but rounding of this end's share is zero
    // Movement of the spot in the flat's axes: (u_x, u_c, u_n, theta_x, theta_c, theta_n).
    const auto bend = [&](Eigen::Ref<Matrix6d> m, int column, double factor, double phi, double slope, double h,
                          double h_slope) {
      m(2, column) += factor * phi * h;       // w
      m(3, column) += factor * slope * h;     // w,c
      m(4, column) -= factor * phi * h_slope; // -w,x
    };
    // In the bar's plane: by its own node, in the flat's axes.
    Matrix6d own = Matrix6d::Zero();
    own(0, 0) = own(1, 1) = own(5, 5) = linear[e];
    own(0, 5) = -linear[e] * c;
    own(1, 5) = linear[e] * (x - stations[i + e]);
    Matrix6d in_plane = own * to_global.transpose();
    Matrix6d normal = Matrix6d::Zero(); // columns: the node's dofs in global axes
    const auto shared = [&](SharedDof d, double phi, double slope, double h, double h_slope) {
      bend(normal, d.dof, d.factor, phi, slope, h, h_slope);
    };
    shared(dofs.movement(), across.phi[0], across.slope[0], value[e], value_slope[e]);
    shared(dofs.slope(), across.phi[0], across.slope[0], gradient[e], gradient_slope[e]);
    shared(dofs.rotation(), across.phi[1], across.slope[1], value[e], value_slope[e]);
    PlaceTerm& node = term(layout_.nodes[i + e]);
    node.weight += share * linear[e];
    node.movement += share * (to_global * (in_plane + normal));
  }
  const StripElement& strip = mesh_.strips[far_end];
  const int bending = static_cast<int>(across.phi.size()), shearing = static_cast<int>(across.shear.size());
  for (std::size_t e = 0; e < 2; ++e) {
    if (s == (e == 0 ? 1. : 0.)) continue;
    const auto amplitude = [&](int number, double w, double w_c, double w_x) {
      PlaceTerm& t = term(strip.first[e] + number / 6);
      Eigen::Matrix<double, 6, 1> column = Eigen::Matrix<double, 6, 1>::Zero();
      column << 0, 0, w, w_c, -w_x, 0;
      t.movement.col(number % 6) += share * (to_global * column);
    };
    amplitude(StripDofs::twist, across.phi[1] * gradient[e], across.slope[1] * gradient[e],
              across.phi[1] * gradient_slope[e]);
    for (int k = 2; k < bending; ++k) {
      amplitude(StripDofs::value(k), across.phi[k] * value[e], across.slope[k] * value[e],
                across.phi[k] * value_slope[e]);
      amplitude(StripDofs::gradient(k), across.phi[k] * gradient[e], across.slope[k] * gradient[e],
                across.phi[k] * gradient_slope[e]);
    }
    for (int j = 0; j < shearing; ++j)
      amplitude(StripDofs::shear(bending, j), across.shear[j] * linear[e], 0, 0); // turns no normal
  }
}

Place StripPlaceSum::take(const Eigen::Vector3d& at, Frame frame) && {
  for (PlaceTerm& t : terms_) t.movement = carry(at - middle_) * t.movement;
  return {std::move(terms_), at, frame};
}

} // namespace bedbow
