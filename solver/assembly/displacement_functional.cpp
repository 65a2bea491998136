#include "solver/assembly/displacement_functional.h"

#include <Eigen/Geometry>

#include <cmath>

namespace bedbow {

namespace {

void add_terms(const Mesh& mesh, const DofMap& map, int node, const Vector6d& coefficients, DisplacementFunctional& f) {
  const Substructure& comp = map.substructures[f.component];
  const auto& dofs = map.dofs[node];
  for (int k = 0; k < 6; ++k)
    if (dofs[k] >= 0 && coefficients[k] != 0) f.terms.emplace_back(dofs[k], coefficients[k]);
  if (!mesh.nodes[node].moves()) return; // bends only
  const Eigen::Vector3d lever = mesh.nodes[node].x - comp.centre;
  f.rigid.head<3>() += coefficients.head<3>();
  f.rigid.tail<3>() += coefficients.tail<3>() + lever.cross(Eigen::Vector3d(coefficients.head<3>()));
}

DisplacementFunctional make(const Mesh& mesh, const DofMap& map, const Place& place, const Eigen::Vector3d& d,
                            bool rotation) {
  DisplacementFunctional f;
  if (place.ground()) return f;
  f.component = map.substructure[place.terms.front().node];
  for (const PlaceTerm& t : place.terms) {
    const NodeLink& l = map.links[t.node];
    const Matrix6d movement = t.movement * carry(l.arm);
    add_terms(mesh, map, l.ref, movement.middleRows<3>(rotation ? 3 : 0).transpose() * d, f);
  }
  return f;
}

} // namespace

double evaluate(const DisplacementFunctional& functional, const Eigen::Ref<const Eigen::VectorXd>& unknowns) {
  double v = 0;
  for (auto [dof, value] : functional.terms) v += value * unknowns[dof];
  return v;
}

DisplacementFunctional translation_of(const Mesh& mesh, const DofMap& map, const Place& place,
                                      const Eigen::Vector3d& direction) {
  return make(mesh, map, place, direction, false);
}

DisplacementFunctional rotation_of(const Mesh& mesh, const DofMap& map, const Place& place,
                                   const Eigen::Vector3d& direction) {
  return make(mesh, map, place, direction, true);
}

} // namespace bedbow
