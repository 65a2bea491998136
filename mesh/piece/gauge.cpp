#include "mesh/piece/material.h"
#include "mesh/piece/si.h"

#include <array>
#include <cmath>

namespace bedbow {

namespace {

// Thickness in inches from `first` gauge on, one number after the other.
template <std::size_t N> std::optional<double> inches(const std::array<double, N>& table, int first, int gauge) {
  if (gauge < first || gauge >= first + static_cast<int>(N)) return {};
  return table[static_cast<std::size_t>(gauge - first)];
}

// US Manufacturers' Standard Gauge for steel: weight in lb/ft^2 over 41.82 (15, 17, 19, 21, 23, 25, 27 and 29 from
// memory). Gauges 3 to 30.
constexpr std::array steel{.2391, .2242, .2092, .1943, .1793, .1644, .1495, .1345, .1196, .1046,
                           .0897, .0747, .0673, .0598, .0538, .0478, .0418, .0359, .0329, .0299,
                           .0269, .0239, .0209, .0179, .0164, .0149, .0135, .0120};

// Galvanised sheet gauge: steel gauge plus coating (odd numbers from 15 on from memory). Gauges 8 to 30. Source:
// machinecalcs.com/sheet-metal-gauge-chart.
constexpr std::array galvanised{.1681, .1532, .1382, .1233, .1084, .0934, .0785, .0710, .0635, .0575, .0516, .0456,
                                .0396, .0366, .0336, .0306, .0276, .0247, .0217, .0202, .0187, .0172, .0157};

// US standard gauge as used for stainless (odd numbers from 15 on from memory). Gauges 7 to 30. Source: the same.
constexpr std::array stainless{.1875, .1719, .1563, .1406, .1250, .1094, .0938, .0781, .0703, .0625, .0563, .0500,
                               .0438, .0375, .0344, .0313, .0281, .0250, .0219, .0188, .0172, .0156, .0141, .0125};

// Brown & Sharpe (AWG), ASTM B258: 39 equal ratios from 0.46 in (number 0000) to 0.005 in (36).
std::optional<double> brown_and_sharpe(int gauge) {
  if (gauge < 0 || gauge > 40) return {};
  return 0.005 * std::pow(92.0, (36.0 - gauge) / 39.0);
}

} // namespace

const Registry<GaugeTable>& gauge_tables() {
  static const Registry<GaugeTable> tables = [] {
    Registry<GaugeTable> all("gauge table");
    all.add({"steel", [](int gauge) { return inches(steel, 3, gauge); }});
    all.add({"galvanised", [](int gauge) { return inches(galvanised, 8, gauge); }});
    all.add({"stainless", [](int gauge) { return inches(stainless, 7, gauge); }});
    all.add({"aluminium", brown_and_sharpe});
    return all;
  }();
  return tables;
}

std::optional<double> gauge_thickness(const GaugeTable& table, int gauge) {
  const std::optional<double> inches = table.inches(gauge);
  return inches ? std::optional(*inches * si::inch) : std::nullopt;
}

} // namespace bedbow
