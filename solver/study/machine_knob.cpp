#include "solver/study/machine_knob.h"

#include <algorithm>

namespace bedbow {

namespace {

void add_material(const Machine& m, std::size_t i, std::vector<MachineKnob>& out) {
  const Material& material = m.materials[i];
  out.push_back({material.name + ": E and G", material.E, [i](Machine& machine, double E) {
                   Material& to = machine.materials.at(i);
                   to.G *= E / to.E;
                   to.E = E;
                 }});
  if (!m.sheet || m.sheet->material != static_cast<int>(i)) return;
  if (material.yield > 0)
    out.push_back({material.name + ": yield", material.yield,
                   [i](Machine& machine, double yield) { machine.materials.at(i).yield = yield; }});
  if (material.K)
    out.push_back(
        {material.name + ": K", *material.K, [i](Machine& machine, double K) { machine.materials.at(i).K = K; }});
  if (material.n)
    out.push_back(
        {material.name + ": n", *material.n, [i](Machine& machine, double n) { machine.materials.at(i).n = n; }});
}

} // namespace

std::vector<MachineKnob> machine_knobs(const Machine& m, const Mesh& mesh, const std::set<std::string>& given) {
  std::vector<MachineKnob> out;
  for (std::size_t i = 0; i < m.materials.size(); ++i)
    if (!given.contains(m.materials[i].name)) add_material(m, i, out);
  for (std::size_t i = 0; i < m.screws.size(); ++i) {
    if (m.screws[i].shear_stiffness) continue;
    const auto joint = std::ranges::find_if(
        mesh.joints, [&](const Joint& j) { return j.kind == JointKind::screw && j.index == static_cast<int>(i); });
    if (joint == mesh.joints.end()) continue;
    const std::string name = m.screws[i].name.empty() ? std::to_string(i + 1) : m.screws[i].name;
    out.push_back({"screws " + name + ": shear stiffness", joint->stiffness[ux],
                   [i](Machine& machine, double k) { machine.screws.at(i).shear_stiffness = k; }});
  }
  return out;
}

} // namespace bedbow
