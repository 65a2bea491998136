// Section shapes from plugins.
#include "io/plugin/plugin_parts.h"
#include "io/schema/schema.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr std::size_t most_points = 256, most_corners = 4096, most_loops = 16, most_sizes = 32;

/// Buffers filled by one call.
struct Room {
  std::vector<bedbow_stress_point> points = std::vector<bedbow_stress_point>(most_points);
  std::vector<double> corners = std::vector<double>(2 * most_corners);
  std::vector<std::size_t> loop_ends = std::vector<std::size_t>(most_loops);
};

[[noreturn]] void refuse(const std::string& place, const std::string& wrong) {
  throw std::invalid_argument("plugin " + place + ": " + wrong);
}

void check_constants(const bedbow_section& s, const std::string& place) {
  const std::array<std::pair<const char*, double>, 6> positive{
      {{"A", s.A}, {"Iyy", s.Iyy}, {"Izz", s.Izz}, {"J", s.J}, {"Ay", s.Ay}, {"Az", s.Az}}};
  for (const auto& [name, value] : positive)
    if (!(std::isfinite(value) && value > 0))
      refuse(place, std::string("gave ") + name + " = " + std::to_string(value) + "; expected a finite one above zero");
  if (!std::isfinite(s.shear_centre_y) || !std::isfinite(s.shear_centre_z))
    refuse(place, "gave a shear centre that is not a number");
  if (!(s.Iyz * s.Iyz < s.Iyy * s.Izz)) refuse(place, "gave an Iyz whose square is not below Iyy Izz");
}

void check_extents(const bedbow_section& s, const std::string& place) {
  if (s.point_count > most_points) refuse(place, lying_size("stress points", s.point_count, most_points));
  if (s.point_count == 0) refuse(place, "gave no stress point; expected one or more");
  if (s.loop_count > most_loops) refuse(place, lying_size("outline loops", s.loop_count, most_loops));
  if (s.loop_count == 0) refuse(place, "gave no outline; expected the outside, counter-clockwise");
}

Outline outline_of(const bedbow_section& s, const std::string& place, const Room& room) {
  Outline out;
  std::size_t from = 0;
  for (std::size_t l = 0; l < s.loop_count; ++l) {
    const std::size_t to = room.loop_ends[l];
    if (to > most_corners) refuse(place, lying_size("corners", to, most_corners));
    if (to < from + 3) refuse(place, "gave an outline loop of fewer than three corners");
    auto& loop = out.emplace_back();
    for (std::size_t i = from; i < to; ++i) {
      loop.emplace_back(room.corners[2 * i], room.corners[2 * i + 1]);
      if (!loop.back().allFinite()) refuse(place, "gave a corner that is not a number");
    }
    from = to;
  }
  double twice = 0;
  const auto& outside = out.front();
  for (std::size_t i = 0; i < outside.size(); ++i) {
    const Eigen::Vector2d &a = outside[i], &b = outside[(i + 1) % outside.size()];
    twice += a.x() * b.y() - a.y() * b.x();
  }
  if (!(twice > 0)) refuse(place, "gave an outer loop that does not run counter-clockwise");
  return out;
}

StressPoint point_of(const bedbow_stress_point& p, const std::string& place) {
  StressPoint out;
  out.y = p.y;
  out.z = p.z;
  out.tau_Vy = {p.tau_Vy[0], p.tau_Vy[1]};
  out.tau_Vz = {p.tau_Vz[0], p.tau_Vz[1]};
  out.tau_T = {p.tau_T[0], p.tau_T[1]};
  if (!std::isfinite(p.y + p.z) || !out.tau_Vy.allFinite() || !out.tau_Vz.allFinite() || !out.tau_T.allFinite())
    refuse(place, "gave a stress point that is not a number");
  return out;
}

Section section_of(const bedbow_section& s, const std::string& place, const Room& room) {
  check_constants(s, place);
  check_extents(s, place);
  Section out;
  SectionProperties& p = out.props;
  p.A = s.A;
  p.Iyy = s.Iyy;
  p.Izz = s.Izz;
  p.Iyz = s.Iyz;
  p.J = s.J;
  p.Ay = s.Ay;
  p.Az = s.Az;
  p.shear_centre = {s.shear_centre_y, s.shear_centre_z};
  out.outline = outline_of(s, place, room);
  p.lower = p.upper = out.outline.front().front();
  for (const Eigen::Vector2d& corner : out.outline.front()) {
    p.lower = p.lower.cwiseMin(corner);
    p.upper = p.upper.cwiseMax(corner);
  }
  for (std::size_t i = 0; i < s.point_count; ++i) out.points.push_back(point_of(room.points[i], place));
  return out;
}

double size_of(const Shape& shape, const std::string& key) {
  if (key == "width") return shape.width;
  if (key == "height") return shape.height;
  if (key == "diameter") return shape.diameter;
  if (key == "wall") return shape.wall;
  const auto it = shape.given.find(key);
  return it == shape.given.end() ? 0 : it->second;
}

Section make_section(const bedbow_shape& functions, const std::string& place, const std::vector<std::string>& keys,
                     const Shape& shape, double nu) {
  std::vector<double> sizes;
  for (const std::string& key : keys) {
    sizes.push_back(size_of(shape, key));
    if (!(sizes.back() > 0)) refuse(place, key + " must be greater than 0");
  }
  Room room;
  bedbow_section s{};
  s.struct_size = sizeof s;
  s.point_capacity = most_points;
  s.corner_capacity = most_corners;
  s.loop_capacity = most_loops;
  s.points = room.points.data();
  s.corners = room.corners.data();
  s.loop_ends = room.loop_ends.data();
  PluginMessage message;
  if (functions.make(sizes.data(), sizes.size(), nu, &s, message.data(), PluginMessage::size()) != 0)
    refuse(place, message.str());
  const Section own = section_of(s, place, room);
  return shape.turn == 0 ? own : turned(own, shape.turn);
}

bool usable_size(const std::string& key) {
  static constexpr std::array shared{"width", "height", "diameter", "wall"};
  if (std::ranges::find(shared, key) != shared.end()) return true;
  for (const char* table : {"bar", "member", "stock"})
    if (case_schema().table(table).find(key)) return false;
  return !key.empty() && std::ranges::all_of(key, [](unsigned char c) { return std::isalnum(c) != 0 || c == '_'; });
}

std::vector<std::string> size_keys(const bedbow_shape& functions, const PluginEntry& p) {
  if (functions.size_count == 0 || functions.size_count > most_sizes || functions.sizes == nullptr ||
      functions.examples == nullptr)
    throw PluginError(p.place, "must name 1 to " + std::to_string(most_sizes) + " sizes, with an example of each");
  std::vector<std::string> keys;
  for (const char* key : std::span(functions.sizes, functions.size_count)) {
    if (key == nullptr || !usable_size(key))
      throw PluginError(p.place, "its size '" + std::string(key ? key : "") +
                                     "' is not a valid key: use width, height, diameter, wall, or a new word "
                                     "that is not a key of bars");
    keys.emplace_back(key);
  }
  return keys;
}

} // namespace

void add_plugin_shape(const PluginEntry& p, Registries& registries) {
  const auto& functions = p.functions<bedbow_shape>();
  p.need(functions.make != nullptr, "make");
  ShapeEntry entry{p.entry.name, p.entry.description, p.entry.source, size_keys(functions, p), {}, p.origin};
  for (const double example : std::span(functions.examples, functions.size_count)) {
    if (!(std::isfinite(example) && example > 0))
      throw PluginError(p.place, "its example sizes must be finite and above zero");
    entry.examples.push_back(example);
  }
  entry.make = [&functions, place = p.place, keys = entry.sizes](const Shape& shape, double nu) {
    return make_section(functions, place, keys, shape, nu);
  };
  registries.shapes.add(std::move(entry));
}

} // namespace bedbow
