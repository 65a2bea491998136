#include "solver/strength/screw.h"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr double gamma_M2 = 1.25;
constexpr const char* table_3_4 = "EN 1993-1-8 Table 3.4";

double shear_factor(const std::string& grade) {
  constexpr std::array brittle{"4.8", "5.8", "6.8", "9.8", "10.9", "12.9"};
  return std::ranges::find(brittle, grade) == brittle.end() ? 0.6 : 0.5;
}

// EN 1993-1-8 uses the nominal strength of a class, its first number in hundreds of MPa.
double nominal_tensile(const Grade& grade) {
  const auto point = grade.name.find('.');
  const bool iso_class = point != std::string::npos && grade.name.find_first_not_of("0123456789.") == std::string::npos;
  return iso_class ? std::stoi(grade.name.substr(0, point)) * 100e6 : grade.tensile;
}

} // namespace

double shear_resistance(const Thread& thread, const Grade& grade) {
  return shear_factor(grade.name) * nominal_tensile(grade) * stress_area(thread) / gamma_M2;
}

double tension_resistance(const Thread& thread, const Grade& grade) {
  return std::min(0.9 * nominal_tensile(grade) * stress_area(thread) / gamma_M2, proof_load(thread, grade));
}

double prying_tension(double force, double force_arm, double screw_arm) {
  if (!(screw_arm > 0)) throw std::invalid_argument("prying: the screw must be off the heel, screw_arm > 0");
  return force * force_arm / screw_arm;
}

std::vector<Check> check_screw(const Screw& s, double shear, double tension, double preload) {
  if (!(s.plate_thickness > 0)) throw std::invalid_argument("screw: thickness of the thinner bar must be > 0");
  const double pull = tension + preload;
  const Allowable V = overridden(s.allowed_shear, {shear_resistance(s.thread, s.grade), table_3_4});
  const Allowable T = overridden(s.allowed_tension, {tension_resistance(s.thread, s.grade), table_3_4});
  const Allowable bearing = overridden(s.allowed_bearing, {1.5 * s.plate.yield, "1.5 yield, EN 1993-1-8 Table 3.10"});
  std::vector<Check> out;
  out.push_back({"screw shear", shear, V, Quantity::force});
  out.push_back({"screw tension", pull, T, Quantity::force});
  if (V.value > 0 && T.value > 0)
    out.push_back(
        {"screw shear and tension", shear / V.value + pull / (1.4 * T.value), {1, table_3_4}, Quantity::ratio});
  out.push_back(
      {"screw bearing", shear / (s.thread.d * s.plate_thickness), bearing, Quantity::stress, Failure::yields});
  return out;
}

} // namespace bedbow
