#include "solver/sheet/din6935.h"
#include "solver/sheet/operator_force.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>

namespace bedbow::verification {

namespace {
constexpr double degree = std::numbers::pi / 180;
} // namespace

TEST(Din6935, NeutralLine) {
  const char* source = "DIN 6935 (1975/2011), k = 0.65 + 0.5 lg(r/s)";
  record("H10", source, "k at r/s = 1", din6935_k(1, 1), 0.65, 1e-12);
  record("H10", source, "k at r/s = 1.5", din6935_k(1.5, 1), 0.7380, 0.00005 / 0.738);
  record("H10", source, "k at r/s = 5", din6935_k(5, 1), 1, 1e-12);
}

TEST(Din6935, FlatLengthCorrection) {
  // Its v is what to take off, so of the other sign.
  const char* source = "DIN 6935, as in a German book of tables, scribd.com/document/401383818";
  struct Row {
    double r, s, v;
  };
  for (const Row& w : {Row{1, 1, -1.9187}, {1.5, 1.5, -2.8780}, {3, 2, -4.1283}, {10, 2, -6.7212}})
    record("H11", source,
           "v at 90 deg, r = " + std::to_string(w.r).substr(0, 3) + ", s = " + std::to_string(w.s).substr(0, 3),
           din6935_correction(90 * degree, w.r * 1e-3, w.s * 1e-3) * 1e3, w.v, 0.00005 / -w.v, "mm");
  // v turns positive only below an opening of 180 - 360/pi = 65.408 deg, reached for r/s -> infinity.
  const double beta = (180 - 360 / std::numbers::pi) * degree, r = 1e9, s = 1;
  record("H11", "DIN 6935: v > 0 only for openings below 65 deg 24' 30\"", "v / r at that opening, r/s = 1e9",
         din6935_correction(std::numbers::pi - beta, r, s) / r, 0, 2 * s / r);
  record("H12", "DIN 6935, 90 < beta <= 165 (formula)", "v at an opening of 120 deg, r = s = 2",
         din6935_correction(60 * degree, 2e-3, 2e-3) * 1e3,
         std::numbers::pi / 3 * (2 + 0.65) - 8 * std::tan(30 * degree), 1e-12, "mm");
}

TEST(Din6935, LeastInsideRadius) {
  const char* source = "DIN 6935 (1975-10) as reproduced in a trade table";
  struct Row {
    const char* id;
    double s, rm, radius;
  };
  const Row rows[] = {{"H13", 1, 390, 1},   {"H13", 1, 490, 1.2},   {"H13", 1, 640, 1.6}, {"H13", 1.5, 350, 1.6},
                      {"H13", 2.5, 450, 3}, {"H13", 3, 600, 5},     {"H13", 4, 390, 5},   {"H13", 5, 391, 8},
                      {"H13", 6, 490, 10},  {"H13", 7, 491, 12},    {"H13", 8, 390, 12},  {"H13", 10, 490, 20},
                      {"H14", 12, 390, 20}, {"H14", 14, 640, 32},   {"H14", 16, 490, 32}, {"H14", 18, 390, 36},
                      {"H14", 20, 640, 50}, {"H13", 1.01, 390, 1.6}};
  for (const Row& w : rows) {
    Material steel = *find_material("S235JR");
    steel.tensile = w.rm * 1e6;
    record(w.id, source,
           "radius, s = " + std::to_string(w.s).substr(0, 4) + ", Rm = " + std::to_string(static_cast<int>(w.rm)),
           least_inside_radius(steel, w.s * 1e-3).value * 1e3, w.radius, 1e-12, "mm");
  }
  for (const auto& [t, ratio] : {std::pair{0.5, 0.5}, {1.5, 1.0}, {6.0, 1.5}})
    record("H16", "EN 485-2, EN AW-5052 H22/H32, 90 deg", "radius / t at t = " + std::to_string(t).substr(0, 3),
           least_inside_radius(*find_material("5052-H32"), t * 1e-3).value / (t * 1e-3), ratio, 1e-12);
}

TEST(Din6935, AngleTolerance) {
  for (const auto& [leg, tolerance] : {std::pair{30.0, 2.0}, {50.0, 1.75}, {80.0, 1.5}, {120.0, 1.25}, {121.0, 1.0}})
    record("H15", "DIN 6935 (from memory, low confidence)", "tolerance, leg " + std::to_string(static_cast<int>(leg)),
           angle_tolerance(leg * 1e-3).value / degree, tolerance, 1e-12, "deg");
}

TEST(DasWang2004, StandingStrength) {
  const char* source = "Das & Wang, Int. J. Occup. Safety Ergon. 10 (2004) 43-58";
  record("K10", source, "men pull", find_effort_limit("men pull")->force, 400, 0, "N");
  record("K10", source, "men push, standing", find_effort_limit("men push, standing")->force, 251, 0, "N");
  record("K10", source, "women pull, standing", find_effort_limit("women pull, standing")->force, 244, 0, "N");
  record("K10", source, "women push, standing", find_effort_limit("women push, standing")->force, 140, 0, "N");
}

TEST(En10053, BasicForces) {
  const char* source = "EN 1005-3, as in ergonomiesite.be/en-1005-3-maximale-krachten";
  for (const auto& [key, force] : {std::pair{"power grip", 250.0},
                                   {"arm down", 75.0},
                                   {"arm push", 62.0},
                                   {"arm pull, trunk supported", 225.0},
                                   {"whole body push", 200.0},
                                   {"pedal, leg", 475.0}})
    record("K8", source, key, find_effort_limit(key)->force, force, 0, "N");
}

} // namespace bedbow::verification
