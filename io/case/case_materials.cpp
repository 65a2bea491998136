#include "io/case/case_builder.h"
#include "io/text/nearest.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

GaugeTable gauge_table(const std::string& name) {
  if (name == "galvanised") return GaugeTable::galvanised;
  if (name == "stainless") return GaugeTable::stainless;
  if (name == "aluminium") return GaugeTable::aluminium;
  return GaugeTable::steel;
}

/// A material defined in the case. Where a key is wrong, its value is NaN and the case is refused anyway.
Material own_material(const CaseBuilder& b, const CaseValues& in) {
  Material m;
  m.name = in.name();
  m.source = "case";
  m.E = in.number_or_nan("E");
  m.density = in.number_or("density", 0);
  m.yield = in.number_or("yield", 0);
  m.tensile = in.number_or("tensile", 0);
  m.K = in.number("K");
  m.n = in.number("n");
  if (const auto gauge = in.text("gauge")) m.gauge = gauge_table(*gauge);
  if (!in.given("nu") && !in.given("G")) b.missing(in, "nu", "Poisson's ratio, or the shear modulus G");
  if (in.given("K") != in.given("n"))
    b.missing(in, in.given("K") ? "n" : "K", "hardening needs both K and n: flow stress = K strain^n");
  m.nu = in.number_or("nu", 0.3);
  m.G = in.number_or("G", m.E / (2 * (1 + m.nu)));
  if (!in.given("nu") && in.given("G")) b.assume(in.path("nu") + ": 0.3, since G is given separately");
  return m;
}

const CaseValues* find_own(const CaseBuilder& b, const std::string& name) {
  const auto& own = b.root.tables("material");
  const auto it = std::ranges::find_if(own, [&](const CaseValues& v) { return v.name() == name; });
  return it == own.end() ? nullptr : &*it;
}

} // namespace

std::vector<std::string> material_names(const CaseBuilder& b) {
  std::vector<std::string> names;
  for (const CaseValues& v : b.root.tables("material")) names.push_back(v.name());
  for (const Material& m : builtin_materials()) names.push_back(m.name);
  return names;
}

int material_named(const CaseBuilder& b, const std::string& name) {
  auto& used = b.machine().materials;
  const auto it = std::ranges::find(used, name, &Material::name);
  if (it != used.end()) return static_cast<int>(it - used.begin());
  if (const CaseValues* own = find_own(b, name)) {
    used.push_back(own_material(b, *own));
  } else if (const Material* builtin = find_material(name)) {
    used.push_back(*builtin);
    b.assume("material " + builtin->name + ": built in, " + builtin->source);
  } else {
    return -1;
  }
  return static_cast<int>(used.size()) - 1;
}

int material_of(const CaseBuilder& b, const CaseValues& in, std::string_view key) {
  const auto name = in.text(key);
  if (!name) return -1;
  const int found = material_named(b, *name);
  if (found < 0)
    b.wrong(in, key,
            "there is no material \"" + *name + "\", neither [material." + *name +
                "] in the case nor built in; nearest is \"" + nearest(*name, material_names(b)) +
                "\" (`bedbow list` shows them all)");
  return found;
}

void check_unused_materials(const CaseBuilder& b) {
  for (const CaseValues& own : b.root.tables("material"))
    if (std::ranges::find(b.machine().materials, own.name(), &Material::name) == b.machine().materials.end())
      own_material(b, own);
}

} // namespace bedbow
