/// \file
/// Cross-sections: from shape and sizes to the constants of beam theory and the places where stress is greatest.
/// Local axes of a section are y (width) and z (height) through its centroid; the beam runs along x.
#pragma once

#include <Eigen/Core>

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// Section forces at a cut, about the centroid axes, acting on the +x face of the part at lower x:
/// N tension positive, Vy Vz along +y +z on the +x face, T about +x (about the shear centre), My Mz about +y +z on the
/// +x face. So N = integral(sigma), My = integral(sigma z), Mz = -integral(sigma y).
struct SectionForces {
  double N = 0, Vy = 0, Vz = 0, T = 0, My = 0, Mz = 0;
};

/// Constants of a section, SI units, about the centroid.
struct SectionProperties {
  double A = 0;                                   ///< area [m^2]
  double Iyy = 0;                                 ///< integral z^2 dA [m^4]
  double Izz = 0;                                 ///< integral y^2 dA [m^4]
  double Iyz = 0;                                 ///< integral y z dA [m^4]
  double J = 0;                                   ///< Saint-Venant torsion constant [m^4]
  double Ay = 0, Az = 0;                          ///< effective shear areas kappa A along y and z [m^2]
  Eigen::Vector2d shear_centre = {0, 0};          ///< (y, z) from the centroid [m]
  Eigen::Vector2d lower = {0, 0}, upper = {0, 0}; ///< bounding box (y, z) from the centroid [m]
};

/// One place of a section and the stresses there per unit of each section force:
/// sigma = N/A + My.. is evaluated by section_stress; tau from shear and torsion by the factors here.
struct StressPoint {
  double y = 0, z = 0;             ///< from the centroid [m]
  Eigen::Vector2d tau_Vy = {0, 0}; ///< (tau_xy, tau_xz) per Vy [1/m^2]
  Eigen::Vector2d tau_Vz = {0, 0}; ///< per Vz [1/m^2]
  Eigen::Vector2d tau_T = {0, 0};  ///< per T [1/m^3]
};

/// Closed outline loops of a section for drawing, from the centroid: first the outside, then holes. Counter-clockwise.
using Outline = std::vector<std::vector<Eigen::Vector2d>>;

/// A section made from a shape: everything the solver and the writers need.
struct Section {
  SectionProperties props;
  std::vector<StressPoint> points; ///< extreme points of stress; at least the corners, and where shear peaks
  Outline outline;
};

/// Sizes as the case gives them; each shape kind uses its own. Lengths in m.
struct Shape {
  std::string kind = "rectangle";      ///< name in the section registry
  double width = 0;                    ///< along y (rectangle, tube, angle, channel)
  double height = 0;                   ///< along z
  double diameter = 0;                 ///< round
  double wall = 0;                     ///< tube, angle, channel
  double turn = 0;                     ///< rotation of the shape about x before use [rad], positive from y to z
  std::map<std::string, double> given; ///< kind "section": A, Iyy, Izz, Iyz, J, Ay, Az, depth sizes ... SI
  bool operator==(const Shape&) const = default;
};

/// Makes a Section of a Shape; nu is the material's Poisson's ratio (for Cowper's coefficient).
/// Throws std::invalid_argument naming the size at fault and what would be right.
using SectionMaker = std::function<Section(const Shape& shape, double nu)>;

/// Section shapes by name. Filled by builtin_shapes; plugins add to it.
struct ShapeEntry {
  std::string name, description, source;
  std::vector<std::string> sizes; ///< keys it needs: "width", "height", ...
  SectionMaker make;
  std::string origin = "built in"; ///< or the plugin's file
  std::vector<double> examples{};  ///< a sensible value of each size, SI, for `bedbow list --prove`
};

/// Direct stress [Pa] at a point of the section, unsymmetric bending:
/// sigma = N/A + ((My Izz + Mz Iyz) z - (Mz Iyy + My Iyz) y) / (Iyy Izz - Iyz^2).
double direct_stress(const SectionProperties& p, const SectionForces& f, double y, double z);

/// Shear stress vector (tau_xy, tau_xz) [Pa] at a stress point.
Eigen::Vector2d shear_stress(const StressPoint& point, const SectionForces& f);

/// Worst von Mises stress over the section's points. \return {stress [Pa], index of the point}.
std::pair<double, int> worst_von_mises(const Section& s, const SectionForces& f);

} // namespace bedbow
