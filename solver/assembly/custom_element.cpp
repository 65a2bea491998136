#include "solver/assembly/custom_element.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <stdexcept>

namespace bedbow {

namespace {

const std::string& name_for(const Machine& machine, const Ref& owner) {
  static const std::string none;
  switch (owner.kind) {
  case Ref::Kind::bar:
    return machine.bar(owner).element;
  case Ref::Kind::member:
    return machine.members[static_cast<std::size_t>(owner.index)].element;
  case Ref::Kind::panel:
    return machine.panels[static_cast<std::size_t>(owner.index)].element;
  default:
    return none;
  }
}

/// Index of the entry of that name, which is added where it is new.
int entry_of(const std::string& name, int dimension, const Registry<ElementEntry>& elements, CustomElements& out) {
  if (name.empty()) return -1;
  const auto it = std::ranges::find(out.entries, name, &ElementEntry::name);
  const int index = static_cast<int>(it - out.entries.begin());
  if (it == out.entries.end()) out.entries.push_back(elements.get(name));
  const ElementEntry& e = out.entries[static_cast<std::size_t>(index)];
  if (e.dimension != dimension)
    throw std::invalid_argument(
        "element '" + name + "' is for " + (e.dimension == 1 ? "a line" : "a surface") +
        (dimension == 1 ? "; a bar or member needs one for a line" : "; a plate bar or panel needs one for a surface"));
  return index;
}

/// Fingers belong to a bar that may name an element, but are not its elements.
template <class Elements>
std::vector<int> assign(const Machine& machine, const Mesh& mesh, const Elements& elements, bool plate, int dimension,
                        const Registry<ElementEntry>& registry, CustomElements& out) {
  std::vector<int> of(elements.size(), -1);
  std::vector<bool> finger(elements.size(), false);
  for (const FingerLayout& f : mesh.fingers) {
    if (f.plate() != plate) continue;
    const std::size_t count = plate ? (f.x.size() - 1) * (f.y.size() - 1) : 2;
    for (std::size_t i = 0; i < count; ++i) finger[static_cast<std::size_t>(f.first_element) + i] = true;
  }
  for (std::size_t i = 0; i < elements.size(); ++i)
    if (!finger[i]) of[i] = entry_of(name_for(machine, elements[i].owner), dimension, registry, out);
  return of;
}

bool any_named(const Machine& machine) {
  const auto named = [](const auto& part) { return !part.element.empty(); };
  return std::ranges::any_of(machine.bodies, [&](const Body& b) { return std::ranges::any_of(b.bars, named); }) ||
         std::ranges::any_of(machine.members, named) || std::ranges::any_of(machine.panels, named);
}

} // namespace

CustomElements custom_elements(const Machine& machine, const Mesh& mesh, const Registry<ElementEntry>& elements) {
  CustomElements out;
  if (!any_named(machine)) return out;
  out.of_beam = assign(machine, mesh, mesh.beams, false, 1, elements, out);
  out.of_shell = assign(machine, mesh, mesh.shells, true, 2, elements, out);
  return out;
}

SectionForces forces_by_equilibrium(const Vector6d& end, const BeamLineLoad& load, const BeamData& data, double length,
                                    double s) {
  const double x = s * length;
  const Eigen::Vector3d along(1, 0, 0), first = end.head<3>();
  const Eigen::Vector3d force = -first - x * load.force;
  const Eigen::Vector3d moment =
      -end.tail<3>() - x * load.moment + along.cross(first) * x + along.cross(load.force) * (x * x / 2);
  SectionForces f;
  f.N = force.x();
  f.Vy = force.y();
  f.Vz = force.z();
  const Eigen::Vector2d& centre = data.section.shear_centre;
  f.T = moment.x() - (centre.x() * f.Vz - centre.y() * f.Vy);
  f.My = moment.y();
  f.Mz = moment.z();
  return f;
}

} // namespace bedbow
