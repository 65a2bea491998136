#include "io/report/report_capacity.h"

#include "io/report/report_machine.h"
#include "io/units/quantities_out.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

std::vector<int> materials_of(const CapacityTable& table) {
  std::vector<int> out;
  for (const Capacity& c : table.rows)
    if (std::ranges::find(out, c.material) == out.end()) out.push_back(c.material);
  return out;
}

/// Thinnest and thickest answer among all places of one width, in words: "1.52 to 1.87 mm".
std::string range_words(const CapacityTable& table, int material, double width, const OutputUnits& u) {
  double low = INFINITY, high = -INFINITY;
  bool none = false;
  for (const Capacity& c : table.rows) {
    if (c.material != material || c.place.width != width) continue;
    none = none || std::isnan(c.thickness);
    if (std::isnan(c.thickness)) continue;
    low = std::min(low, c.thickness);
    high = std::max(high, c.thickness);
  }
  if (high < low) return "none anywhere";
  const std::string unit = " " + u.length.name;
  std::string out = in_unit(low, u.length, 1e-5);
  if (high > low) out += " to " + in_unit(high, u.length, 1e-5);
  return out + unit + (high > low ? " thick, by place" : " thick") + (none ? " (none at some places)" : "");
}

/// Narrowest and widest of the first material.
std::string answer(const CapacityTable& table, const Machine& m, const OutputUnits& u) {
  if (table.rows.empty()) return "No sheet was requested.";
  const int material = table.rows.front().material;
  double narrow = INFINITY, wide = 0;
  for (const Capacity& c : table.rows) {
    narrow = std::min(narrow, c.place.width);
    wide = std::max(wide, c.place.width);
  }
  const auto of = [&](double width) {
    return in_unit(width, u.length, 1e-4) + " " + u.length.name + " wide: " + range_words(table, material, width, u);
  };
  return "Within the limits the machine bends " + m.materials.at(material).name + " " + of(narrow) +
         (wide > narrow ? "; " + of(wide) : "") + ".";
}

std::string limit_words(const Limits& l, const OutputUnits& u) {
  std::string out;
  const auto add = [&](const std::string& text) { out += (out.empty() ? "" : ", ") + text; };
  if (l.bow) add("bow " + in_unit(*l.bow, u.length, 1e-6) + " " + u.length.name);
  if (l.angle) add("spread of the bend angle " + fixed(to_deg(*l.angle), 3) + " deg");
  if (l.utilisation) add("utilisation of a part " + fixed(*l.utilisation * 100, 0) + " %");
  if (l.nose_opening) add("nose opening " + in_unit(*l.nose_opening, u.length, 1e-6) + " " + u.length.name);
  return out;
}

} // namespace

Report capacity_report(const Case& c, const CapacityTable& table, const Machine& machine, const Findings& f,
                       const RunStamp& stamp) {
  Report r{c.machine.title + ": thickest sheet"};
  r.answer = answer(table, machine, c.output);
  r.units = c.output;
  r.stamp = stamp;
  r.warnings = f.warnings;
  r.assumptions = f.assumptions;
  r.assumptions.insert(r.assumptions.end(), c.assumptions.begin(), c.assumptions.end());
  ReportSection section{"Thickest sheet that it bends",
                        {"Limits of the case: " + limit_words(c.machine.limits, c.output) +
                             ". A sheet of the thickness shown keeps them all in every step; one a hundredth of a "
                             "millimetre thicker exceeds the limit named in the table.",
                         "\"None\" near an end often comes from clamping, not from bending: posts and cams tilt the "
                         "clamp there, whatever the sheet's thickness."}};
  for (const int material : materials_of(table)) {
    section.maps.push_back(capacity_map(table, machine, material));
    section.plots.push_back(capacity_plot(table, machine, material));
  }
  section.tables.push_back({"Each sheet, and what limits it", capacity_table(table, machine, c.output)});
  r.sections.push_back(std::move(section));
  r.before_machine = 1;
  if (f.status != Status::ok) return r;
  r.machine_heading = "The machine with the case's own sheet";
  add_machine(r, c.machine, f);
  return r;
}

} // namespace bedbow
