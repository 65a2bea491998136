#include "io/results/csv.h"

#include "io/units/quantities_out.h"

#include <cmath>
#include <cstdio>

namespace bedbow {

std::string csv_field(std::string_view text) {
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(text);
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

std::string csv_number(double value) {
  if (std::isnan(value)) return "";
  char text[32];
  std::snprintf(text, sizeof text, "%.12g", value);
  return text;
}

std::string csv_row(const std::vector<std::string>& fields) {
  std::string out;
  for (std::size_t i = 0; i < fields.size(); ++i) out += (i ? "," : "") + csv_field(fields[i]);
  return out + "\n";
}

std::string bend_line_csv(const Findings& findings) {
  std::string out =
      csv_row({"step", "angle_deg", "x_mm", "nose_y_mm", "nose_z_mm", "bed_z_mm", "apron_n_mm", "angle_deviation_deg",
               "clamp_N_per_mm", "lifted", "clamp_reserve_N_per_mm", "nose_opening_mm"});
  for (const StepResult& s : findings.steps) {
    const BendLine& l = s.bend_line;
    // A quantity that a machine does not have (no apron) may have no entries.
    const auto at = [](const std::vector<double>& values, std::size_t i, double (*convert)(double)) {
      return i < values.size() ? csv_number(convert(values[i])) : "";
    };
    for (std::size_t i = 0; i < l.x.size(); ++i)
      out += csv_row({s.name, csv_number(to_deg(s.angle)), at(l.x, i, to_mm), at(l.nose_y, i, to_mm),
                      at(l.nose_z, i, to_mm), at(l.bed_z, i, to_mm), at(l.apron_n, i, to_mm),
                      at(l.angle_deviation, i, to_deg), at(l.clamp_force, i, to_N_per_mm),
                      i < l.lifted.size() ? (l.lifted[i] ? "1" : "0") : "", at(l.clamp_reserve, i, to_N_per_mm),
                      at(l.nose_opening, i, to_mm)});
  }
  return out;
}

} // namespace bedbow
