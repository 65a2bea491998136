#include "mesh/build/strips.h"

#include "mesh/build/seats.h"
#include "mesh/build/stations.h"
#include "mesh/piece/hermite.h"

#include <algorithm>
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
         bar.shape.kind == "rectangle" && bar.shape.turn == 0;
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
    , functions_(mesh.across[mesh.strips[layout.first_strip].across])
    , dofs_{layout.standing, functions_.width()}
    , nodes_(mesh.strips[layout.first_strip].flat.nodes)
    , axes_(FlatAxes{layout.standing}.matrix())
    , origin_(0, machine.bar(layout.owner).at.x(), machine.bar(layout.owner).at.y()) {
  terms_.reserve(2 * (1 + static_cast<std::size_t>(nodes_))); // a spot's; a patch may reach further
}

std::size_t StripPlaceSum::terms_of(std::size_t station) {
  const int node = layout_.nodes[station];
  const auto known = std::ranges::find(terms_, node, &PlaceTerm::node);
  if (known != terms_.end()) return static_cast<std::size_t>(known - terms_.begin());
  const std::size_t first = terms_.size();
  terms_.push_back({node});
  // A station's amplitudes belong to the element before it and to that behind it.
  const std::size_t before = station > 0 ? station - 1 : station;
  const int amplitudes = mesh_.strips[layout_.first_strip + before].first[station - before];
  for (int k = 0; k < nodes_; ++k) terms_.push_back({amplitudes + k});
  return first;
}

void StripPlaceSum::add(double x, double c, double share) {
  const std::vector<double>& stations = layout_.stations;
  const auto upper = std::lower_bound(stations.begin(), stations.end() - 1, x - same_place);
  const auto i = static_cast<std::size_t>(std::max<std::ptrdiff_t>(upper - stations.begin(), 1)) - 1;
  const double L = stations[i + 1] - stations[i];
  double s = (x - stations[i]) / L;
  if (s < same_place / L) s = 0;
  if (s > 1 - same_place / L) s = 1;
  const AcrossValues across = functions_.at(c);
  const Hermite cubics(s, L);
  middle_ += share * Eigen::Vector3d(x, c, 0);
  const int bending = functions_.bending(), shearing = functions_.shearing();
  for (std::size_t e = 0; e < 2; ++e) {
    if (s == (e == 0 ? 1. : 0.)) continue; // all but rounding of this end's share is zero
    const auto k = static_cast<Eigen::Index>(2 * e);
    const double value = share * cubics.value[k], gradient = share * cubics.value[k + 1];
    const double value_slope = share * cubics.slope[k], gradient_slope = share * cubics.slope[k + 1];
    const double linear = share * (e == 0 ? 1 - s : s);
    const std::size_t first = terms_of(i + e);
    // Movement of the spot in the flat's axes: (u_x, u_c, u_n, theta_x, theta_c, theta_n).
    const auto bend = [&](auto&& column, double phi, double slope, double h, double h_slope) {
      column[2] += phi * h;       // w
      column[3] += slope * h;     // w,c
      column[4] -= phi * h_slope; // -w,x
    };
    PlaceTerm& own = terms_[first];
    own.weight += linear;
    // In the bar's plane as a rigid section, out of it by the first two functions.
    own.movement(0, 0) += linear;
    own.movement(1, 1) += linear;
    own.movement(5, 5) += linear;
    own.movement(0, 5) -= linear * c;
    own.movement(1, 5) += linear * (x - stations[i + e]);
    bend(own.movement.col(2), across.phi[0], across.slope[0], value, value_slope);
    bend(own.movement.col(4), -across.phi[0], -across.slope[0], gradient, gradient_slope); // W_0' = -theta_c
    const double lever = dofs_.rotation().factor;
    bend(own.movement.col(3), lever * across.phi[1], lever * across.slope[1], value, value_slope);
    const auto amplitude = [&](int number) {
      return terms_[first + 1 + static_cast<std::size_t>(number / 6)].movement.col(number % 6);
    };
    bend(amplitude(StripDofs::twist), across.phi[1], across.slope[1], gradient, gradient_slope);
    for (int f = 2; f < bending; ++f) {
      bend(amplitude(StripDofs::value(f)), across.phi[f], across.slope[f], value, value_slope);
      bend(amplitude(StripDofs::gradient(f)), across.phi[f], across.slope[f], gradient, gradient_slope);
    }
    for (int f = 0; f < shearing; ++f) amplitude(StripDofs::shear(bending, f))[2] += linear * across.shear[f];
  }
}

Place StripPlaceSum::take(const Eigen::Vector3d& at, Frame frame) && {
  const Matrix6d arm = carry(at - origin_ - axes_.transpose() * middle_);
  Matrix6d turn = Matrix6d::Zero();
  turn.topLeftCorner<3, 3>() = turn.bottomRightCorner<3, 3>() = axes_.transpose();
  const Matrix6d to_frame = arm * turn;
  for (PlaceTerm& t : terms_) {
    t.movement = to_frame * t.movement;
    if (mesh_.nodes[t.node].moves()) t.movement *= turn.transpose();
  }
  return {std::move(terms_), at, frame};
}

} // namespace bedbow
