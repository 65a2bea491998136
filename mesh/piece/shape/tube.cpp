#include "mesh/piece/shape/check.h"
#include "mesh/piece/shapes.h"

#include <algorithm>

namespace bedbow {

namespace {

// Shear coefficient of a thin-walled box bent across its walls of height h, with the others of width b; middle lines,
// one thickness. Cowper, J. Appl. Mech. 33 (1966) 335-340 (from memory): m = b/h, n = b/h.
double box_kappa(double b, double h, double nu) {
  const double m = b / h, n2 = m * m;
  return 10 * (1 + nu) * (1 + 3 * m) * (1 + 3 * m) /
         (12 + 72 * m + 150 * m * m + 90 * m * m * m + nu * (11 + 66 * m + 135 * m * m + 90 * m * m * m) +
          10 * n2 * ((3 + nu) * m + 3 * m * m));
}

// Shear flow per V in the walls along V [1/m]: at their ends, and at their middle.
struct WebFlow {
  double end, middle;
};
WebFlow web_flow(double across, double along, double wall, double inertia) {
  const double ends = across * wall * along / 2 / (2 * inertia); // half of the cross wall hangs on each web
  return {ends, ends + along * along * wall / 8 / inertia};
}

// Two points at each corner, one in either wall, and the middle of each side; on the outside face.
std::vector<StressPoint> stress_points(double b, double h, double t, const SectionProperties& p) {
  const double bm = b - t, hm = h - t;
  const WebFlow vertical = web_flow(bm, hm, t, p.Iyy), horizontal = web_flow(hm, bm, t, p.Izz);
  const double torsion = 1 / (2 * bm * hm * t); // Bredt
  std::vector<StressPoint> out;
  for (const double side : {-1.0, 1.0})
    for (const double along : {-1.0, 0.0, 1.0}) {
      StressPoint web; // y = +-b/2: shear along z; Vy turns round the corner and runs to the middle
      web.y = side * b / 2;
      web.z = along * h / 2;
      web.tau_Vz.y() = (along == 0 ? vertical.middle : vertical.end) / t;
      web.tau_Vy.y() = -side * along * horizontal.end / t;
      web.tau_T.y() = side * torsion;
      out.push_back(web);
      StressPoint flange; // z = +-h/2: shear along y
      flange.y = along * b / 2;
      flange.z = side * h / 2;
      flange.tau_Vy.x() = (along == 0 ? horizontal.middle : horizontal.end) / t;
      flange.tau_Vz.x() = -side * along * vertical.end / t;
      flange.tau_T.x() = -side * torsion;
      out.push_back(flange);
    }
  return out;
}

} // namespace

Section tube_section(const Shape& shape, double nu) {
  require_size(shape, "width", shape.width);
  require_size(shape, "height", shape.height);
  require_wall(shape, std::min(shape.width, shape.height) / 2, "half of the lesser side");
  const double b = shape.width, h = shape.height, t = shape.wall, bi = b - 2 * t, hi = h - 2 * t;
  const double bm = b - t, hm = h - t;
  Section out;
  SectionProperties& p = out.props;
  p.A = b * h - bi * hi;
  p.Iyy = (b * h * h * h - bi * hi * hi * hi) / 12;
  p.Izz = (h * b * b * b - hi * bi * bi * bi) / 12;
  p.J = 2 * bm * bm * hm * hm * t / (bm + hm); // Bredt: 4 Am^2 / (perimeter / t)
  p.Az = box_kappa(bm, hm, nu) * p.A;
  p.Ay = box_kappa(hm, bm, nu) * p.A;
  p.lower = {-b / 2, -h / 2};
  p.upper = {b / 2, h / 2};
  out.points = stress_points(b, h, t, p);
  out.outline = {{{-b / 2, -h / 2}, {b / 2, -h / 2}, {b / 2, h / 2}, {-b / 2, h / 2}},
                 {{-bi / 2, -hi / 2}, {bi / 2, -hi / 2}, {bi / 2, hi / 2}, {-bi / 2, hi / 2}}};
  return out;
}

} // namespace bedbow
