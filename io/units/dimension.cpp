#include "io/units/dimension.h"

#include <algorithm>
#include <array>

namespace bedbow {

namespace {

// In the order of Dim. The limits admit every machine that can be built and keep powers of a value finite.
constexpr std::array kinds{
    DimensionInfo{Dim::length, {1, 0, 0, 0}, "length", "a", "900 mm", "mm, cm, m, um, in, ft, thou", 1e-9, 1e4},
    DimensionInfo{Dim::area, {2, 0, 0, 0}, "area", "an", "1280 mm^2", "mm^2, cm^2, in^2", 1e-15, 1e6},
    DimensionInfo{
        Dim::section_modulus, {3, 0, 0, 0}, "section modulus", "a", "17 cm^3", "mm^3, cm^3, in^3", 1e-22, 1e9},
    DimensionInfo{
        Dim::second_moment, {4, 0, 0, 0}, "second moment of area", "a", "68.3 cm^4", "mm^4, cm^4, in^4", 1e-30, 1e12},
    DimensionInfo{Dim::angle, {0, 0, 0, 1}, "angle", "an", "90 deg", "deg, rad", 1e-9, 100},
    DimensionInfo{Dim::mass, {0, 1, 0, 0}, "mass", "a", "12 kg", "kg, g, lb", 1e-12, 1e9},
    DimensionInfo{
        Dim::density, {-3, 1, 0, 0}, "density", "a", "7850 kg/m^3", "kg/m^3, g/cm^3, lb/in^3, lb/ft^3", 1e-3, 1e6},
    DimensionInfo{Dim::force, {1, 1, -2, 0}, "force", "a", "2.5 kN", "N, kN, lbf, kgf", 1e-9, 1e12},
    DimensionInfo{Dim::stress, {-1, 1, -2, 0}, "stress", "a", "275 MPa", "MPa, GPa, N/mm^2, ksi, psi", 1e-6, 1e15},
    DimensionInfo{Dim::moment, {2, 1, -2, 0}, "moment", "a", "120 N*m", "N*m, N*mm, kN*m, lbf*in, lbf*ft", 1e-9, 1e15},
    DimensionInfo{Dim::force_per_length,
                  {0, 1, -2, 0},
                  "force per length",
                  "a",
                  "10 N/mm",
                  "N/mm, N/m, kN/m, lbf/in, lbf/ft",
                  1e-9,
                  1e15},
    DimensionInfo{Dim::stiffness, {0, 1, -2, 0}, "stiffness", "a", "20 kN/mm", "kN/mm, N/mm, N/m, lbf/in", 1e-6, 1e18},
    DimensionInfo{Dim::rotational_stiffness,
                  {2, 1, -2, -1},
                  "rotational stiffness",
                  "a",
                  "5000 N*m/rad",
                  "N*m/rad, kN*m/rad, N*m/deg, lbf*in/rad",
                  1e-6,
                  1e18},
};

} // namespace

const DimensionInfo& info(Dim dim) {
  return kinds.at(static_cast<std::size_t>(dim));
}

std::string with_article(Dim dim) {
  return std::string(info(dim).article) + " " + std::string(info(dim).name);
}

std::optional<Dim> dimension_of(const Exponents& exponents) {
  const auto* it = std::ranges::find(kinds, exponents, &DimensionInfo::exponents);
  if (it == kinds.end()) return std::nullopt;
  return it->dim;
}

} // namespace bedbow
