// Referee for whole clamps: three clamp bars whose nose presses on a bed, pulled down by washers and carried by cams,
// in 3D elasticity, refined until the figures stand; and the local compliance of a land in plane strain.
//
//     cmake -B build/reference -DBEDBOW_REFERENCE=ON && cmake --build build/reference --target bedbow_clamps
//     build/reference/tests/reference/bedbow_clamps > tests/reference/clamps.json
//
// Figures' definitions: tests/reference/README.md. mm and N; E = 210 GPa, nu = 0.3.
#include "tests/reference/local_law.h"
#include "tests/reference/pressed.h"
#include <gmm/gmm_except.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <ctime>
#include <iostream>
#include <numbers>

namespace {

using namespace referee;
using Json = nlohmann::ordered_json;

constexpr double middle = 450, land_width = 15, pull = 15000, station = 60;
constexpr double rigid_bed = 1e9, spring_bed = 1e5 / land_width; ///< [N/mm3]
const std::vector<double> stations{60, 150, 300, 450};

struct Level {
  double along, along_far;    ///< greatest elements along x up to 100 mm and beyond [mm]
  double least, growth, most; ///< in the cross-section, from the rear edge of the land
  double most_up;             ///< along z
};

const std::vector<Level> of_flats{{15, 40, 1, 1.8, 14, 14}, {12, 30, 0.5, 1.6, 10, 10}, {8, 20, 0.25, 1.5, 8, 8}};
/// Fine at the land's rear edge alone, where a rigid bed presses a turning bar.
const std::vector<Level> at_edge{{15, 40, 0.125, 2, 14, 35}, {15, 40, 0.0625, 2, 14, 35}};
const std::vector<Level> of_edges{{15, 40, 1, 1.8, 14, 35}, {12, 30, 0.5, 1.6, 10, 25}, {10, 22, 0.25, 1.5, 8, 20}};

struct Clamp {
  std::string name, what;
  std::vector<Level> levels;
  std::vector<Box> solid;            ///< over the half length
  double washer_y, washer_z;         ///< centre of the washer on the upper face there
  double cam_y;                      ///< middle of the cam's patch
  Line y, z;                         ///< marks that the body needs besides washer, cam and land
  double front_height;               ///< of the front face
  std::vector<Point> pinned_heights; ///< two places off a line along x, at mid-length; the first is held along y, too
};

std::vector<Clamp> clamps() {
  return {{"flat",
           "flat 900 x 120 x 20",
           of_flats,
           {{{0, 0, 0}, {middle, 120, 20}}},
           70,
           20,
           112,
           {0, 120},
           {0, 10, 20},
           20,
           {{middle, 0, 20}, {middle, 120, 20}}},
          {"flat with rib",
           "flat 900 x 120 x 20, bar on edge 20 x 100 fused on top over y = 30 to 50",
           of_edges,
           {{{0, 0, 0}, {middle, 120, 20}}, {{0, 30, 20}, {middle, 50, 120}}},
           70,
           20,
           112,
           {0, 30, 40, 50, 120},
           {0, 10, 20, 120},
           20,
           {{middle, 0, 20}, {middle, 120, 20}}},
          {"L",
           "spine 30 x 70 on edge over y = 0 to 30, tail 100 x 10 fused to its rear face over y = 30 to 130",
           of_edges,
           {{{0, 0, 0}, {middle, 30, 70}}, {{0, 30, 0}, {middle, 130, 10}}},
           75,
           10,
           122,
           {0, 30, 130},
           {0, 5, 10, 35, 70},
           70,
           {{middle, 0, 70}, {middle, 30, 70}}}};
}

double washer_half() {
  return 36 * std::sqrt(std::numbers::pi) / 4; // of the square as large as a disc of 36 mm
}

Line sorted(Line marks) {
  std::sort(marks.begin(), marks.end());
  marks.erase(std::unique(marks.begin(), marks.end(), [](double a, double b) { return b - a < 1e-6; }), marks.end());
  return marks;
}

std::vector<Line> mesh(const Clamp& c, const Level& level) {
  const double half = washer_half();
  const Line near_x = sorted({0, 50, 60, 70, station - half, station + half, 100});
  Line x = graded(near_x, 0, level.along, 1, level.along);
  const Line far =
      graded({100, 140, 150, 160, 200, 290, 300, 310, 370, 440, middle}, 100, level.along, 1.1, level.along_far);
  x.insert(x.end(), far.begin() + 1, far.end());
  Line y = c.y;
  for (const double mark : {0., land_width / 2, land_width, c.washer_y - half, c.washer_y, c.washer_y + half,
                            c.cam_y - 2, c.cam_y, c.cam_y + 2})
    y.push_back(mark);
  return {x, graded(sorted(y), land_width, level.least, level.growth, level.most),
          graded(c.z, 0, level.least, level.growth, level.most_up)};
}

/// Heights along a line of the body, at the stations.
Json heights(const Body& body, const Pressed& s, double y, double z) {
  Json out = Json::array();
  for (const double x : stations) out.push_back(s.u[body.unknown({x, y, z}, 2)]);
  return out;
}

/// Angles about x at the stations [rad]: y towards z, that is, positive where the front sinks against the rear.
Json turns(const Json& front, const Json& rear, double apart) {
  Json out = Json::array();
  for (std::size_t i = 0; i < stations.size(); ++i)
    out.push_back((rear[i].get<double>() - front[i].get<double>()) / apart);
  return out;
}

Json front_face_turns(const Body& body, const Pressed& s, double height) {
  Json out = Json::array();
  for (const double x : stations)
    out.push_back((s.u[body.unknown({x, 0, 0}, 1)] - s.u[body.unknown({x, 0, height}, 1)]) / height);
  return out;
}

/// Force per length and its place, over 20 mm about each station (10 mm before mid-length, the other half mirrored).
void bed_figures(const Pressed& s, Json& out) {
  double force = 0, moment = 0, to = 0;
  for (const BedForce& f : s.bed) {
    force += f.force;
    moment += f.force * f.at[1];
    if (f.force > 0) to = std::max(to, f.at[0]);
  }
  out["nose_N"] = 2 * force;
  out["nose_y_mm"] = moment / force;
  out["nose_presses_up_to_x_mm"] = to;
  Json per_length = Json::array(), places = Json::array(), fronts = Json::array();
  for (const double x : stations) {
    double f = 0, m = 0, front = land_width;
    for (const BedForce& b : s.bed) {
      if (std::abs(b.at[0] - x) > 10) continue;
      f += b.force;
      m += b.force * b.at[1];
      if (b.force > 0) front = std::min(front, b.at[1]);
    }
    per_length.push_back(f / (x < middle ? 20 : 10));
    places.push_back(f > 0 ? Json(m / f) : Json());
    fronts.push_back(f > 0 ? Json(front) : Json());
  }
  out["nose_N_per_mm"] = per_length;
  out["nose_y_at_stations_mm"] = places;
  out["pressed_from_y_mm"] = fronts;
}

Json figures(const Clamp& c, const Body& body, const Pressed& s) {
  Json out{{"cam_N", s.cam}};
  if (!s.bed.empty()) bed_figures(s, out);
  const Json front = heights(body, s, 0, 0), mid = heights(body, s, land_width / 2, 0),
             rear = heights(body, s, land_width, 0);
  out["front_edge_z_mm"] = front;
  out["land_middle_z_mm"] = mid;
  out["land_rear_z_mm"] = rear;
  if (c.front_height < 30) out["middle_plane_front_z_mm"] = heights(body, s, 0, c.front_height / 2);
  out["upper_front_edge_z_mm"] = heights(body, s, 0, c.front_height);
  const auto bow = [](const Json& line) { return line.back().get<double>() - line.front().get<double>(); };
  out["bow_front_edge_mm"] = bow(front);
  out["bow_land_middle_mm"] = bow(mid);
  out["turn_land_rad"] = turns(front, rear, land_width);
  out["turn_front_face_rad"] = front_face_turns(body, s, c.front_height);
  out["washer_z_mm"] = s.u.dot(body.unit({{station - washer_half(), c.washer_y - washer_half(), c.washer_z},
                                          {station + washer_half(), c.washer_y + washer_half(), c.washer_z}}));
  out["over_cam_z_mm"] = s.u[body.unknown({station, c.cam_y, c.washer_z}, 2)];
  return out;
}

void run(const Clamp& c, const Level& level, const std::string& suffix, Json& out) {
  const std::time_t begun = std::time(nullptr);
  const Body body({mesh(c, level),
                   c.solid,
                   {{{middle, -1, -1}, {middle, 999, 999}}},
                   {{c.pinned_heights[0], {false, true, true}}, {c.pinned_heights[1], {false, false, true}}}});
  std::cerr << c.name << ": " << body.elements() << " elements, " << body.unknowns() << " unknowns, factorized in "
            << std::time(nullptr) - begun << " s\n";
  const double half = washer_half();
  const Box land{{0, 0, 0}, {middle, land_width, 0}},
      cam{{station - 10, c.cam_y - 2, 0}, {station + 10, c.cam_y + 2, 0}};
  const Eigen::VectorXd washer = -pull * body.unit({{station - half, c.washer_y - half, c.washer_z},
                                                    {station + half, c.washer_y + half, c.washer_z}});
  const auto pressed = press(body, {land, cam, washer, {rigid_bed, spring_bed}});
  // The line load that balances washer and cam: moments about the cam.
  const double nose = pull * (c.cam_y - c.washer_y) / (c.cam_y - land_width / 2);
  const Pressed line = balance(body, cam, washer + nose * body.unit(land), land);
  const std::vector<std::pair<std::string, const Pressed*>> variants{
      {"rigid bed", &pressed[0]}, {"spring bed", &pressed[1]}, {"line load", &line}};
  for (const auto& [name, s] : variants) {
    Json row{{"smallest_mm", level.least}, {"elements", body.elements()}, {"unknowns", body.unknowns()}};
    row.update(figures(c, body, *s));
    std::cerr << c.name << ", " << name << ", " << s->rounds << " rounds, " << std::time(nullptr) - begun
              << " s: " << row.dump() << '\n';
    out[name + suffix].push_back(row);
  }
}

std::string today() {
  char out[16];
  const std::time_t now = std::time(nullptr);
  std::strftime(out, sizeof out, "%Y-%m-%d", std::localtime(&now));
  return out;
}

} // namespace

int main(int argc, char** argv) {
  gmm::set_traces_level(0);
  const std::string only = argc > 1 ? argv[1] : ""; // one clamp or "land"; all by default
  Json out{{"library", "GetFEM " BEDBOW_GETFEM_VERSION},
           {"elements", "27-node bricks, in the plane 9-node quadrilaterals; CHOLMOD's supernodal factorization"},
           {"date", today()},
           {"material", {{"E_MPa", 210000}, {"nu", 0.3}}}};
  for (const Clamp& c : clamps()) {
    if (!only.empty() && only != c.name) continue;
    Json variants;
    for (const Level& level : c.levels) run(c, level, "", variants);
    for (const Level& level : at_edge)
      if (c.name == "L") run(c, level, ", fine at the edge", variants);
    out["clamps"][c.name] = {{"what", c.what}, {"variants", variants}};
  }
  if (only.empty() || only == "land") out["land"] = local_law();
  std::cout << out.dump(1) << '\n';
}
