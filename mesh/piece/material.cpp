#include "mesh/piece/material.h"

#include "mesh/piece/material_table.h"

#include <algorithm>

namespace bedbow {

std::span<const Material> builtin_materials() {
  static const std::vector<Material> table = [] {
    std::vector<Material> all;
    for (auto&& part : {structural_materials(), sheet_materials(), timber_materials()})
      all.insert(all.end(), part.begin(), part.end());
    std::ranges::sort(all, {}, &Material::name);
    return all;
  }();
  return table;
}

const Material* find_material(std::string_view designation) {
  const auto all = builtin_materials();
  const auto it = std::ranges::lower_bound(all, designation, {}, &Material::name);
  return it != all.end() && it->name == designation ? &*it : nullptr;
}

double yield_for_thickness(const Material& material, double thickness) {
  double yield = material.yield;
  for (const YieldStep& step : material.thicker)
    if (thickness > step.above) yield = step.yield;
  return yield;
}

} // namespace bedbow
