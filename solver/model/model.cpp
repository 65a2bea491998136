#include "solver/model/model.h"

#include "mesh/build/mesher.h"

#include <limits>

namespace bedbow {

namespace {

/// Holds of nodes on a rigid arm can't simply be removed from the unknowns: they become joints to ground.
void add_far_holds(Mesh& mesh, const DofMap& map) {
  for (int dof : map.offset_constraints) {
    const int node = dof / 6;
    Joint j;
    j.kind = JointKind::hold;
    j.name = "hold";
    j.b = {{PlaceTerm::on_arm(node, 1, Eigen::Vector3d::Zero())}, mesh.nodes[node].x, mesh.nodes[node].frame};
    j.a.at = j.b.at;
    j.stiffness[dof % 6] = std::numeric_limits<double>::infinity();
    mesh.joints.push_back(std::move(j));
  }
}

} // namespace

Model make_model(const Machine& machine, const Registries& registries) {
  return make_model(machine, registries, make_mesh(machine, registries.shapes));
}

Model make_model(const Machine& machine, const Registries& registries, Mesh mesh, SubstructureCache* cache) {
  if (mesh.nodes.empty()) throw std::invalid_argument("the case has no bars, members or panels: nothing to solve");
  DofMap map = make_dof_map(machine, mesh);
  add_far_holds(mesh, map);
  ElementData data = make_element_data(machine, mesh, registries.elements);
  JointSprings rows(mesh, map);
  FactoredModel structure =
      factor_model(machine, mesh, map, data, rows.functionals(), registries.linear_solvers, cache);
  return {machine, std::move(mesh), std::move(map), std::move(data), std::move(rows), std::move(structure)};
}

std::optional<SheetLoads> sheet_loads_of(const Machine& machine, const Registries& registries) {
  if (!machine.sheet) return std::nullopt;
  const Sheet& s = *machine.sheet;
  const double m = choose_law(s, machine.materials.at(s.material), registries.moment_laws).moment;
  return sheet_loads(s, m, machine.nose.setback);
}

} // namespace bedbow
