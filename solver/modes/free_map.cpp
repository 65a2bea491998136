#include "solver/modes/free_map.h"

#include <Eigen/Geometry>

#include <algorithm>

namespace bedbow {

FreeMap make_free_map(const DofMap& map) {
  FreeMap free;
  free.map = map;
  std::vector<char> held(6 * map.links.size(), 0);
  for (int d : map.constrained) held[d] = 1;
  for (std::size_t c = 0; c < map.substructures.size(); ++c) {
    Substructure& comp = free.map.substructures[c];
    free.start.push_back(free.size);
    comp.size = 0;
    comp.rigid.resize(6, 0);
    for (int n : comp.nodes)
      for (int k = 0; k < 6; ++k) {
        int& dof = free.map.dofs[n][k];
        if (!map.has(n, k) || held[6 * n + k]) continue;
        if (dof < 0) free.anchors.push_back(free.size + comp.size);
        dof = comp.size++;
      }
    free.size += comp.size;
  }
  return free;
}

void add_rigid_movement(const Mesh& mesh, const FreeMap& free, std::size_t component, const Vector6d& of,
                        Eigen::Ref<Eigen::VectorXd> out) {
  const Substructure& comp = free.map.substructures[component];
  const Eigen::Vector3d omega = of.tail<3>();
  for (int n : comp.nodes) {
    if (!mesh.nodes[n].moves()) continue;
    Vector6d motion = of;
    motion.head<3>() += omega.cross(Eigen::Vector3d(mesh.nodes[n].x - comp.centre));
    for (int k = 0; k < 6; ++k)
      if (free.map.dofs[n][k] >= 0) out[free.start[component] + free.map.dofs[n][k]] += motion[k];
  }
}

std::vector<Vector6d> node_motions(const FreeMap& free, const Eigen::Ref<const Eigen::VectorXd>& unknowns) {
  std::vector<Vector6d> out(free.map.links.size(), Vector6d::Zero());
  for (std::size_t i = 0; i < out.size(); ++i) {
    const NodeLink& l = free.map.links[i];
    const Eigen::Index start = free.start[free.map.substructure[i]];
    for (int k = 0; k < 6; ++k)
      if (free.map.dofs[l.ref][k] >= 0) out[i][k] = unknowns[start + free.map.dofs[l.ref][k]];
    const Eigen::Vector3d theta = out[i].tail<3>();
    out[i].head<3>() += theta.cross(l.arm);
  }
  return out;
}

} // namespace bedbow
