/// \file
/// Thin open walls of one thickness along one path of straight pieces: shear flow, shear centre, shear areas.
#pragma once

#include <Eigen/Core>

#include <vector>

namespace bedbow {

/// Middle line of an open wall, from one free end to the other.
struct WallPath {
  std::vector<Eigen::Vector2d> nodes; ///< (y, z) [m], at least 2
  double thickness = 0;               ///< [m] > 0
};

/// Properties of the middle line: a self-consistent theory whose shear flow adds up to the shear force exactly.
/// Source: Vlasov's theory without warping restraint, any textbook on thin-walled beams; shear areas from the strain
/// energy of the flow, 1/A_y = integral q_y^2 / t ds for unit V_y (Pilkey, Analysis and Design of Elastic Beams, 2002,
/// from memory).
struct ThinWall {
  WallPath path;
  double A = 0, Iyy = 0, Izz = 0, Iyz = 0; ///< of the middle line about its own centroid
  double J = 0;                            ///< sum b t^3 / 3
  double Ay = 0, Az = 0;                   ///< [m^2]
  Eigen::Vector2d centroid, shear_centre;  ///< in the path's axes [m]
  std::vector<Eigen::Vector2d> flow_at;    ///< flow per (Vy, Vz) at each node, along the path [1/m]
};

ThinWall thin_wall(WallPath path);

/// Shear flow q [1/m] per unit (Vy, Vz), positive along the path. \param piece 0 .. nodes - 2.
/// \param s position along the piece, 0 to 1.
Eigen::Vector2d shear_flow(const ThinWall& wall, std::size_t piece, double s);

} // namespace bedbow
