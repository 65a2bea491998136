#include "mesh/piece/material.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <string>
#include <utility>

namespace bedbow::verification {

namespace {
constexpr double inch = 0.0254;
/// Thickness [m] by the table of that name.
std::optional<double> by(const char* table, int gauge) {
  return gauge_thickness(gauge_tables().get(table), gauge);
}
void check(const char* id, const char* source, const char* table, int gauge, double inches) {
  // Half of the last printed digit.
  record(id, source, std::to_string(gauge) + " ga", *by(table, gauge) / inch, inches, 0.00005 / inches, "in");
}
} // namespace

TEST(ManufacturersStandardGauge, WeightOver4182) {
  const char* source = "US Manufacturers' Standard Gauge: weight in lb/ft^2 over 41.82";
  const std::pair<int, double> pounds[] = {{7, 7.5},    {8, 6.875},  {9, 6.25},  {10, 5.625}, {11, 5.0},
                                           {12, 4.375}, {14, 3.125}, {16, 2.5},  {18, 2.0},   {20, 1.5},
                                           {22, 1.25},  {24, 1.0},   {26, 0.75}, {28, 0.625}, {30, 0.5}};
  for (const auto& [gauge, weight] : pounds)
    check(gauge <= 12 ? "H40" : gauge <= 20 ? "H41" : "H42", source, "steel", gauge, weight / 41.82);
  for (const auto& [gauge, mm] : {std::pair{16, 1.519}, {18, 1.214}, {20, 0.912}})
    record("H43", "conversion of the gauge's inches", std::to_string(gauge) + " ga", *by("steel", gauge) * 1e3, mm,
           0.0005 / mm, "mm");
}

TEST(AstmB258, BrownAndSharpe) {
  const char* source = "Brown & Sharpe gauge, ASTM B258-02, liquisearch.com/american_wire_gauge/formula";
  for (const auto& [gauge, in] : {std::pair{10, .1019},
                                  {12, .0808},
                                  {14, .0641},
                                  {16, .0508},
                                  {18, .0403},
                                  {20, .0320},
                                  {22, .0253},
                                  {24, .0201}})
    check("H44", source, "aluminium", gauge, in);
}

TEST(IsotropicElasticity, ShearModulus) {
  const char* source = "G = E / 2(1 + nu)";
  for (const auto& [name, G] : {std::pair{"S275JR", 80.77e9}, {"AISI 1018 CD", 79.46e9}, {"304", 74.81e9}})
    record("J6", source, std::string("G of ") + name, find_material(name)->G, G, 0.005e9 / G, "Pa");
  record("J4", "6061-T6, textbook tables", "G of 6061-T6", find_material("6061-T6")->G, 26e9, 0.02, "Pa");
}

} // namespace bedbow::verification
