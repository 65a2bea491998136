#include "mesh/piece/material_table.h"

#include "mesh/piece/si.h"

namespace bedbow {

namespace {

using si::GPa, si::MPa, si::mm;

// E, Poisson's ratio and density of a family of metals; G follows from E and nu as it must for an isotropic material.
struct Metal {
  double E, nu, density;
};
constexpr Metal structural_steel{210 * GPa, 0.3, 7850}; // EN 1993-1-1 3.2.6
constexpr Metal bolt_steel{205 * GPa, 0.3, 7850};
constexpr Metal carbon_steel{205 * GPa, 0.29, 7850};
constexpr Metal austenitic{193 * GPa, 0.29, 7900};
constexpr Metal aluminium_5052{70.3 * GPa, 0.33, 2680};
constexpr Metal aluminium_5754{70.5 * GPa, 0.33, 2670};
constexpr Metal aluminium_6061{69 * GPa, 0.33, 2700};
constexpr Metal aluminium_1100{69 * GPa, 0.33, 2710};

Material metal(const char* name, const Metal& m, double yield, double tensile, const char* source) {
  Material out;
  out.name = name;
  out.E = m.E;
  out.nu = m.nu;
  out.G = m.E / (2 * (1 + m.nu));
  out.density = m.density;
  out.yield = yield;
  out.tensile = tensile;
  out.source = source;
  return out;
}

Material structural(const char* name, double yield, double tensile, std::vector<YieldStep> thicker) {
  Material out =
      metal(name, structural_steel, yield, tensile,
            "EN 10025-2: ReH and least Rm (up to 16 mm thick; thicker stock yields earlier); E, nu, density: "
            "EN 1993-1-1 3.2.6 (from memory)");
  out.gauge = GaugeTable::steel;
  out.thicker = std::move(thicker);
  return out;
}

Material sheet(Material m, GaugeTable gauge, std::optional<double> K = {}, std::optional<double> n = {}) {
  m.gauge = gauge;
  m.K = K;
  m.n = n;
  return m;
}

Material bolt(const char* name, double yield, double tensile) {
  return metal(name, bolt_steel, yield, tensile,
               "ISO 898-1:2013 Table 3 (Rp0.2, Rm; d <= 16 mm); E, nu, density from memory");
}

} // namespace

std::vector<Material> structural_materials() {
  std::vector<Material> out;
  out.push_back(structural("S235JR", 235 * MPa, 360 * MPa, {{16 * mm, 225 * MPa}}));
  out.push_back(structural("S275JR", 275 * MPa, 410 * MPa, {{16 * mm, 265 * MPa}, {40 * mm, 255 * MPa}}));
  out.push_back(structural("S355JR", 355 * MPa, 470 * MPa, {{16 * mm, 345 * MPa}, {40 * mm, 335 * MPa}}));
  Material cold_drawn = metal("AISI 1018 CD", carbon_steel, 370 * MPa, 440 * MPa,
                              "SAE J1397; E, nu, density from memory; sources differ on yield");
  cold_drawn.gauge = GaugeTable::steel;
  out.push_back(cold_drawn);
  Material t6 = metal("6061-T6", aluminium_6061, 276 * MPa, 310 * MPa,
                      "typical values, textbook tables; K, n: Kalpakjian & Schmid Table 2.3; density from memory");
  out.push_back(sheet(t6, GaugeTable::aluminium, 410 * MPa, 0.05));
  out.push_back(bolt("bolt steel 8.8", 640 * MPa, 800 * MPa));
  out.push_back(bolt("bolt steel 10.9", 940 * MPa, 1040 * MPa));
  out.push_back(bolt("bolt steel 12.9", 1100 * MPa, 1220 * MPa));
  return out;
}

std::vector<Material> sheet_materials() {
  std::vector<Material> out;
  out.push_back(
      sheet(metal("DC01", structural_steel, 280 * MPa, 410 * MPa,
                  "EN 10130/10139: greatest Re and Rm, since the sheet is the load; K, n: annealed low-carbon "
                  "steel, Kalpakjian & Schmid Table 2.3; E, nu, density from memory"),
            GaugeTable::steel, 530 * MPa, 0.26));
  out.push_back(sheet(metal("DX51D+Z", structural_steel, 300 * MPa, 500 * MPa,
                            "EN 10346 guarantees no Re: upper end of the usual 140-300 MPa, greatest Rm (from memory); "
                            "E, nu, density from memory"),
                      GaugeTable::galvanised));
  for (const char* name : {"1.4301", "304"})
    out.push_back(sheet(metal(name, austenitic, 230 * MPa, 540 * MPa,
                              "EN 10088-2 cold strip: least Rp0.2 and Rm (from memory); hardens strongly, prefer the "
                              "power law; K, n: annealed 304, Kalpakjian & Schmid Table 2.3; E textbook, nu, density "
                              "from memory"),
                        GaugeTable::stainless, 1275 * MPa, 0.45));
  out.push_back(sheet(metal("5052-H32", aluminium_5052, 193 * MPa, 228 * MPa,
                            "typical values, ASM / Aluminum Association (from memory); EN 485-2 requires Rp0.2 >= 130 "
                            "MPa; nu, density from memory"),
                      GaugeTable::aluminium));
  out.push_back(sheet(metal("5754-H22", aluminium_5754, 185 * MPa, 245 * MPa,
                            "typical values (from memory); EN 485-2 requires Rp0.2 >= 130 MPa, Rm 220-270 MPa (from "
                            "memory); E, nu, density from memory"),
                      GaugeTable::aluminium));
  const char* annealed = "K, n: Kalpakjian & Schmid Table 2.3; yield, tensile, E, nu, density typical (from memory)";
  out.push_back(
      sheet(metal("1100-O", aluminium_1100, 34 * MPa, 90 * MPa, annealed), GaugeTable::aluminium, 180 * MPa, 0.20));
  out.push_back(
      sheet(metal("6061-O", aluminium_6061, 55 * MPa, 124 * MPa, annealed), GaugeTable::aluminium, 205 * MPa, 0.20));
  out.push_back(
      sheet(metal("5052-O", aluminium_5052, 90 * MPa, 193 * MPa, annealed), GaugeTable::aluminium, 210 * MPa, 0.13));
  return out;
}

} // namespace bedbow
