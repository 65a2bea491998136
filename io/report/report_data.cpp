// Data for the script of a report's page. Its reader is tools/report/src/data.ts.
#include "io/draw/surface.h"
#include "io/report/report.h"
#include "io/text/base64.h"
#include "io/units/quantities_out.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

namespace bedbow {

namespace {

using Json = nlohmann::ordered_json;

template <class Value> std::string packed(const std::vector<Value>& values) {
  return base64(std::as_bytes(std::span(values)));
}

/// Numbers as 16-bit multiples of a step, to keep the page small: half a step is 1/65000 of the greatest.
template <class Count> struct Counts {
  std::vector<Count> values;
  double step = 0;
};

template <class Count> Counts<Count> counted(const std::vector<double>& values) {
  double most = 0;
  for (const double v : values)
    if (std::isfinite(v)) most = std::max(most, std::abs(v));
  Counts<Count> out;
  out.step = most / std::numeric_limits<Count>::max();
  for (const double v : values)
    out.values.push_back(static_cast<Count>(std::isfinite(v) && out.step > 0 ? std::lround(v / out.step) : 0));
  return out;
}

Json vector(const Eigen::Vector3d& v, double factor = 1) {
  Json out = Json::array();
  for (const double c : v) out.push_back(twelve_digits(c * factor));
  return out;
}

double yield_of(const Fields& fields, const std::string& name) {
  for (const BarField& b : fields.bars)
    if (b.name == name) return b.yield;
  for (const ShellField& s : fields.shells)
    if (s.name == name) return s.yield;
  return 0;
}

/// Parts and triangles: the same for all scenes of a machine.
Json mesh_json(const Surface& surface, const Fields& fields) {
  std::vector<std::uint32_t> corners;
  Json parts = Json::array();
  for (const SurfacePart& part : surface.parts) {
    const std::size_t first = corners.size();
    for (int c = part.first_cell; c < part.first_cell + part.cells; ++c) {
      const auto [p, q, r, s] = surface.cells[static_cast<std::size_t>(c)];
      for (const int i : {p, q, r}) corners.push_back(static_cast<std::uint32_t>(i));
      if (s >= 0)
        for (const int i : {p, r, s}) corners.push_back(static_cast<std::uint32_t>(i));
    }
    parts.push_back({{"name", part.name},
                     {"body", part.body},
                     {"first_triangle", first / 3},
                     {"triangles", (corners.size() - first) / 3},
                     {"yield_MPa", to_MPa(yield_of(fields, part.name))}});
  }
  return {{"parts", std::move(parts)}, {"corners_u32", packed(corners)}};
}

std::string places_packed(const Surface& surface) {
  std::vector<float> at;
  for (const SurfacePoint& p : surface.points)
    for (const double c : p.at) at.push_back(static_cast<float>(to_mm(c)));
  return packed(at);
}

/// The index of an item in a list, added where it is new.
std::size_t placed(Json& list, Json item) {
  for (std::size_t i = 0; i < list.size(); ++i)
    if (list[i] == item) return i;
  list.push_back(std::move(item));
  return list.size() - 1;
}

Json arrows_json(const Fields& fields) {
  Json out = Json::array();
  for (const ForceArrow& a : fields.forces)
    out.push_back({{"name", a.name},
                   {"kind", a.kind},
                   {"at_mm", vector(a.at, 1e3)},
                   {"force_N", vector(a.force)},
                   {"pressure_MPa", twelve_digits(to_MPa(a.pressure))}});
  return out;
}

Json facts_json(const std::map<std::string, ReportFacts>& facts) {
  Json out = Json::object();
  for (const auto& [name, list] : facts) {
    Json rows = Json::array();
    for (const auto& [label, text] : list) rows.push_back({label, text});
    out[name] = std::move(rows);
  }
  return out;
}

Json scene_json(const ReportScene& scene, Json& meshes, Json& places) {
  const Surface surface = surface_of(*scene.fields);
  std::vector<double> move;
  std::vector<double> stress;
  for (const SurfacePoint& p : surface.points) {
    for (const double c : p.displacement) move.push_back(to_mm(c));
    stress.push_back(to_MPa(p.von_mises));
  }
  const auto moves = counted<std::int16_t>(move);
  const auto stresses = counted<std::uint16_t>(stress);
  return {{"name", scene.name},
          {"kind", scene.kind == ReportScene::Kind::step ? "step" : "mode"},
          {"angle_deg", to_deg(scene.angle)},
          {"mesh", placed(meshes, mesh_json(surface, *scene.fields))},
          {"place", placed(places, places_packed(surface))},
          {"move_i16", packed(moves.values)},
          {"move_step_mm", moves.step},
          {"stress_u16", packed(stresses.values)},
          {"stress_step_MPa", stresses.step},
          {"arrows", arrows_json(*scene.fields)},
          {"facts", facts_json(scene.facts)}};
}

Json fixture_json(const ReportFixture& f) {
  return {{"name", f.name},
          {"kind", f.kind},
          {"at_mm", vector(f.at, 1e3)},
          {"axis", vector(f.axis)},
          {"diameter_mm", to_mm(f.diameter)},
          {"length_mm", to_mm(f.length)}};
}

Json plot_json(const Plot& plot) {
  Json series = Json::array();
  for (const PlotSeries& s : plot.series) {
    Json x = Json::array();
    Json y = Json::array();
    for (std::size_t i = 0; i < s.x.size(); ++i) {
      x.push_back(std::isfinite(s.x[i]) ? Json(twelve_digits(s.x[i])) : Json());
      y.push_back(std::isfinite(s.y[i]) ? Json(twelve_digits(s.y[i])) : Json());
    }
    series.push_back({{"name", s.name}, {"x", std::move(x)}, {"y", std::move(y)}});
  }
  return {{"x_label", plot.x_label}, {"y_label", plot.y_label}, {"series", std::move(series)}};
}

Json unit_json(const OutputUnit& unit, double base) {
  return {{"name", unit.name}, {"size", unit.size / base}};
}

} // namespace

std::string report_data(const Report& r) {
  Json meshes = Json::array();
  Json places = Json::array();
  Json scenes = Json::array();
  for (const ReportScene& s : r.scenes) scenes.push_back(scene_json(s, meshes, places));
  Json fixtures = Json::array();
  for (const ReportFixture& f : r.fixtures) fixtures.push_back(fixture_json(f));
  Json plots = Json::array();
  for (const ReportSection& s : r.sections)
    for (const Plot& p : s.plots) plots.push_back(plot_json(p));
  Json out{{"units",
            {{"length_in_mm", unit_json(r.units.length, 1e-3)},
             {"force_in_N", unit_json(r.units.force, 1)},
             {"stress_in_MPa", unit_json(r.units.stress, 1e6)}}},
           {"first_scene", r.first_scene},
           {"meshes", std::move(meshes)},
           {"places_f32", std::move(places)},
           {"scenes", std::move(scenes)},
           {"fixtures", std::move(fixtures)},
           {"plots", std::move(plots)}};
  if (r.sheet)
    out["sheet"] = {{"left_mm", to_mm(r.sheet->left())},
                    {"right_mm", to_mm(r.sheet->right())},
                    {"flange_mm", to_mm(r.sheet->flange)},
                    {"thickness_mm", to_mm(r.sheet->thickness)},
                    {"grip_mm", to_mm(r.sheet->grip)}};
  // Within a script element "<" could end it or open a comment; JSON may write it as an escape.
  std::string text = out.dump(-1, ' ', false, Json::error_handler_t::replace);
  for (std::size_t at = text.find('<'); at != std::string::npos; at = text.find('<', at))
    text.replace(at, 1, "\\u003c");
  return text;
}

} // namespace bedbow
