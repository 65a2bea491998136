#include "mesh/mesh_builder.h"
#include "mesh/places.h"
#include "mesh/stations.h"

#include <algorithm>
#include <cmath>

namespace bedbow::mesher {

namespace {

/// Pads stand no closer than this along the bend line: a sixth of the length over which a bar on held sheet evens out
/// (1 / lambda, some 25 mm). Finer, the pressure changes by less than half a percent, and only the work grows.
constexpr double least_pad_spacing = 0.004;

struct PadSpot {
  double x, tributary;
};

/// Spots along the held width, each standing for half the way to its neighbours.
std::vector<PadSpot> spots_between(const std::vector<double>& stations, double from, double to) {
  std::vector<double> x;
  for (double s : stations)
    if (s >= from - same_place && s <= to + same_place && (x.empty() || s - x.back() >= least_pad_spacing))
      x.push_back(s);
  if (x.empty()) return {{(from + to) / 2, to - from}};
  // The last spot is the end itself.
  if (to - x.back() > same_place) {
    if (x.size() > 1)
      x.back() = to;
    else
      x.push_back(to);
  }
  std::vector<PadSpot> spots;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double left = i == 0 ? from : (x[i - 1] + x[i]) / 2;
    const double right = i + 1 == x.size() ? to : (x[i] + x[i + 1]) / 2;
    spots.push_back({x[i], right - left});
  }
  return spots;
}

std::vector<PadSpot> pad_spots(const Builder& b) {
  const Sheet& sheet = *b.machine.sheet;
  if (!b.machine.fingers) return spots_between(b.mesh.bend_stations, sheet.left(), sheet.right());
  std::vector<PadSpot> spots;
  const Fingers& f = *b.machine.fingers;
  for (std::size_t i = 0; i < f.widths.size(); ++i) {
    const double from = std::max(f.starts[i], sheet.left());
    const double to = std::min(f.starts[i] + f.widths[i], sheet.right());
    if (to - from <= same_place) continue;
    for (const PadSpot& s : spots_between({from, (from + to) / 2, to}, from, to)) spots.push_back(s);
  }
  return spots;
}

} // namespace

void mesh_pads(Builder& b) {
  const Machine& m = b.machine;
  if (!m.sheet || !m.body(BodyKind::bed).present() || !m.body(BodyKind::clamp).present()) return;
  const Sheet& sheet = *m.sheet;
  const double per_length = b.material(sheet.material).E * m.nose.land / sheet.thickness;
  const Ref edge{Ref::Kind::bar, BodyKind::bed, m.body(BodyKind::bed).edge_bar};
  const bool plates =
      m.bar(edge).model == BarModel::plate || m.body(BodyKind::clamp).bars[m.nose.bar].model == BarModel::plate;
  // Beams feel one resultant in the middle of the land; plates the pressure spread over it (Simpson's weights).
  const std::vector<std::pair<double, double>> across =
      plates && !m.fingers ? std::vector<std::pair<double, double>>{{0.0, 1.0 / 6}, {0.5, 4.0 / 6}, {1.0, 1.0 / 6}}
                           : std::vector<std::pair<double, double>>{{0.5, 1.0}};
  int number = 0;
  for (const PadSpot& spot : pad_spots(b)) {
    for (auto [fraction, share] : across) {
      const double y = m.nose.setback + fraction * m.nose.land;
      std::optional<Place> nose = nose_place(m, b.mesh, spot.x, y, sheet.thickness);
      if (!nose) continue;
      Joint j;
      j.kind = JointKind::pad;
      j.index = number;
      j.name = "pad";
      j.a = place_on_bar(m, b.mesh, edge, {spot.x, y, 0});
      j.b = std::move(*nose);
      j.stiffness[uz] = per_length * spot.tributary * share;
      j.sense[uz] = Sense::compression;
      j.gap[uz] = m.body(BodyKind::bed).crown.at(spot.x) + m.body(BodyKind::clamp).crown.at(spot.x);
      j.tributary = spot.tributary;
      b.mesh.joints.push_back(std::move(j));
    }
    ++number;
  }
}

} // namespace bedbow::mesher
