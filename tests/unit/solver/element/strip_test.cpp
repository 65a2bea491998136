// Strip elements against closed forms of plates and beams.
#include "solver/element/strip.h"

#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

constexpr double width = 0.12, thickness = 0.01, E = 210e9, nu = 0.3;

/// A flat on its face as a chain of equal elements: beam and strip together.
struct Chain {
  AcrossFunctions across;
  StripSection section;
  int stations, per_station;
  Eigen::MatrixXd K;

  /// \param thin a thin plate's: no shear deformation, and b t^3 / 3 whatever t / b.
  Chain(int elements, double length, int degree, const AcrossLines& lines = {}, bool thin = false)
      : across(width, lines, degree)
      , stations(elements + 1) {
    BeamData beam{E, E / (2 * (1 + nu)), 7850, {}};
    SectionProperties& p = beam.section;
    p.A = width * thickness;
    p.Iyy = width * std::pow(thickness, 3) / 12;
    p.Izz = thickness * std::pow(width, 3) / 12;
    // Saint-Venant's constant of a rectangle, Roark 8th ed. table 10.7 case 4 (from memory), good to 0.5 %.
    const double ratio = thickness / width;
    p.J = width * std::pow(thickness, 3) * (1. / 3 - 0.21 * ratio * (1 - std::pow(ratio, 4) / 12));
    p.Ay = p.Az = 5. / 6 * p.A;
    if (thin) {
      p.J = width * std::pow(thickness, 3) / 3;
      p.Ay = p.Az = 1e6 * p.A;
    }
    FlatSection strip;
    strip.nodes = (across.amplitudes() + 5) / 6;
    strip.thickness = thickness;
    section = make_strip_section(across, strip, beam, nu);
    per_station = 6 * (1 + strip.nodes);
    K = Eigen::MatrixXd::Zero(stations * per_station, stations * per_station);
    const double l = length / elements;
    const Matrix12d rigid = beam_stiffness(beam, l);
    const Eigen::MatrixXd bends = strip_stiffness(section, l);
    for (int e = 0; e < elements; ++e) {
      for (int i = 0; i < 12; ++i)
        for (int j = 0; j < 12; ++j) K(own(e, i), own(e, j)) += rigid(i, j);
      for (int i = 0; i < section.size(); ++i)
        for (int j = 0; j < section.size(); ++j) K(own(e, i), own(e, j)) += bends(i, j);
    }
    for (int s = 0; s < stations; ++s) // amplitudes that only pad the nodes
      for (int k = across.amplitudes(); k < 6 * strip.nodes; ++k) hold(at(s, 6 + k));
  }
  [[nodiscard]] int at(int station, int dof) const { return station * per_station + dof; }
  /// Unknown of an element's dof: six of either node, then the amplitudes of either end.
  [[nodiscard]] int own(int element, int dof) const {
    if (dof < 12) return at(element + dof / 6, dof % 6);
    const int amplitudes = per_station - 6;
    return at(element + (dof - 12) / amplitudes, 6 + (dof - 12) % amplitudes);
  }
  void hold(int unknown) {
    K.row(unknown).setZero();
    K.col(unknown).setZero();
    K(unknown, unknown) = 1;
  }
  /// Value of w at c by the unknowns of a station; row vector.
  [[nodiscard]] Eigen::RowVectorXd movement(int station, double c) const {
    const AcrossValues v = across.at(c);
    Eigen::RowVectorXd row = Eigen::RowVectorXd::Zero(K.cols());
    row[at(station, 2)] = 1;
    row[at(station, 3)] = c;
    for (int k = 2; k < across.bending(); ++k) row[at(station, 6 + StripDofs::value(k))] = v.phi[k];
    for (int j = 0; j < across.shearing(); ++j)
      row[at(station, 6 + StripDofs::shear(across.bending(), j))] = v.shear[j];
    return row;
  }
};

TEST(Strip, RigidMovementsAndInPlaneDisplacementsNeedNoForce) {
  const Chain c(3, 0.3, 3, {{}, {0.02}});
  Eigen::VectorXd turned = Eigen::VectorXd::Zero(c.K.rows());
  for (int s = 0; s < c.stations; ++s) { // about y, and rolled about x
    turned[c.at(s, 2)] = -0.1 * s;
    turned[c.at(s, 4)] = 1;
    turned[c.at(s, 3)] = 0.7;
  }
  EXPECT_LT((c.K * turned).norm(), 1e-9 * c.K.norm());
}

TEST(Strip, StiffnessIsSymmetricAndPositive) {
  const Chain c(2, 0.05, 3, {{-0.02}, {0.03}});
  EXPECT_LT((c.K - c.K.transpose()).norm(), 1e-12 * c.K.norm());
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> values(c.K);
  EXPECT_GT(values.eigenvalues()[0], -1e-9 * values.eigenvalues().maxCoeff());
}

// A flat bent by couples at its ends is free to curve across: E I, not D b.
TEST(Strip, BendsAsABeamUnderEndCouples) {
  Chain c(10, 0.5, 3);
  for (int dof = 0; dof < 6; ++dof) c.hold(c.at(0, dof));
  Eigen::VectorXd f = Eigen::VectorXd::Zero(c.K.rows());
  // The couple as constant stress over the width: it works on W_0' only, the other functions have no mean.
  f[c.at(10, 4)] = 100;
  f[c.at(0, 4)] = -100;
  const Eigen::VectorXd u = c.K.ldlt().solve(f);
  const double slope = 100 * 0.5 / (E * width * std::pow(thickness, 3) / 12);
  EXPECT_NEAR(u[c.at(10, 4)], slope, 1e-6 * slope);
  const double middle = c.movement(5, 0) * u, edge = c.movement(5, width / 2) * u;
  // Anticlastic: nu kappa c^2 / 2 from the middle to the edge.
  EXPECT_NEAR(edge - middle, nu * slope / 0.5 * width * width / 8, 1e-6 * std::abs(middle));
}

TEST(Strip, TwistsBySaintVenant) {
  Chain c(10, 0.5, 3);
  for (int dof = 0; dof < 6; ++dof) c.hold(c.at(0, dof));
  Eigen::VectorXd f = Eigen::VectorXd::Zero(c.K.rows());
  f[c.at(10, 3)] = 10;
  const Eigen::VectorXd u = c.K.ldlt().solve(f);
  const double twist = 10 * 0.5 / (c.section.G * c.section.J);
  EXPECT_NEAR(u[c.at(10, 3)], twist, 1e-6 * twist);
}

// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, art. 78, an infinitely long cantilever strip under a
// force on its free edge: 0.1665 P c^2 / D for nu = 0.3 (two quadratures, references-2.md section 6.1; 0.168 printed).
// Here clamped along c = -b/2; with degree 5 the series has converged to 2 %, with degree 3 to 5 %, from below.
TEST(Strip, LongCantileverPlateUnderAForceOnItsEdge) {
  for (const auto& [degree, least, most] : {std::tuple{3, 0.95, 1.0}, std::tuple{5, 0.98, 1.0}}) {
    const Chain c(30, 0.9, degree, {}, true);
    const int n = static_cast<int>(c.K.rows());
    // Unknowns at rest along the clamped edge, with unit weight 1 else: penalty of both at every station.
    Eigen::MatrixXd K = c.K;
    const double stiff = 1e6 * K.diagonal().maxCoeff();
    const AcrossValues edge = c.across.at(-width / 2);
    for (int s = 0; s < c.stations; ++s) {
      Eigen::RowVectorXd slope = Eigen::RowVectorXd::Zero(n), along = slope, along_slope = slope;
      slope[c.at(s, 3)] = width / 2 * edge.slope[1];
      along[c.at(s, 4)] = -1; // w,x
      along[c.at(s, 6 + StripDofs::twist)] = edge.phi[1];
      along_slope[c.at(s, 6 + StripDofs::twist)] = edge.slope[1];
      for (int k = 2; k < c.across.bending(); ++k) {
        slope[c.at(s, 6 + StripDofs::value(k))] = edge.slope[k];
        along[c.at(s, 6 + StripDofs::gradient(k))] = edge.phi[k];
        along_slope[c.at(s, 6 + StripDofs::gradient(k))] = edge.slope[k];
      }
      for (const Eigen::RowVectorXd& row :
           {c.movement(s, -width / 2), Eigen::RowVectorXd(slope * width), Eigen::RowVectorXd(along * width),
            Eigen::RowVectorXd(along_slope * width * width)})
        K += stiff * row.transpose() * row;
      for (int j = 0; j < c.across.shearing(); ++j) { // a thin plate
        const int shear = c.at(s, 6 + StripDofs::shear(c.across.bending(), j));
        K(shear, shear) += stiff;
      }
      for (int dof : {0, 1, 5}) K(c.at(s, dof), c.at(s, dof)) += 1e-6 * stiff; // not in its plane
    }
    const Eigen::RowVectorXd load = c.movement(15, width / 2);
    const Eigen::VectorXd u = K.ldlt().solve(load.transpose());
    const double D = c.section.plate();
    const double ratio = load.dot(u) / (0.16654 * width * width / D);
    EXPECT_GT(ratio, least) << degree;
    EXPECT_LT(ratio, most) << degree;
  }
}

// Half of the mass of a plate's quarter wave and the like need no plate: a rigid movement of everything has the mass
// that the beam's own matrix has; the strip's must add none.
TEST(Strip, MassOfARigidRollIsTheBeams) {
  const Chain c(1, 0.05, 3);
  Eigen::VectorXd roll = Eigen::VectorXd::Zero(c.section.size());
  roll[3] = roll[9] = 1;
  EXPECT_NEAR(roll.dot(strip_mass(c.section, 0.05) * roll), 0, 1e-12);
}

} // namespace
} // namespace bedbow
