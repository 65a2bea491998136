#include "solver/element/strip.h"

#include "mesh/piece/hermite.h"

#include <array>
#include <cmath>

namespace bedbow {

namespace {

using Matrix4 = Eigen::Matrix4d;
using Vector4 = Eigen::Vector4d;

/// 1 + 12 E I / (G A_s L^2): by this the part of the curvature that varies along an element is smaller than
/// that of a beam without shear deformation.
double shear_flexibility(const StripSection& q, double L) {
  const double I = q.dofs.width * q.thickness * q.thickness * q.thickness / 12;
  return 1 + 12 * q.E * I / (q.G * q.shear_area * L * L);
}

/// Curvature of the normals along the element by a function's values and slopes at both ends, with deformation by shear
/// as in the beam.
Vector4 curvature_along(const StripSection& q, double s, double L) {
  const double vary = (s - 0.5) / shear_flexibility(q, L);
  return {12 * vary / (L * L), -1 / L + 6 * vary / L, -12 * vary / (L * L), 1 / L + 6 * vary / L};
}

/// Unknowns of one function, in the order of Hermite's, with their factors.
struct Slots {
  std::array<int, 4> at{};
  std::array<double, 4> factor{1, 1, 1, 1};
};

/// Place of an amplitude of either end.
int amplitude_at(const StripSection& q, int end, int number) {
  return 12 + end * 6 * q.nodes + number;
}

Slots slots_of(const StripSection& q, int function) {
  Slots out;
  for (int end = 0; end < 2; ++end) {
    const auto e = static_cast<std::size_t>(2 * end);
    const auto shared = [&](SharedDof d, std::size_t k) {
      out.at[k] = 6 * end + d.dof;
      out.factor[k] = d.factor;
    };
    if (function == 0) {
      shared(q.dofs.movement(), e);
      shared(q.dofs.slope(), e + 1);
    } else if (function == 1) {
      shared(q.dofs.rotation(), e);
      out.at[e + 1] = amplitude_at(q, end, StripDofs::twist);
    } else {
      out.at[e] = amplitude_at(q, end, StripDofs::value(function));
      out.at[e + 1] = amplitude_at(q, end, StripDofs::gradient(function));
    }
  }
  return out;
}

std::array<int, 2> shear_slots(const StripSection& q, int function) {
  const int number = StripDofs::shear(static_cast<int>(q.A.rows()), function);
  return {amplitude_at(q, 0, number), amplitude_at(q, 1, number)};
}

void add(Eigen::MatrixXd& k, const Slots& row, const Slots& column, const Matrix4& block) {
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t j = 0; j < 4; ++j)
      k(row.at[i], column.at[j]) +=
          row.factor[i] * column.factor[j] * block(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
}

std::vector<Slots> all_slots(const StripSection& q) {
  std::vector<Slots> out;
  for (int k = 0; k < q.A.rows(); ++k) out.push_back(slots_of(q, k));
  return out;
}

/// Values and slopes of a function's amplitude at both ends.
Vector4 unknowns_of(const StripSection& q, int function, const Eigen::Ref<const Eigen::VectorXd>& u) {
  const Slots slots = slots_of(q, function);
  Vector4 w;
  for (std::size_t i = 0; i < 4; ++i) w[static_cast<Eigen::Index>(i)] = slots.factor[i] * u[slots.at[i]];
  return w;
}

/// Integrals along the element of products of Hermite's cubics h and of the curvature kappa.
struct AlongIntegrals {
  Matrix4 values = Matrix4::Zero(), slopes = Matrix4::Zero(), curvatures = Matrix4::Zero();
  Matrix4 value_curvature = Matrix4::Zero(); ///< h kappa
  /// kappa kappa, and what shear adds: per flexural rigidity the stiffness of the shear-flexible beam. Without it
  /// short elements would be stiff as 1 / L^3 and their rounding would show.
  Matrix4 bending = Matrix4::Zero();
  AlongIntegrals(const StripSection& q, double L) {
    for (const auto& [s, weight] : gauss6()) {
      const Hermite h(s, L);
      const Vector4 kappa = curvature_along(q, s, L);
      const double w = weight * L;
      values += w * h.value * h.value.transpose();
      slopes += w * h.slope * h.slope.transpose();
      curvatures += w * kappa * kappa.transpose();
      value_curvature += w * h.value * kappa.transpose();
    }
    // The varying part is kappa(1) - kappa(0) over the length; its square weighs L / 12.
    const Vector4 vary = curvature_along(q, 1, L) - curvature_along(q, 0, L);
    bending = curvatures + (shear_flexibility(q, L) - 1) * L / 12 * vary * vary.transpose();
  }
};

/// A quantity that the beam element takes as constant, or linear, between its ends: by values at both.
Matrix4 between_values(double first, double mixed) {
  Matrix4 out = Matrix4::Zero();
  out(0, 0) = out(2, 2) = first;
  out(0, 2) = out(2, 0) = mixed;
  return out;
}

} // namespace

StripSection make_strip_section(const AcrossFunctions& across, const FlatSection& flat, const BeamData& beam,
                                double nu) {
  StripSection q;
  q.E = beam.E;
  q.G = beam.G;
  q.nu = nu;
  q.density = beam.density;
  q.thickness = flat.thickness;
  q.J = beam.section.J;
  q.shear_area = flat.standing ? beam.section.Ay : beam.section.Az;
  q.dofs = {flat.standing, across.width()};
  q.nodes = flat.nodes;
  const int n = across.bending(), m = across.shearing();
  q.A = q.B = q.C = q.F = q.A1 = Eigen::MatrixXd::Zero(n, n);
  q.X = q.Y = Eigen::MatrixXd::Zero(m, m);
  q.M = Eigen::MatrixXd::Zero(n, m);
  const std::vector<double> pieces = across.pieces();
  for (std::size_t i = 0; i + 1 < pieces.size(); ++i)
    for (const auto& [t, weight] : gauss6()) {
      const double w = weight * (pieces[i + 1] - pieces[i]);
      const double c = pieces[i] + t * (pieces[i + 1] - pieces[i]);
      const AcrossValues v = across.at(c);
      q.A += w * v.phi * v.phi.transpose();
      q.A1 += w * c * v.phi * v.phi.transpose();
      q.B += w * v.curvature * v.phi.transpose();
      q.C += w * v.curvature * v.curvature.transpose();
      q.F += w * v.slope * v.slope.transpose();
      q.X += w * v.shear * v.shear.transpose();
      q.Y += w * v.shear_slope * v.shear_slope.transpose();
      q.M += w * v.phi * v.shear.transpose();
    }
  return q;
}

Eigen::MatrixXd strip_stiffness(const StripSection& q, double L) {
  Eigen::MatrixXd k = Eigen::MatrixXd::Zero(q.size(), q.size());
  const AlongIntegrals in(q, L);
  const std::vector<Slots> slots = all_slots(q);
  const double D = q.plate(), uniaxial = D * (1 - q.nu * q.nu), twisting = q.G * std::pow(q.thickness, 3) / 3;
  for (Eigen::Index a = 0; a < q.A.rows(); ++a)
    for (Eigen::Index b = 0; b < q.A.rows(); ++b) {
      // E t^3 / 12 kappa_x^2 of all but the beam's own, and D (kappa_c + nu kappa_x)^2.
      Matrix4 block = D * q.C(a, b) * in.values;
      block += D * q.nu * (q.B(a, b) * in.value_curvature + q.B(b, a) * in.value_curvature.transpose());
      block += D * q.nu * q.nu * q.A(a, b) * in.curvatures;
      if (a > 0 && b > 0) block += uniaxial * q.A(a, b) * in.bending;
      // Twist: Saint-Venant's constant where the section turns as a whole; the beam has it as uniform over an element.
      if (a == 1 && b == 1) {
        const double GJ = q.G * q.J * 4 / (q.dofs.width * q.dofs.width);
        block += GJ * (in.slopes - between_values(1 / L, -1 / L));
      } else if (a > 0 && b > 0) {
        block += twisting * q.F(a, b) * in.slopes;
      }
      add(k, slots[static_cast<std::size_t>(a)], slots[static_cast<std::size_t>(b)], block);
    }
  const double shear = 5. / 6 * q.G * q.thickness;
  for (int a = 0; a < q.X.rows(); ++a)
    for (int b = 0; b < q.X.rows(); ++b) {
      const auto i = shear_slots(q, a), j = shear_slots(q, b);
      for (std::size_t e = 0; e < 2; ++e)
        for (std::size_t f = 0; f < 2; ++f)
          k(i[e], j[f]) += shear * (q.X(a, b) * (e == f ? 1 : -1) / L + q.Y(a, b) * L / (e == f ? 3 : 6));
    }
  return k;
}

Eigen::MatrixXd strip_mass(const StripSection& q, double L) {
  Eigen::MatrixXd m = Eigen::MatrixXd::Zero(q.size(), q.size());
  const AlongIntegrals in(q, L);
  const std::vector<Slots> slots = all_slots(q);
  const double per_area = q.density * q.thickness;
  for (Eigen::Index a = 1; a < q.A.rows(); ++a)
    for (Eigen::Index b = 1; b < q.A.rows(); ++b) {
      Matrix4 block = per_area * q.A(a, b) * in.values;
      if (a == 1 && b == 1) block -= per_area * q.A(1, 1) * between_values(L / 3, L / 6);
      add(m, slots[static_cast<std::size_t>(a)], slots[static_cast<std::size_t>(b)], block);
    }
  // Shear deformation moves the plate, too: phi chi, and chi chi.
  Eigen::Matrix<double, 4, 2> mixed = Eigen::Matrix<double, 4, 2>::Zero();
  for (const auto& [s, weight] : gauss6()) mixed += weight * L * Hermite(s, L).value * Eigen::RowVector2d(1 - s, s);
  for (int j = 0; j < q.X.rows(); ++j) {
    const auto shear = shear_slots(q, j);
    for (Eigen::Index a = 0; a < q.A.rows(); ++a) {
      const Slots& row = slots[static_cast<std::size_t>(a)];
      for (std::size_t i = 0; i < 4; ++i)
        for (std::size_t e = 0; e < 2; ++e) {
          const double v =
              per_area * q.M(a, j) * row.factor[i] * mixed(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(e));
          m(row.at[i], shear[e]) += v;
          m(shear[e], row.at[i]) += v;
        }
    }
    for (int l = 0; l < q.X.rows(); ++l) {
      const auto other = shear_slots(q, l);
      for (std::size_t e = 0; e < 2; ++e)
        for (std::size_t f = 0; f < 2; ++f) m(shear[e], other[f]) += per_area * q.X(j, l) * L / (e == f ? 3 : 6);
    }
  }
  return m;
}

Eigen::MatrixXd strip_geometric(const StripSection& q, double L, double axial, double gradient) {
  Eigen::MatrixXd k = Eigen::MatrixXd::Zero(q.size(), q.size());
  const AlongIntegrals in(q, L);
  const std::vector<Slots> slots = all_slots(q);
  for (Eigen::Index a = 0; a < q.A.rows(); ++a)
    for (Eigen::Index b = 0; b < q.A.rows(); ++b)
      if (a > 1 || b > 1) // the rigid functions are the beam's
        add(k, slots[static_cast<std::size_t>(a)], slots[static_cast<std::size_t>(b)],
            q.thickness * (axial * q.A(a, b) + gradient * q.A1(a, b)) * in.slopes);
  return k;
}

Eigen::VectorXd strip_line_load(const StripSection& q, const AcrossValues& across, double L,
                                const Eigen::Vector3d& force, const Eigen::Vector3d& moment) {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(q.size());
  // Integrals of Hermite's cubics and of their slopes.
  const Vector4 value(L / 2, L * L / 12, L / 2, -L * L / 12), slope(-1, 0, 1, 0);
  for (int k = 1; k < q.A.rows(); ++k) {
    const Vector4 load =
        (force.z() * across.phi[k] + moment.x() * across.slope[k]) * value - moment.y() * across.phi[k] * slope;
    const Slots slots = slots_of(q, k);
    for (std::size_t i = 0; i < 4; ++i)
      if (slots.at[i] >= 12) out[slots.at[i]] += load[static_cast<Eigen::Index>(i)];
  }
  for (int j = 0; j < q.X.rows(); ++j) // turns no normal
    for (int at : shear_slots(q, j)) out[at] += force.z() * across.shear[j] * L / 2;
  return out;
}

StripAmplitudes strip_amplitudes(const StripSection& q, double L, const Eigen::Ref<const Eigen::VectorXd>& u,
                                 double s) {
  const Hermite h(s, L);
  const Eigen::Index n = q.A.rows();
  StripAmplitudes out{AcrossVector(n), AcrossVector(n), AcrossVector(n)};
  for (Eigen::Index a = 0; a < n; ++a) {
    const Vector4 w = unknowns_of(q, static_cast<int>(a), u);
    out.value[a] = h.value.dot(w);
    out.slope[a] = h.slope.dot(w);
    out.curvature[a] = curvature_along(q, s, L).dot(w);
  }
  return out;
}

double strip_mean_moment(const StripSection& q, const StripAmplitudes& w) {
  // Of the functions only phi_0 has a mean; their curvatures have.
  return -q.plate() * (w.curvature[0] + q.nu / q.dofs.width * q.B.col(0).dot(w.value));
}

StripMoments strip_moments(const StripSection& q, const AcrossValues& across, const StripAmplitudes& w) {
  const double along = across.phi.dot(w.curvature), over = across.curvature.dot(w.value),
               twist = across.slope.dot(w.slope);
  const double D = q.plate();
  // A plate that curves upwards, w'' > 0, is compressed on the side to which its normal points.
  return {-D * (along + q.nu * over), -D * (over + q.nu * along), -q.G * std::pow(q.thickness, 3) / 6 * twist};
}

} // namespace bedbow
