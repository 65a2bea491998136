#include "io/units/unit.h"

#include <array>
#include <numbers>

namespace bedbow {

namespace {

constexpr Exponents length{1, 0, 0, 0}, mass{0, 1, 0, 0}, force{1, 1, -2, 0}, stress{-1, 1, -2, 0}, angle{0, 0, 0, 1},
    moment{2, 1, -2, 0};

constexpr double pi = std::numbers::pi;
constexpr double pound = 0.45359237;
constexpr double gravity = 9.80665;
constexpr double pound_force = pound * gravity;
constexpr double psi = pound_force * 1e8, square_inch = 254 * 254;

constexpr std::array atoms{
    UnitAtom{"m", 1, 1, length},
    UnitAtom{"mm", 1, 1e3, length},
    UnitAtom{"cm", 1, 1e2, length},
    UnitAtom{"dm", 1, 10, length},
    UnitAtom{"um", 1, 1e6, length},
    UnitAtom{"km", 1e3, 1, length},
    UnitAtom{"in", 254, 1e4, length},
    UnitAtom{"inch", 254, 1e4, length},
    UnitAtom{"inches", 254, 1e4, length},
    UnitAtom{"ft", 12 * 254, 1e4, length},
    UnitAtom{"foot", 12 * 254, 1e4, length},
    UnitAtom{"feet", 12 * 254, 1e4, length},
    UnitAtom{"yd", 36 * 254, 1e4, length},
    UnitAtom{"thou", 254, 1e7, length},
    UnitAtom{"mil", 254, 1e7, length},
    UnitAtom{"kg", 1, 1, mass},
    UnitAtom{"g", 1, 1e3, mass},
    UnitAtom{"t", 1e3, 1, mass},
    UnitAtom{"lb", pound, 1, mass},
    UnitAtom{"lbm", pound, 1, mass},
    UnitAtom{"oz", pound, 16, mass},
    UnitAtom{"N", 1, 1, force},
    UnitAtom{"daN", 10, 1, force},
    UnitAtom{"kN", 1e3, 1, force},
    UnitAtom{"MN", 1e6, 1, force},
    UnitAtom{"kgf", gravity, 1, force},
    UnitAtom{"kp", gravity, 1, force},
    UnitAtom{"lbf", pound_force, 1, force},
    UnitAtom{"ozf", pound_force, 16, force},
    UnitAtom{"kip", 1000 * pound_force, 1, force},
    UnitAtom{"Nm", 1, 1, moment},
    UnitAtom{"Nmm", 1, 1e3, moment},
    UnitAtom{"kNm", 1e3, 1, moment},
    UnitAtom{"Pa", 1, 1, stress},
    UnitAtom{"hPa", 1e2, 1, stress},
    UnitAtom{"kPa", 1e3, 1, stress},
    UnitAtom{"MPa", 1e6, 1, stress},
    UnitAtom{"GPa", 1e9, 1, stress},
    UnitAtom{"bar", 1e5, 1, stress},
    UnitAtom{"psi", psi, square_inch, stress},
    UnitAtom{"ksi", 1e3 * psi, square_inch, stress},
    UnitAtom{"Msi", 1e6 * psi, square_inch, stress},
    UnitAtom{"rad", 1, 1, angle},
    UnitAtom{"mrad", 1, 1e3, angle},
    UnitAtom{"deg", pi, 180, angle},
    UnitAtom{"degree", pi, 180, angle},
    UnitAtom{"degrees", pi, 180, angle},
    UnitAtom{"arcmin", pi, 180 * 60, angle},
    UnitAtom{"arcsec", pi, 180 * 3600, angle},
    UnitAtom{"s", 1, 1, {0, 0, 1, 0}},
};

} // namespace

std::span<const UnitAtom> unit_atoms() {
  return atoms;
}

} // namespace bedbow
