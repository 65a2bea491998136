// A bar in plane strain, y along its width and z up, pressed on a land at its lower front corner (y = 0 to `width`,
// z = 0). Far behind, at y = width + 3 h, the section's mean movement is that of plate theory; from there plate theory
// (Kirchhoff's bending and shear on 5/6 of the height) leads back to the land. What the land moves beyond that is
// local.
#include "tests/reference/local_law.h"

#include "tests/reference/pressed.h"

#include <array>
#include <cmath>
#include <functional>
#include <iostream>
#include <numbers>

namespace referee {

namespace {

using Json = nlohmann::ordered_json;
using Eigen::Matrix2d;
using std::numbers::pi;

constexpr double E = 210000, nu = 0.3, width = 15;
constexpr double E_strain = E / (1 - nu * nu), G = E / (2 * (1 + nu));

constexpr std::array<double, 3> gauss_at{-0.7745966692414834, 0, 0.7745966692414834};
constexpr std::array<double, 3> gauss_weight{5. / 18, 8. / 18, 5. / 18};

/// Mean of f over [from, to], in `parts` of three Gauss points.
double mean(double from, double to, const std::function<double(double)>& f, int parts = 400) {
  double sum = 0;
  const double run = (to - from) / parts;
  for (int i = 0; i < parts; ++i)
    for (int g = 0; g < 3; ++g) sum += gauss_weight[g] * f(from + run * (i + (1 + gauss_at[g]) / 2)) / parts;
  return sum;
}

/// Half of a bar whose far end is built in.
struct Bar {
  double h, behind; ///< height, and place of the section that plate theory starts from
  Line y, z;
  Body body;

  Bar(double height, double least)
      : h(height)
      , behind(width + 3 * h)
      , y(graded(marks(behind, h), width, least, 1.4, h / 4))
      , z(graded({0, h / 2, h}, 0, least, 1.4, h / 8))
      , body(shape(y, z)) {}

  static Line marks(double behind, double h) {
    return {0, 7, width / 2, 11, 13, 14, 14.5, width, behind, behind + 2 * h};
  }
  static Body::Shape shape(const Line& y, const Line& z) {
    Body::Shape out{{y, z}, {{{0, 0, 0}, {y.back(), z.back(), 0}}}, {{{y.back(), 0, 0}, {y.back(), z.back(), 0}}}, {}};
    for (std::size_t i = 0; i < z.size(); ++i) {
      out.pins.push_back({{y.back(), z[i], 0}, {false, true, false}});
      if (i > 0) out.pins.push_back({{y.back(), (z[i - 1] + z[i]) / 2, 0}, {false, true, false}});
    }
    return out;
  }

  /// Height and slope of the section behind: the means that shear (a parabola) and moment (linear) work on.
  Eigen::Vector2d section(const Eigen::VectorXd& u) const {
    double height = 0, turn = 0;
    for (std::size_t i = 1; i < z.size(); ++i) {
      const double run = z[i] - z[i - 1];
      const std::array<int, 3> nodes{body.unknown({behind, z[i - 1], 0}, 0),
                                     body.unknown({behind, (z[i - 1] + z[i]) / 2, 0}, 0),
                                     body.unknown({behind, z[i], 0}, 0)};
      for (int g = 0; g < 3; ++g) {
        const double s = gauss_at[g], up = z[i - 1] + run * (1 + s) / 2 - h / 2;
        const std::array<double, 3> N{s * (s - 1) / 2, 1 - s * s, s * (s + 1) / 2};
        for (int k = 0; k < 3; ++k) {
          height += run * gauss_weight[g] * N[k] * u[nodes[k] + 1] * 1.5 / h * (1 - 4 * up * up / (h * h));
          turn -= run * gauss_weight[g] * N[k] * u[nodes[k]] * 12 * up / (h * h * h);
        }
      }
    }
    return {height, turn};
  }

  /// Removes the movement of the section behind: u then starts from there, as a cantilever.
  Eigen::VectorXd from_section(Eigen::VectorXd u) const {
    const Eigen::Vector2d s = section(u);
    for (int d = 0; d < body.unknowns(); d += 2) {
      const Point at = body.place(d);
      u[d] += s[1] * (at[1] - h / 2);
      u[d + 1] -= s[0] + s[1] * (at[0] - behind);
    }
    return u;
  }

  /// Height at y of plate theory by 1 N/mm up at `load`.
  double plate(double at, double load) const {
    const double near = behind - std::max(at, load), far = behind - std::min(at, load);
    const double D = E_strain * h * h * h / 12;
    return near * near * (3 * far - near) / (6 * D) + near / (5. / 6 * G * h);
  }
  /// Plate theory under pressures that sum to 1 over [from, to], read by the weights of the same kind.
  double plate(double from, double to, const std::function<double(double)>& pressure,
               const std::function<double(double)>& reading) const {
    return mean(
        from, to,
        [&](double a) {
          return reading(a) * mean(
                                  from, to, [&](double l) { return pressure(l) * plate(a, l); }, 40);
        },
        40);
  }
};

double about_middle(double y) {
  return y - width / 2;
}

/// Pressures over the land, times its width, for a force of 1 and a couple of 1 about its middle.
const std::array<std::function<double(double)>, 2> parts{
    [](double) { return 1.; }, [](double y) { return 12 * about_middle(y) / (width * width); }};

Json rows(const Matrix2d& a) {
  return Json::array({{a(0, 0), a(0, 1)}, {a(1, 0), a(1, 1)}});
}

Eigen::VectorXd weighted(const Bar& bar, const std::function<double(double)>& weight) {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(bar.body.unknowns());
  for (const FacePoint& p : bar.body.face({{0, 0, 0}, {width, 0, 0}}))
    for (const auto& [d, value] : p.heights) out[d] += p.area / width * weight(p.at[0]) * value;
  return out;
}

/// Even and linear pressure: mean height and mean slope of the land by force and couple, beyond plate theory.
Matrix2d by_pressure(const Bar& bar) {
  Matrix2d out;
  std::array<Eigen::VectorXd, 2> loads{weighted(bar, parts[0]), weighted(bar, parts[1])};
  for (int c = 0; c < 2; ++c) {
    const Eigen::VectorXd u = bar.from_section(bar.body.solve(loads[c]));
    for (int r = 0; r < 2; ++r) out(r, c) = loads[r].dot(u) - bar.plate(0, width, parts[c], parts[r]);
  }
  return out;
}

/// A flat, rigid and smooth face that holds the land's heights both ways: height and slope of its middle in all, from
/// the section behind.
Matrix2d by_punch(const Bar& bar) {
  std::vector<int> nodes;
  for (int d = 1; d < bar.body.unknowns(); d += 2)
    if (bar.body.place(d)[1] < 1e-6 && bar.body.place(d)[0] < width + 1e-6) nodes.push_back(d);
  const int n = static_cast<int>(nodes.size());
  Eigen::MatrixXd loads = Eigen::MatrixXd::Zero(bar.body.unknowns(), n), C(n, n), R(n, 2);
  for (int i = 0; i < n; ++i) loads(nodes[i], i) = 1;
  const Eigen::MatrixXd all = bar.body.solve(loads);
  for (int c = 0; c < n; ++c) {
    const Eigen::VectorXd u = bar.from_section(all.col(c));
    for (int r = 0; r < n; ++r) C(r, c) = u[nodes[r]];
    R.row(c) << 1, about_middle(bar.body.place(nodes[c])[0]);
  }
  return (R.transpose() * C.partialPivLu().solve(R)).inverse();
}

/// Plate theory from the section behind to the land's middle, rigid within `stiff` of it: height and slope by force
/// and couple there.
Matrix2d plate_to_middle(const Bar& bar, double stiff) {
  const double a = bar.behind - width / 2 - stiff, D = E_strain * std::pow(bar.h, 3) / 12;
  Matrix2d plate, arm;
  plate << a * a * a / (3 * D) + a / (5. / 6 * G * bar.h), -a * a / (2 * D), -a * a / (2 * D), a / D;
  arm << 1, -stiff, 0, 1;
  return arm * plate * arm.transpose();
}

/// Even pressure on the rearmost `strip` of the land: its mean height by 1 N/mm, beyond plate theory.
double by_strip(const Bar& bar, double strip) {
  const Eigen::VectorXd load = bar.body.unit({{width - strip, 0, 0}, {width, 0, 0}});
  const Eigen::VectorXd u = bar.from_section(bar.body.solve(load));
  return load.dot(u) - bar.plate(width - strip, width, parts[0], parts[0]);
}

/// What a point at depth d below a strip's middle moves by 1 N/mm on a line at x beside it, but for the constant of
/// the half space; times pi E_strain / 2.
double half_space_depth(double x, double d) {
  const double r2 = x * x + d * d;
  return -std::log(r2) / 2 + d * d / r2 / (2 * (1 - nu));
}

/// Half space: mean height of an evenly pressed strip over the point at depth d below its middle, by 1 N/mm.
double half_space_strip(double strip, double d) {
  const double below = mean(-strip / 2, strip / 2, [d](double x) { return half_space_depth(x, d); });
  return 2 / (pi * E_strain) * (1.5 - std::log(strip) - below);
}

/// Half space: the same under a rigid flat punch.
double half_space_punch(double strip, double d) {
  const double below =
      mean(0, pi, [strip, d](double angle) { return half_space_depth(strip / 2 * std::cos(angle), d); });
  return 2 / (pi * E_strain) * (std::log(4 / strip) - below);
}

/// Half space: mean slope by a linear pressure of couple 1, and slope of a punch by the couple 1.
/// The double integral of x y log|x - y| over the unit square about the origin is -1/16.
double half_space_turn() {
  return 2 / (pi * E_strain) * 144 / 16 / (width * width);
}
double half_space_punch_turn() {
  return 16 / (pi * E_strain * width * width);
}

} // namespace

Json local_law() {
  Json out{
      {"what", "bar of height h in plane strain, land y = 0 to 15 at its lower front corner; mm per N/mm, rad per N"},
      {"half_space_turn_linear_pressure", half_space_turn()},
      {"half_space_turn_punch", half_space_punch_turn()}};
  for (const double h : {10., 20., 30., 60.}) {
    Json bar_out{{"h_mm", h},
                 {"h_over_w", h / width},
                 {"half_space_strip_to_middle", half_space_strip(width, h / 2)},
                 {"half_space_strip_to_height", half_space_strip(width, h)},
                 {"half_space_punch_to_middle", half_space_punch(width, h / 2)},
                 {"half_space_punch_to_height", half_space_punch(width, h)}};
    for (const double least : {0.2, 0.1, 0.05}) {
      const Bar bar(h, least);
      const Matrix2d punch = by_punch(bar);
      Json row{{"smallest_mm", least},
               {"elements", bar.body.elements()},
               {"pressure", rows(by_pressure(bar))},
               {"punch_beyond_plate_to_land_middle", rows(punch - plate_to_middle(bar, 0))},
               {"punch_beyond_plate_rigid_over_land", rows(punch - plate_to_middle(bar, width / 2))}};
      for (const double strip : {0.5, 1., 2., 4., 8.}) {
        const double c = by_strip(bar, strip);
        row["strips"].push_back({{"strip_mm", strip},
                                 {"approach", c},
                                 {"half_space_to_middle", half_space_strip(strip, h / 2)},
                                 {"constant", c * pi * E_strain / 2 - std::log(h / strip)}});
      }
      std::cerr << "h = " << h << ": " << row.dump() << '\n';
      bar_out["meshes"].push_back(row);
    }
    out["bars"].push_back(bar_out);
  }
  return out;
}

} // namespace referee
