// Referee for beams and plates: four bodies in 3D elasticity, quadratic bricks refined until the figures stand.
//
//     cmake -B build/reference -DBEDBOW_REFERENCE=ON && cmake --build build/reference --target bedbow_reference
//     build/reference/tests/reference/bedbow_reference > tests/reference/elasticity.json
//
// Forces are spread over volumes or patches and balance each other; pins only stop the body as a whole. Nothing is held
// along a line or over a patch, where 3D elasticity is singular or stiffer than any beam; figures are taken from
// neutral line to neutral line. N and mm, E = 210 GPa, nu = 0.3.
#include "tests/reference/solid.h"
#include <gmm/gmm_except.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <ctime>
#include <iostream>

namespace {

using namespace referee;
using Json = nlohmann::ordered_json;
using Values = std::vector<std::pair<std::string, double>>;

struct Configuration {
  std::string name, what;
  Problem problem;
  std::vector<double> sizes; ///< of the elements, coarse to fine [mm]
  std::function<Values(const Solution&)> values;
};

std::vector<Pin> three_points(const Point& a, const Point& along_x, const Point& beside) {
  return {{a, {true, true, true}}, {along_x, {false, true, true}}, {beside, {false, false, true}}};
}

/// Movement along k of b off the straight line through a and c, all at the same y and z.
double off_chord(const Solution& s, int k, const Point& a, const Point& b, const Point& c) {
  const double t = (b[0] - a[0]) / (c[0] - a[0]);
  return s.at(b)[k] - (1 - t) * s.at(a)[k] - t * s.at(c)[k];
}

// A cantilever four times as long as high: 20 x 60 x 240, its root face held, 10 kN spread over its end face.
Configuration cantilever() {
  Configuration c{"cantilever", "20 x 60 x 240 bar, root face held, 10 kN down over the end face", {}, {20, 10, 5}, {}};
  c.problem.lines = {{{0, 240}, {-10, 0, 10}, {-30, 0, 30}}};
  c.problem.solid = {{{0, -10, -30}, {240, 10, 30}}};
  c.problem.clamped = {{{0, -10, -30}, {0, 10, 30}}};
  c.problem.forces = {{{{240, -10, -30}, {240, 10, 30}}, {0, 0, -10000}}};
  c.values = [](const Solution& s) { return Values{{"tip_z_mm", s.at({240, 0, 0})[2]}}; };
  return c;
}

// A bar on two patches of 20 mm, pressed from above by a patch of 40 mm: 20 x 60 x 600, patches under x = 60 and 540.
Configuration on_two_patches() {
  Configuration c{"bar on two patches",
                  "20 x 60 x 600 bar, 20 kN on 40 mm above, 20 mm patches below at 60 and 540",
                  {},
                  {20, 10, 5},
                  {}};
  c.problem.lines = {{{0, 50, 60, 70, 280, 300, 320, 530, 540, 550, 600}, {-10, 0, 10}, {-30, 0, 30}}};
  c.problem.solid = {{{0, -10, -30}, {600, 10, 30}}};
  c.problem.forces = {{{{280, -10, 30}, {320, 10, 30}}, {0, 0, -20000}},
                      {{{50, -10, -30}, {70, 10, -30}}, {0, 0, 10000}},
                      {{{530, -10, -30}, {550, 10, -30}}, {0, 0, 10000}}};
  c.problem.pins = three_points({60, 0, 0}, {540, 0, 0}, {60, 10, 0});
  c.values = [](const Solution& s) {
    return Values{{"middle_z_mm", off_chord(s, 2, {60, 0, 0}, {300, 0, 0}, {540, 0, 0})},
                  {"end_z_mm", off_chord(s, 2, {60, 0, 0}, {0, 0, 0}, {540, 0, 0})}};
  };
  return c;
}

// Two flats welded to an L, 60 x 10 lying on 10 x 60 standing, 600 long: 2 kN down in the middle, half of it up at
// either end, each spread over 20 mm of the web's volume: skew bending, nearly without twist.
Configuration welded_l() {
  Configuration c{"welded L",
                  "60 x 10 flat on a 10 x 60 web, 600 long; 2 kN down on the web's middle, half at either end",
                  {},
                  {15, 10, 5},
                  {}};
  c.problem.lines = {{{0, 10, 20, 290, 300, 310, 580, 590, 600}, {0, 5, 10, 60}, {-70, -40, -10, -5, 0}}};
  const auto web = [](double from, double to) { return Box{{from, 0, -70}, {to, 10, -10}}; };
  c.problem.solid = {{{0, 0, -10}, {600, 60, 0}}, web(0, 600)};
  c.problem.forces = {{web(0, 20), {0, 0, 1000}}, {web(290, 310), {0, 0, -2000}}, {web(580, 600), {0, 0, 1000}}};
  c.problem.pins = three_points({10, 5, -40}, {590, 5, -40}, {10, 60, -5});
  c.values = [](const Solution& s) {
    const auto off = [&s](int k, double z) { return off_chord(s, k, {10, 5, z}, {300, 5, z}, {590, 5, z}); };
    return Values{{"corner_y_mm", off(1, -5)}, {"corner_z_mm", off(2, -5)}, {"web_z_mm", off(2, -40)}};
  };
  return c;
}

// A lying strip pressed by a post: 300 x 120 x 10, 2 kN over 20 x 20 mm at x = 100, the ends carried along their edges.
Configuration strip_under_post() {
  Configuration c{"strip under a post",
                  "300 x 120 x 10 strip, 2 kN on 20 x 20 at x = 100, end faces carry it",
                  {},
                  {20, 10, 5},
                  {}};
  c.problem.lines = {{{0, 90, 100, 110, 300}, {-60, -10, 0, 10, 60}, {-5, 0, 5}}};
  c.problem.solid = {{{0, -60, -5}, {300, 60, 5}}};
  c.problem.forces = {{{{90, -10, 5}, {110, 10, 5}}, {0, 0, -2000}},
                      {{{0, -60, -5}, {0, 60, 5}}, {0, 0, 2000 * 2. / 3}},
                      {{{300, -60, -5}, {300, 60, 5}}, {0, 0, 2000 / 3.}}};
  c.problem.pins = three_points({0, 0, 0}, {300, 0, 0}, {0, 60, 0});
  c.values = [](const Solution& s) {
    const auto off = [&s](double x, double y) {
      const double t = x / 300;
      return s.at({x, y, 0})[2] - (1 - t) * s.at({0, 0, 0})[2] - t * s.at({300, 0, 0})[2];
    };
    return Values{{"under_post_z_mm", off(100, 0)},
                  {"beside_post_z_mm", (off(100, 60) + off(100, -60)) / 2},
                  {"corner_z_mm", (off(0, 60) + off(0, -60)) / 2}};
  };
  return c;
}

std::string today() {
  char out[16];
  const std::time_t now = std::time(nullptr);
  std::strftime(out, sizeof out, "%Y-%m-%d", std::localtime(&now));
  return out;
}

} // namespace

int main() {
  gmm::set_traces_level(0);
  Json out{{"library", "GetFEM " BEDBOW_GETFEM_VERSION},
           {"elements", "27-node bricks (FEM_QK(3,2)), direct solution"},
           {"date", today()},
           {"material", {{"E_MPa", 210000}, {"nu", 0.3}}}};
  for (const Configuration& c : {cantilever(), on_two_patches(), welded_l(), strip_under_post()}) {
    Json meshes = Json::array();
    for (const double size : c.sizes) {
      const Solution s = solve(c.problem, size);
      Json row{{"size_mm", size}, {"elements", s.elements}, {"unknowns", s.unknowns}};
      for (const auto& [name, value] : c.values(s)) row[name] = value;
      std::cerr << c.name << ": " << row.dump() << '\n';
      meshes.push_back(row);
    }
    out["configurations"][c.name] = {{"what", c.what}, {"meshes", meshes}};
  }
  std::cout << out.dump(1) << '\n';
}
