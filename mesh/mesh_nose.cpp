#include "mesh/mesh_builder.h"
#include "mesh/places.h"
#include "mesh/stations.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace mesher {

namespace {

/// Pads stand no closer than this along the bend line: a sixth of the length over which a bar on held sheet evens out
/// (1 / lambda, some 25 mm). Finer, the pressure changes by less than half a percent, and only the work grows.
constexpr double least_pad_spacing = 0.004;

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

/// What any of the sheets wants: by rising x, each place once.
std::vector<PadSpot> all_spots(const Builder& b, std::span<const HeldSpan> sheets) {
  std::vector<PadSpot> all;
  for (const HeldSpan& sheet : sheets) {
    const auto spots = pad_spots(b.machine, b.mesh, sheet);
    all.insert(all.end(), spots.begin(), spots.end());
  }
  // Neighbouring fingers press at one x, each by itself.
  std::ranges::stable_sort(all, [](const PadSpot& a, const PadSpot& b) {
    return std::abs(a.x - b.x) > same_place ? a.x < b.x : a.finger < b.finger;
  });
  std::vector<PadSpot> out;
  for (const PadSpot& s : all)
    if (out.empty() || s.x - out.back().x > same_place || s.finger != out.back().finger) out.push_back(s);
  return out;
}

/// Where the nose, or the finger there, feels a pad.
Place place_under_nose(const Builder& b, const PadSpot& spot, double y) {
  const Machine& m = b.machine;
  const Eigen::Vector3d at(spot.x, y, m.sheet->thickness);
  if (spot.finger < 0) return place_on_bar(m, b.mesh, {Ref::Kind::bar, BodyKind::clamp, m.nose.bar}, at);
  return place_on_finger(m, b.mesh, b.mesh.fingers[static_cast<std::size_t>(spot.finger)], at);
}

} // namespace

void mesh_pads(Builder& b, std::span<const HeldSpan> sheets) {
  const Machine& m = b.machine;
  if (!m.sheet || !m.body(BodyKind::bed).present() || !m.body(BodyKind::clamp).present()) return;
  const Sheet& sheet = *m.sheet;
  const HeldSpan own{sheet.left(), sheet.right()};
  const double per_length = b.material(sheet.material).E * m.nose.land / sheet.thickness;
  const Ref edge{Ref::Kind::bar, BodyKind::bed, m.body(BodyKind::bed).edge_bar};
  const bool plates =
      m.bar(edge).model == BarModel::plate || m.body(BodyKind::clamp).bars[m.nose.bar].model == BarModel::plate;
  // Beams feel one resultant in the middle of the land; plates the pressure spread over it (Simpson's weights).
  const std::vector<std::pair<double, double>> across =
      plates && !m.fingers ? std::vector<std::pair<double, double>>{{0.0, 1.0 / 6}, {0.5, 4.0 / 6}, {1.0, 1.0 / 6}}
                           : std::vector<std::pair<double, double>>{{0.5, 1.0}};
  int number = 0;
  for (const PadSpot& spot : all_spots(b, sheets.empty() ? std::span(&own, 1) : sheets)) {
    for (auto [fraction, share] : across) {
      const double y = m.nose.setback + fraction * m.nose.land;
      const Place nose = place_under_nose(b, spot, y);
      Joint j;
      j.kind = JointKind::pad;
      j.index = number;
      j.part = spot.finger;
      j.name = "pad";
      j.a = place_on_bar(m, b.mesh, edge, {spot.x, y, 0});
      j.b = nose;
      j.stiffness[uz] = per_length * spot.tributary * share;
      j.sense[uz] = Sense::compression;
      j.gap[uz] = m.body(BodyKind::bed).crown.at(spot.x) + m.body(BodyKind::clamp).crown.at(spot.x);
      j.tributary = spot.tributary;
      b.mesh.joints.push_back(std::move(j));
    }
    ++number;
  }
}

} // namespace mesher

std::vector<PadSpot> pad_spots(const Machine& machine, const Mesh& mesh, const HeldSpan& sheet) {
  if (!machine.fingers) return mesher::spots_between(mesh.stations, sheet.from, sheet.to);
  std::vector<PadSpot> spots;
  const Fingers& f = *machine.fingers;
  for (std::size_t i = 0; i < f.widths.size(); ++i) {
    const double from = std::max(f.starts[i], sheet.from);
    const double to = std::min(f.starts[i] + f.widths[i], sheet.to);
    if (to - from <= same_place) continue;
    for (const PadSpot& s : mesher::spots_between({from, (from + to) / 2, to}, from, to))
      spots.push_back({s.x, s.tributary, static_cast<int>(i)});
  }
  return spots;
}

} // namespace bedbow
