#include "io/case/case_builder.h"
#include "io/text/nearest.h"

#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

/// Thickness of a gauge by the material's own table.
double by_gauge(const CaseBuilder& b, const CaseValues& in, int gauge, int material) {
  if (material < 0) return left_out;
  const Material& m = b.machine().materials[static_cast<std::size_t>(material)];
  if (!m.gauge) {
    std::vector<std::string> tables = gauge_tables().name_list();
    const std::string first = tables.front();
    tables.erase(tables.begin());
    b.wrong(in, "thickness",
            "\"" + m.name + "\" has no gauge table; give a thickness such as \"1.5 mm\"" +
                (m.source == "case"
                     ? ", or gauge = \"" + first + "\" (" + joined(tables) + ") in [material." + m.name + "]"
                     : ""));
    return left_out;
  }
  if (const auto thickness = gauge_thickness(*m.gauge, gauge)) {
    b.assume(in.path("thickness") + ": from the " + m.gauge->name + " gauge table");
    return *thickness;
  }
  b.wrong(in, "thickness",
          "the " + m.gauge->name + " gauge table has no such gauge; give a thickness such as \"1.5 mm\"");
  return left_out;
}

bool all_known(const Sheet& s) {
  return std::isfinite(s.thickness) && std::isfinite(s.flange) && std::isfinite(s.grip) && std::isfinite(s.angle) &&
         std::isfinite(s.inside_radius) && std::isfinite(s.width);
}

/// Whether the law applies to this sheet: it may need a value that the material lacks.
void check_law(const CaseBuilder& b, const CaseValues& in, const Sheet& sheet) {
  if (in.given("moment_law") && !in.text("moment_law")) return;
  if (!sheet.moment_law.empty() && !b.registries.moment_laws.find(sheet.moment_law)) {
    b.wrong(in, "moment_law",
            "unknown moment law \"" + sheet.moment_law + "\"; available: " + b.registries.moment_laws.names());
    return;
  }
  if (sheet.material < 0 || !all_known(sheet)) return;
  const Material& material = b.machine().materials[static_cast<std::size_t>(sheet.material)];
  if (!std::isfinite(material.E) || !std::isfinite(material.yield) || !std::isfinite(material.nu)) return;
  try {
    choose_law(sheet, material, b.registries.moment_laws);
  } catch (const std::invalid_argument& e) {
    b.wrong(in, in.given("moment_law") ? "moment_law" : "material", e.what());
  }
}

void check_bodies(const CaseBuilder& b, const CaseValues& in) {
  for (const char* body : {"bed", "clamp"})
    if (!b.root.given(body))
      b.problems.error(in.pos(), body,
                       "missing table [" + std::string(body) + "]: a sheet is held between bed and clamp");
  if (!b.root.given("apron"))
    b.problems.warning(in.pos(), "apron",
                       "there is no [apron]: bow and clamp force are computed, the bend angle is not");
}

} // namespace

void build_sheet(const CaseBuilder& b) {
  const CaseValues* in = b.root.table("sheet");
  if (!in) return;
  Sheet s;
  s.pos = in->pos();
  s.material = material_of(b, *in);
  const CaseValue* thickness = in->value("thickness");
  s.thickness =
      thickness && thickness->gauge ? by_gauge(b, *in, *thickness->gauge, s.material) : in->number_or_nan("thickness");
  s.width = in->number_or_nan("width");
  s.centre = in->number_or_nan("centre");
  s.flange = in->number_or_nan("flange");
  s.inside_radius = in->number_or_nan("inside_radius");
  s.angle = in->number_or_nan("angle");
  s.grip = in->number_or_nan("grip");
  s.friction = in->number_or("friction", s.friction);
  s.moment_law = in->text("moment_law").value_or(s.moment_law);
  check_law(b, *in, s);
  check_bodies(b, *in);
  b.machine().sheet = s;
}

} // namespace bedbow
