// What every registered element must do, whoever made it: symmetry, six rigid movements and no more, the patch test,
// geometric stiffness against differences of turned forces, weight, and the shapes that it declares.
#include "solver/registries.h"

#include <Eigen/Dense>
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <numeric>

namespace bedbow {
namespace {

using Eigen::Matrix3Xd;
using Eigen::MatrixXd;
using Eigen::Vector3d;
using Eigen::VectorXd;
using Vector6 = Eigen::Matrix<double, 6, 1>;

ElementInput input(const ElementEntry& e, const Matrix3Xd& corners) {
  ElementInput in{corners, {}};
  for (const ElementParameter& p : e.parameters) in.parameters.push_back(p.example);
  return in;
}

VectorXd rigid(const Matrix3Xd& corners, int k) {
  VectorXd u = VectorXd::Zero(6 * corners.cols());
  const Vector3d d = Vector3d::Unit(k % 3);
  for (Eigen::Index i = 0; i < corners.cols(); ++i) {
    if (k < 3)
      u.segment<3>(6 * i) = d;
    else
      u.segment<6>(6 * i) << d.cross(Vector3d(corners.col(i))), d;
  }
  return u;
}

/// Movement of a constant state `which` at p in the x-y plane. Line along x: stretch, curvature about y and z, twist.
/// Surface: three membrane strains, three curvatures.
Vector6 constant_state(int dimension, int which, const Vector3d& p) {
  const double x = p.x(), y = p.y();
  Vector6 m = Vector6::Zero();
  if (dimension == 1) {
    switch (which) {
    case 0:
      m << x, 0, 0, 0, 0, 0;
      break;
    case 1:
      m << 0, 0, -x * x / 2, 0, x, 0;
      break;
    case 2:
      m << 0, x * x / 2, 0, 0, 0, x;
      break;
    default:
      m << 0, 0, 0, x, 0, 0;
    }
    return m;
  }
  switch (which) {
  case 0:
    m << x, 0, 0, 0, 0, 0;
    break;
  case 1:
    m << 0, y, 0, 0, 0, 0;
    break;
  case 2:
    m << y / 2, x / 2, 0, 0, 0, 0;
    break;
  case 3:
    m << 0, 0, -x * x / 2, 0, x, 0;
    break;
  case 4:
    m << 0, 0, -y * y / 2, -y, 0, 0;
    break;
  default:
    m << 0, 0, -x * y / 2, -x / 2, y / 2, 0;
  }
  return m;
}

int states(int dimension) {
  return dimension == 1 ? 4 : 6;
}

struct Patch {
  Matrix3Xd nodes;
  std::vector<std::vector<int>> elements;
  std::vector<int> inner;
};

/// Two uneven pieces of a line, or MacNeal & Harder's five quadrilaterals.
Patch patch_of(const ElementEntry& e) {
  Patch p;
  if (e.dimension == 1) {
    p.nodes = Matrix3Xd::Zero(3, 3);
    p.nodes.row(0) << 0, 0.13, 0.3;
    p.elements = {{0, 1}, {1, 2}};
    p.inner = {1};
    return p;
  }
  p.nodes = Matrix3Xd::Zero(3, 8);
  p.nodes.row(0) << 0, .24, .24, 0, .04, .18, .16, .08;
  p.nodes.row(1) << 0, 0, .12, .12, .02, .03, .08, .08;
  p.elements = {{0, 1, 5, 4}, {1, 2, 6, 5}, {2, 3, 7, 6}, {3, 0, 4, 7}, {4, 5, 6, 7}};
  p.inner = {4, 5, 6, 7};
  return p;
}

MatrixXd patch_stiffness(const ElementEntry& e, const Patch& p) {
  MatrixXd K = MatrixXd::Zero(6 * p.nodes.cols(), 6 * p.nodes.cols());
  for (const auto& nodes : p.elements) {
    Matrix3Xd corners(3, nodes.size());
    for (std::size_t i = 0; i < nodes.size(); ++i) corners.col(static_cast<Eigen::Index>(i)) = p.nodes.col(nodes[i]);
    const MatrixXd k = e.stiffness(input(e, corners));
    for (std::size_t i = 0; i < nodes.size(); ++i)
      for (std::size_t j = 0; j < nodes.size(); ++j)
        K.block(6 * nodes[i], 6 * nodes[j], 6, 6) +=
            k.block(6 * static_cast<Eigen::Index>(i), 6 * static_cast<Eigen::Index>(j), 6, 6);
  }
  return K;
}

class Conformance : public ::testing::TestWithParam<std::string> {
protected:
  Registries registries_ = builtin_registries();
  [[nodiscard]] const ElementEntry& element() const { return registries_.elements.get(GetParam()); }
};

TEST_P(Conformance, DeclaresWhatItGives) {
  const ElementEntry& e = element();
  EXPECT_FALSE(e.description.empty());
  EXPECT_FALSE(e.source.empty());
  ASSERT_FALSE(e.examples.empty());
  const int n = e.nodes * e.dofs_per_node;
  const auto values = std::accumulate(e.output.shape.begin(), e.output.shape.end(), 1, std::multiplies<>());
  for (const Matrix3Xd& corners : e.examples) {
    ASSERT_EQ(corners.cols(), e.nodes);
    const ElementInput in = input(e, corners);
    const auto state = e.resultants(in, VectorXd::Zero(n));
    EXPECT_EQ(static_cast<int>(state.size()), values);
    for (const MatrixXd& m : {e.stiffness(in), e.mass(in, false), e.mass(in, true), e.geometric(in, state)}) {
      EXPECT_EQ(m.rows(), n);
      EXPECT_EQ(m.cols(), n);
    }
  }
}

TEST_P(Conformance, MatricesAreSymmetric) {
  const ElementEntry& e = element();
  for (const Matrix3Xd& corners : e.examples) {
    const ElementInput in = input(e, corners);
    const auto state = e.resultants(in, VectorXd::LinSpaced(e.nodes * e.dofs_per_node, -1e-4, 2e-4));
    for (const MatrixXd& m : {e.stiffness(in), e.mass(in, false), e.mass(in, true), e.geometric(in, state)})
      EXPECT_LE((m - m.transpose()).cwiseAbs().maxCoeff(), 1e-13 * m.cwiseAbs().maxCoeff());
  }
}

TEST_P(Conformance, OnlyRigidMovementsAreFree) {
  const ElementEntry& e = element();
  for (const Matrix3Xd& corners : e.examples) {
    const MatrixXd k = e.stiffness(input(e, corners));
    for (int i = 0; i < 6; ++i)
      EXPECT_LE((k * rigid(corners, i)).cwiseAbs().maxCoeff(), 1e-12 * k.cwiseAbs().maxCoeff());
    const VectorXd v = Eigen::SelfAdjointEigenSolver<MatrixXd>(k).eigenvalues();
    EXPECT_GE(v[0], -1e-12 * v[v.size() - 1]);
    EXPECT_LE(v[5], 1e-12 * v[v.size() - 1]);
    EXPECT_GT(v[6], 1e-9 * v[v.size() - 1]);
  }
}

TEST_P(Conformance, MassMovesAsAWhole) {
  const ElementEntry& e = element();
  for (const Matrix3Xd& corners : e.examples) {
    const ElementInput in = input(e, corners);
    const double consistent = rigid(corners, 0).dot(e.mass(in, false) * rigid(corners, 0));
    EXPECT_GT(consistent, 0);
    for (int k = 0; k < 3; ++k)
      for (const bool lumped : {false, true})
        EXPECT_NEAR(rigid(corners, k).dot(e.mass(in, lumped) * rigid(corners, k)), consistent, 1e-12 * consistent);
  }
}

TEST_P(Conformance, PassesThePatchTest) {
  const ElementEntry& e = element();
  const Patch p = patch_of(e);
  const MatrixXd K = patch_stiffness(e, p);
  const auto count = static_cast<Eigen::Index>(6 * p.inner.size());
  for (int which = 0; which < states(e.dimension); ++which) {
    VectorXd u(K.rows());
    for (Eigen::Index i = 0; i < p.nodes.cols(); ++i)
      u.segment<6>(6 * i) = constant_state(e.dimension, which, p.nodes.col(i));
    MatrixXd inner(count, count);
    VectorXd pull(count), wanted(count);
    for (Eigen::Index i = 0; i < count; ++i) {
      const int row = 6 * p.inner[i / 6] + static_cast<int>(i % 6);
      wanted[i] = u[row];
      pull[i] = -K.row(row).dot(u);
      for (Eigen::Index j = 0; j < count; ++j) {
        const int column = 6 * p.inner[j / 6] + static_cast<int>(j % 6);
        inner(i, j) = K(row, column);
        pull[i] += K(row, column) * u[column];
      }
    }
    const VectorXd got = inner.ldlt().solve(pull);
    EXPECT_LE((got - wanted).norm(), 1e-10 * std::max(wanted.norm(), u.norm())) << "state " << which;
  }
}

// Forces in equilibrium turn with the body that they hold: geometric stiffness times a small turn is the difference of
// the turned forces.
TEST_P(Conformance, GeometricStiffnessTurnsTheForces) {
  const ElementEntry& e = element();
  const Matrix3Xd& corners = e.examples.front(); // in the x-y plane, along x
  const ElementInput in = input(e, corners);
  for (int which = 0; which < (e.dimension == 1 ? 1 : 3); ++which) {
    VectorXd u(6 * corners.cols());
    for (Eigen::Index i = 0; i < corners.cols(); ++i)
      u.segment<6>(6 * i) = 1e-4 * constant_state(e.dimension, which, corners.col(i));
    const VectorXd f = e.stiffness(in) * u;
    const MatrixXd kg = e.geometric(in, e.resultants(in, u));
    for (int axis = 0; axis < 3; ++axis) {
      constexpr double small = 1e-5;
      const Eigen::Matrix3d to = Eigen::AngleAxisd(small, Vector3d::Unit(axis)).toRotationMatrix();
      const VectorXd change = kg * rigid(corners, 3 + axis);
      for (Eigen::Index i = 0; i < corners.cols(); ++i) {
        const Vector3d force = f.segment<3>(6 * i);
        const Vector3d difference = (to * force - to.transpose() * force) / (2 * small);
        EXPECT_LE((change.segment<3>(6 * i) - difference).norm(), 1e-8 * f.norm()) << "state " << which;
      }
    }
  }
}

std::vector<std::string> registered() {
  const Registries registries = builtin_registries();
  std::vector<std::string> names;
  for (const ElementEntry& e : registries.elements.entries()) names.push_back(e.name);
  return names;
}

INSTANTIATE_TEST_SUITE_P(Elements, Conformance, ::testing::ValuesIn(registered()),
                         [](const auto& info) { return info.param; });

} // namespace
} // namespace bedbow
