// Contact of nose and bed: through the sheet, and beyond it once the gap of the sheet's thickness closes.
#include "mesh/build/mesh_builder.h"
#include "mesh/build/places.h"
#include "mesh/build/spots.h"
#include "mesh/build/stations.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace bedbow {

namespace {

Ref bed_edge(const Machine& m) {
  return {Ref::Kind::bar, BodyKind::bed, m.body(BodyKind::bed).edge_bar};
}

Ref nose_bar(const Machine& m) {
  return {Ref::Kind::bar, BodyKind::clamp, m.nose.bar};
}

/// Approximate length over which bars on the held sheet spread a force, 1 / lambda = (4 E I / k)^(1/4): with k = E
/// land / t, land / t of about 10 and the lesser second moment of area of both bars, three quarters of I^(1/4). It does
/// not depend on the sheet, so that pads for one serve another, and scales with the machine, so that one twice as large
/// has the same pads.
double evening_length(const Machine& m, const Mesh& mesh) {
  const auto I = [&](const Ref& bar) {
    return mesh.sections[static_cast<std::size_t>(layout_of(mesh, bar).section)].props.Iyy;
  };
  return 0.75 * std::pow(std::min(I(bed_edge(m)), I(nose_bar(m))), 0.25);
}

/// Pads stand no closer than a sixth of that along the bend line. With finer spacing the pressure changes by less
/// than half a percent, and only the cost grows.
constexpr double least_pad_spacing = 1.0 / 6;

/// Pads over the depth of the land under plates and strips.
constexpr int land_rows = 7;

/// However stiff the bars are, a sheet has at least this many pads where the stations allow it: pressure that varies
/// along it also has a moment.
constexpr double least_pads = 40;

/// Beyond the sheet the faces seldom meet, and then at an end of the bar. Chosen here; no source.
constexpr double least_touch_spacing = 1;

/// Where point forces enter bed and clamp, ascending.
std::vector<double> loaded_places(const Machine& m) {
  std::vector<double> x;
  m.each_joint_list([&](JointKind kind, const auto& list) {
    if (kind == JointKind::handle) return; // holds the apron
    for (const JointBase& j : list) x.push_back(j.at.x());
  });
  for (const Load& l : m.loads)
    if (l.on.kind == Ref::Kind::bar && l.kind == Load::Kind::point) x.push_back(l.from.x());
  std::erase_if(x, [](double v) { return !std::isfinite(v); });
  std::ranges::sort(x);
  return x;
}

/// Where the clamp is pulled down and its tail lifted, ascending.
std::vector<double> clamped_places(const Machine& m) {
  std::vector<double> x;
  for (const auto& j : m.posts) x.push_back(j.at.x());
  for (const auto& j : m.cams) x.push_back(j.at.x());
  std::ranges::sort(x);
  return x;
}

/// A length of the nose, and the stations that may carry spots on it.
struct Stretch {
  double from = 0, to = 0;
  const std::vector<double>& stations;
  const std::vector<double>&loaded, &clamped;
  double evening = 0; ///< length over which the bars spread a force [m]
  int finger = -1;
};

/// Where nose and bed meet beyond the sheet, from `from` to `to`, one of which is an end of the sheet: there the sheet
/// holds them apart.
void add_touches(const Stretch& s, double from, double to, const HeldSpan& sheet, std::vector<PadSpot>& out) {
  if (to - from <= same_place) return;
  for (const Spot& p : choose_spots(s.stations, s.clamped, from, to, least_touch_spacing * s.evening))
    if (std::abs(p.x - sheet.from) > same_place && std::abs(p.x - sheet.to) > same_place)
      out.push_back({p.x, p.length, s.finger, false});
}

void add_spots(const Stretch& s, const HeldSpan& bed, const HeldSpan& sheet, std::vector<PadSpot>& out) {
  add_touches(s, std::max(s.from, bed.from), std::min({s.to, bed.to, sheet.from}), sheet, out);
  const double from = std::max(s.from, sheet.from);
  const double to = std::min(s.to, sheet.to);
  if (to - from > same_place)
    for (const Spot& p : choose_spots(s.stations, s.loaded, from, to,
                                      std::min(least_pad_spacing * s.evening, (to - from) / least_pads)))
      out.push_back({p.x, p.length, s.finger, true});
  add_touches(s, std::max({s.from, bed.from, sheet.to}), std::min(s.to, bed.to), sheet, out);
}

} // namespace

namespace mesher {

namespace {

/// Spots that any of the sheets needs: by increasing x, each place once.
std::vector<PadSpot> all_spots(const Builder& b, std::span<const HeldSpan> sheets) {
  std::vector<PadSpot> all;
  for (const HeldSpan& sheet : sheets) {
    const auto spots = pad_spots(b.machine, b.mesh, sheet);
    all.insert(all.end(), spots.begin(), spots.end());
  }
  // Neighbouring fingers press at the same x, each by itself.
  std::ranges::stable_sort(all, [](const PadSpot& a, const PadSpot& b) {
    return std::abs(a.x - b.x) > same_place ? a.x < b.x : a.finger < b.finger;
  });
  std::vector<PadSpot> out;
  for (const PadSpot& s : all)
    if (out.empty() || s.x - out.back().x > same_place || s.finger != out.back().finger) out.push_back(s);
  return out;
}

/// A row of pads: where in the depth of the land it stands, from its front, and its share of the land.
struct LandRow {
  double fraction = 0.5, share = 1;
};

/// Beams get one resultant in the middle of the land. Under plates and strips rows of pads by the trapezoidal rule:
/// where the nose turns, only its rear rows press.
std::vector<LandRow> rows_of_land(const Machine& m) {
  const std::array<BarModel, 2> models{m.bar(bed_edge(m)).model, m.bar(nose_bar(m)).model};
  const auto any = [&](BarModel model) { return std::ranges::find(models, model) != models.end(); };
  if (m.fingers) return {{}};
  if (any(BarModel::plate) || (any(BarModel::strip) && m.solve.dimension == 3)) {
    std::vector<LandRow> rows;
    for (int i = 0; i < land_rows; ++i) {
      const double share = 1.0 / (land_rows - 1);
      rows.push_back({i * share, i == 0 || i + 1 == land_rows ? share / 2 : share});
    }
    return rows;
  }
  return {{}};
}

/// Where a pad acts on the nose, or on the finger there.
Place place_under_nose(const Builder& b, const PadSpot& spot, double y, double z) {
  const Machine& m = b.machine;
  const Eigen::Vector3d at(spot.x, y, z);
  if (spot.finger < 0) return place_on_bar(m, b.mesh, nose_bar(m), at);
  return place_on_finger(m, b.mesh, b.mesh.fingers[static_cast<std::size_t>(spot.finger)], at);
}

/// Where a row of pads acts on nose and bed.
struct PadFaces {
  Place nose, bed;
  PadFaces(const Builder& b, const PadSpot& spot, double y)
      : nose(place_under_nose(b, spot, y, b.machine.sheet->thickness))
      , bed(place_on_bar(b.machine, b.mesh, bed_edge(b.machine), {spot.x, y, 0})) {}
};

/// A place between two of one section of a bar that stays straight there.
Place between(const Place& front, const Place& rear, double fraction) {
  Place out = front;
  out.at += fraction * (rear.at - front.at);
  for (std::size_t i = 0; i < out.terms.size(); ++i)
    out.terms[i].movement += fraction * (rear.terms[i].movement - front.terms[i].movement);
  return out;
}

PadFaces between(PadFaces front, const PadFaces& rear, double fraction) {
  front.nose = between(front.nose, rear.nose, fraction);
  front.bed = between(front.bed, rear.bed, fraction);
  return front;
}

/// The sheet's friction at a spot, in the middle of the land and, as the sheet's other loads, at z = 0.
Joint friction_at(const Builder& b, const PadSpot& spot, int number) {
  const Machine& m = b.machine;
  const double y = m.nose.setback + m.nose.land / 2;
  Joint j;
  j.index = number;
  j.part = spot.finger;
  j.a = place_on_bar(m, b.mesh, bed_edge(m), {spot.x, y, 0});
  j.b = place_under_nose(b, spot, y, 0);
  lay_friction(m, spot, j);
  return j;
}

} // namespace

void mesh_pads(Builder& b, std::span<const HeldSpan> sheets) {
  const Machine& m = b.machine;
  if (!m.sheet || !m.body(BodyKind::bed).present() || !m.body(BodyKind::clamp).present()) return;
  const HeldSpan own{m.sheet->left(), m.sheet->right()};
  const std::vector<LandRow> across = rows_of_land(m);
  int number = 0;
  const int last = static_cast<int>(across.size()) - 1;
  // Over the few millimetres of a land a strip hardly bends; a row of a plate's nodes does.
  const bool straight =
      last > 0 && m.bar(bed_edge(m)).model != BarModel::plate && m.bar(nose_bar(m)).model != BarModel::plate;
  for (const PadSpot& spot : all_spots(b, sheets.empty() ? std::span(&own, 1) : sheets)) {
    const int first = static_cast<int>(b.mesh.joints.size());
    const auto y = [&](const LandRow& row) { return m.nose.setback + row.fraction * m.nose.land; };
    std::vector<PadFaces> ends;
    if (straight)
      for (const LandRow& end : {across.front(), across.back()}) ends.emplace_back(b, spot, y(end));
    for (const LandRow& row : across) {
      const PadFaces faces = straight ? between(ends.front(), ends.back(), row.fraction) : PadFaces(b, spot, y(row));
      Joint j;
      j.index = number;
      j.part = spot.finger;
      j.a = faces.bed;
      j.b = faces.nose;
      if (straight && row.fraction > 0 && row.fraction < 1) j.between = {first, first + last, row.fraction};
      lay_spot(m, spot, row.share, j);
      b.mesh.joints.push_back(std::move(j));
    }
    // With several sheets it is made at every spot: what is now beyond the sheet may be under another.
    if (spot.sheet || !sheets.empty())
      b.mesh.joints.push_back(friction_at(b, {spot.x, spot.tributary, spot.finger, true}, number));
    ++number;
  }
}

} // namespace mesher

std::vector<PadSpot> pad_spots(const Machine& machine, const Mesh& mesh, const HeldSpan& sheet) {
  const Bar& edge = machine.bar(bed_edge(machine));
  const HeldSpan bed{edge.start, edge.end()};
  const std::vector<double> loaded = loaded_places(machine);
  const std::vector<double> clamped = clamped_places(machine);
  const double evening = evening_length(machine, mesh);
  std::vector<PadSpot> spots;
  if (!machine.fingers) {
    const Bar& nose = machine.bar(nose_bar(machine));
    add_spots({nose.start, nose.end(), mesh.stations, loaded, clamped, evening}, bed, sheet, spots);
    return spots;
  }
  const Fingers& f = *machine.fingers;
  const std::vector<double> none;
  for (std::size_t i = 0; i < f.widths.size(); ++i) { // each at its edges and in the middle of what is over the sheet
    const double from = f.starts[i];
    const double to = from + f.widths[i];
    const std::vector<double> middle{(std::max(from, sheet.from) + std::min(to, sheet.to)) / 2};
    add_spots({from, to, middle, none, none, evening, static_cast<int>(i)}, bed, sheet, spots);
  }
  return spots;
}

void lay_spot(const Machine& machine, const PadSpot& spot, double share, Joint& joint) {
  const auto E = [&](int material) { return machine.materials.at(static_cast<std::size_t>(material)).E; };
  const Sheet& sheet = *machine.sheet;
  const double crowns = machine.body(BodyKind::bed).crown.at(spot.x) + machine.body(BodyKind::clamp).crown.at(spot.x);
  double per_length = E(sheet.material) * machine.nose.land / sheet.thickness;
  if (!spot.sheet) {
    // A strip pressed on a half or quarter space: 2 E per length for either face, one behind the other (an estimate).
    const int nose = machine.fingers ? machine.fingers->material : machine.bar(nose_bar(machine)).material;
    per_length = 2 / (1 / E(machine.bar(bed_edge(machine)).material) + 1 / E(nose));
  }
  joint.kind = spot.sheet ? JointKind::pad : JointKind::touch;
  joint.name = spot.sheet ? "pad" : "nose on bed";
  joint.stiffness[uz] = per_length * spot.tributary * share;
  joint.sense[uz] = UnilateralType::compression;
  joint.gap[uz] = spot.sheet ? crowns : crowns - sheet.thickness;
  joint.tributary = spot.tributary;
}

void lay_friction(const Machine& machine, const PadSpot& spot, Joint& joint) {
  const Sheet& sheet = *machine.sheet;
  const double G = machine.materials.at(static_cast<std::size_t>(sheet.material)).G;
  joint.kind = JointKind::friction;
  joint.name = "friction of the sheet";
  joint.stiffness[uy] = spot.sheet ? G * machine.nose.land / sheet.thickness * spot.tributary : 0;
  joint.tributary = spot.tributary;
}

} // namespace bedbow
