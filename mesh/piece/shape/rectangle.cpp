#include "mesh/piece/shape/check.h"
#include "mesh/piece/shape/saint_venant.h"
#include "mesh/piece/shapes.h"

namespace bedbow {

namespace {

// Corners carry no shear; the middles of the sides carry the whole torsion peak and the shear of the sides along them;
// the centroid carries both shear peaks. Shear from V Q / I t = 1.5 V/A.
std::vector<StressPoint> stress_points(double b, double h) {
  const RectangleTorsion torsion = rectangle_torsion(b, h);
  const double peak = 1.5 / (b * h);
  const double at_y_side = b <= h ? torsion.tau_long : torsion.tau_short; // middle of the sides y = +-b/2
  const double at_z_side = b <= h ? torsion.tau_short : torsion.tau_long;
  std::vector<StressPoint> out;
  for (const double y : {-1.0, 0.0, 1.0})
    for (const double z : {-1.0, 0.0, 1.0}) {
      StressPoint p;
      p.y = y * b / 2;
      p.z = z * h / 2;
      if (y == 0) p.tau_Vy.x() = peak;
      if (z == 0) p.tau_Vz.y() = peak;
      if (z == 0) p.tau_T.y() = y * at_y_side;
      if (y == 0) p.tau_T.x() = -z * at_z_side;
      out.push_back(p);
    }
  return out;
}

} // namespace

Section rectangle_section(const Shape& shape, double nu) {
  require_size(shape, "width", shape.width);
  require_size(shape, "height", shape.height);
  const double b = shape.width, h = shape.height;
  const double kappa = 10 * (1 + nu) / (12 + 11 * nu); // Cowper 1966
  Section out;
  SectionProperties& p = out.props;
  p.A = b * h;
  p.Iyy = b * h * h * h / 12;
  p.Izz = h * b * b * b / 12;
  p.J = rectangle_torsion(b, h).J;
  p.Ay = p.Az = kappa * p.A;
  p.lower = {-b / 2, -h / 2};
  p.upper = {b / 2, h / 2};
  out.points = stress_points(b, h);
  out.outline = {{{-b / 2, -h / 2}, {b / 2, -h / 2}, {b / 2, h / 2}, {-b / 2, h / 2}}};
  return out;
}

} // namespace bedbow
