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
constexpr Metal aluminium_2024{73 * GPa, 0.33, 2780};
constexpr Metal aluminium_7075{71.7 * GPa, 0.33, 2810};
constexpr Metal martensitic{200 * GPa, 0.28, 7750};
constexpr Metal brass_70{110 * GPa, 0.35, 8530};
constexpr Metal copper{117 * GPa, 0.34, 8940};

Material metal(const char* name, const Metal& m, double yield, double tensile, std::string source) {
  Material out;
  out.name = name;
  out.E = m.E;
  out.nu = m.nu;
  out.G = m.E / (2 * (1 + m.nu));
  out.density = m.density;
  out.yield = yield;
  out.tensile = tensile;
  out.source = std::move(source);
  return out;
}

Material structural(const char* name, double yield, double tensile, std::vector<YieldStep> thicker) {
  Material out =
      metal(name, structural_steel, yield, tensile,
            "EN 10025-2: ReH and least Rm (up to 16 mm thick; thicker stock yields earlier); E, nu, density: "
            "EN 1993-1-1 3.2.6 (from memory)");
  out.gauge = &gauge_tables().get("steel");
  out.thicker = std::move(thicker);
  return out;
}

/// What hardens a sheet, and the range of its yield. MPa.
struct Forming {
  std::optional<double> K, n;
  std::optional<YieldRange> yield;
};

/// \param gauge its table; nullptr: sold by thickness.
Material sheet(Material m, const char* gauge, const Forming& forming) {
  if (gauge) m.gauge = &gauge_tables().get(gauge);
  if (forming.K) m.K = *forming.K * MPa;
  m.n = forming.n;
  if (forming.yield) m.yield_range = YieldRange{forming.yield->least * MPa, forming.yield->greatest * MPa};
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
  cold_drawn.gauge = &gauge_tables().get("steel");
  out.push_back(cold_drawn);
  Material t6 = metal("6061-T6", aluminium_6061, 276 * MPa, 310 * MPa,
                      "typical values, textbook tables; least yield 240 MPa (35 ksi), trade data sheet "
                      "(keymarkcorp.com); K, n: Kalpakjian & Schmid Table 2.3; density from memory");
  out.push_back(sheet(t6, "aluminium", {410, 0.05, YieldRange{240, 276}}));
  out.push_back(bolt("bolt steel 8.8", 640 * MPa, 800 * MPa));
  out.push_back(bolt("bolt steel 10.9", 940 * MPa, 1040 * MPa));
  out.push_back(bolt("bolt steel 12.9", 1100 * MPa, 1220 * MPa));
  return out;
}

namespace {

std::vector<Material> steel_sheets() {
  const char* kalpakjian = "K, n: annealed low-carbon steel, Kalpakjian & Schmid Table 2.3";
  const std::string of_steel = std::string("; ") + kalpakjian + "; E, nu, density from memory";
  std::vector<Material> out;
  out.push_back(sheet(metal("DC01", structural_steel, 280 * MPa, 410 * MPa,
                            "EN 10130/10139: greatest Re and Rm, since the sheet is the load; least Re 140 MPa for "
                            "design (from memory)" +
                                of_steel),
                      "steel", {530, 0.26, YieldRange{140, 280}}));
  out.push_back(sheet(metal("DC04", structural_steel, 210 * MPa, 350 * MPa,
                            "EN 10130: Re 140-210 MPa, greatest Rm (from memory)" + of_steel),
                      "steel", {530, 0.26, YieldRange{140, 210}}));
  out.push_back(sheet(metal("A1008 CS", structural_steel, 275 * MPa, 410 * MPa,
                            "ASTM A1008 CS type B: typical yield 140-275 MPa, not mandatory, of which the greatest; K "
                            "500-550, n 0.18-0.22, mean; tensile, E, nu, density (all from memory)"),
                      "steel", {525, 0.20, YieldRange{140, 275}}));
  out.push_back(sheet(metal("A653 CS", structural_steel, 380 * MPa, 500 * MPa,
                            "ASTM A653 CS type B: typical yield 205-380 MPa, not mandatory, of which the greatest; K "
                            "500-560, n 0.15-0.18, mean; tensile, E, nu, density (all from memory)"),
                      "galvanised", {530, 0.165, YieldRange{205, 380}}));
  out.push_back(sheet(metal("DX51D+Z", structural_steel, 300 * MPa, 500 * MPa,
                            "EN 10346 guarantees no Re: upper end of the usual 140-300 MPa, greatest Rm; K 500-560, n "
                            "0.15-0.18, mean; E, nu, density (all from memory)"),
                      "galvanised", {530, 0.165, YieldRange{140, 300}}));
  for (const char* name : {"1.4301", "304"})
    out.push_back(sheet(metal(name, austenitic, 230 * MPa, 540 * MPa,
                              "EN 10088-2 cold strip: least Rp0.2 and Rm (from memory); ASTM requires 205 MPa, typical "
                              "310 (dealers' data sheets); K, n: annealed 304, Kalpakjian & Schmid Table 2.3; E "
                              "textbook, nu, density from memory"),
                        "stainless", {1275, 0.45, YieldRange{205, 310}}));
  out.push_back(sheet(metal("410", martensitic, 275 * MPa, 485 * MPa,
                            "annealed; K, n: Kalpakjian & Schmid Table 2.3; yield, tensile, E, nu, density typical "
                            "(from memory)"),
                      "stainless", {960, 0.10, {}}));
  return out;
}

std::vector<Material> aluminium_sheets() {
  std::vector<Material> out;
  out.push_back(sheet(metal("5052-H32", aluminium_5052, 193 * MPa, 228 * MPa,
                            "typical values, trade data sheets; least yield 160 MPa (Aluminum Design Manual Table "
                            "3.3); EN 485-2 requires Rp0.2 >= 130 MPa; K 300-330, n 0.08-0.10, mean, nu, density from "
                            "memory"),
                      "aluminium", {315, 0.09, YieldRange{160, 195}}));
  out.push_back(sheet(metal("5754-H22", aluminium_5754, 185 * MPa, 245 * MPa,
                            "typical values (from memory); EN 485-2 requires Rp0.2 >= 130 MPa, Rm 220-270 MPa (from "
                            "memory); E, nu, density from memory"),
                      "aluminium", {}));
  out.push_back(sheet(metal("6061-T4", aluminium_6061, 145 * MPa, 240 * MPa,
                            "typical values; least yield 110 MPa (16 ksi, trade data sheet, keymarkcorp.com); K "
                            "410-440, n 0.20-0.23, mean; typical values, K, n, density from memory"),
                      "aluminium", {425, 0.215, YieldRange{110, 145}}));
  const char* annealed = "K, n: Kalpakjian & Schmid Table 2.3; yield, tensile, E, nu, density typical (from memory)";
  out.push_back(sheet(metal("1100-O", aluminium_1100, 34 * MPa, 90 * MPa, annealed), "aluminium", {180, 0.20, {}}));
  out.push_back(sheet(metal("6061-O", aluminium_6061, 55 * MPa, 124 * MPa, annealed), "aluminium", {205, 0.20, {}}));
  out.push_back(sheet(metal("5052-O", aluminium_5052, 90 * MPa, 193 * MPa,
                            "K, n: en.wikipedia.org, strain hardening exponent; yield, tensile, E, nu, density typical "
                            "(from memory)"),
                      "aluminium", {210, 0.13, {}}));
  out.push_back(sheet(metal("2024-T4", aluminium_2024, 325 * MPa, 470 * MPa, annealed), "aluminium", {690, 0.16, {}}));
  out.push_back(sheet(metal("7075-O", aluminium_7075, 103 * MPa, 228 * MPa, annealed), "aluminium", {400, 0.17, {}}));
  return out;
}

std::vector<Material> copper_sheets() {
  const char* source =
      "annealed; K, n: Kalpakjian & Schmid Table 2.3; yield, tensile, E, nu, density typical (from memory)";
  std::vector<Material> out;
  out.push_back(sheet(metal("70-30 brass", brass_70, 110 * MPa, 330 * MPa, source), nullptr, {895, 0.49, {}}));
  out.push_back(sheet(metal("copper", copper, 69 * MPa, 220 * MPa, source), nullptr, {315, 0.54, {}}));
  return out;
}

} // namespace

std::vector<Material> sheet_materials() {
  std::vector<Material> out = steel_sheets();
  for (auto&& more : {aluminium_sheets(), copper_sheets()}) out.insert(out.end(), more.begin(), more.end());
  return out;
}

} // namespace bedbow
