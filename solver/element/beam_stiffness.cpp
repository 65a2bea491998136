#include "solver/element/beam_lateral.h"

namespace bedbow {

namespace {

using Eigen::Matrix2d;
using Eigen::Matrix3d;
using Matrix23d = Eigen::Matrix<double, 2, 3>;

// The stiffness in terms of the displacement u2 - u1 and the two rotations; node 1's forces follow from node 2's.
struct Blocks {
  Matrix3d push;          // force at 2 per u2 - u1
  Matrix3d lever_1;       // force at 2 per rotation 1
  Matrix3d lever_2;       // force at 2 per rotation 2
  Matrix3d r11, r12, r22; // moments per rotation
};

// Strain energy: EA du^2/2L + GJ drx^2/2L + L k'Dk/2 + L s'Ss/2 with curvature k and mean sway s.
Blocks blocks(const BeamData& data, double length) {
  const beam::Lateral k = beam::lateral(data, length);
  // Mean sway per rotation of either end; the twist arm enters by the shear centre's displacement.
  Matrix23d h1, h2;
  const Eigen::Vector2d arm = k.twist_arm / length;
  h1 << -arm(0), 0, -0.5, -arm(1), 0.5, 0;
  h2 << arm(0), 0, -0.5, arm(1), 0.5, 0;
  const Matrix23d s1 = k.sway * h1;
  const Matrix23d s2 = k.sway * h2;
  Blocks b;
  b.push.setZero();
  b.push(0, 0) = data.E * data.section.A / length;
  b.push.bottomRightCorner<2, 2>() = k.sway / length;
  b.lever_1 << Eigen::RowVector3d::Zero(), s1;
  b.lever_2 << Eigen::RowVector3d::Zero(), s2;
  // Bending and twisting of the ends against each other; (ry, rz) see D in the order (Iyy, -Iyz; -Iyz, Izz).
  Matrix3d turn;
  turn << data.G * data.section.J, 0, 0, 0, k.bending(1, 1), -k.bending(0, 1), 0, -k.bending(0, 1), k.bending(0, 0);
  turn /= length;
  b.r11.noalias() = length * (h1.transpose() * s1) + turn;
  b.r12.noalias() = length * (h1.transpose() * s2) - turn;
  b.r22.noalias() = length * (h2.transpose() * s2) + turn;
  // Rounding may differ between mirrored terms; the matrix must be symmetric to the bit.
  b.r11.triangularView<Eigen::StrictlyLower>() = b.r11.transpose();
  b.r22.triangularView<Eigen::StrictlyLower>() = b.r22.transpose();
  return b;
}

Matrix12d assemble(const Blocks& b) {
  Matrix12d K;
  K.block<3, 3>(0, 0) = b.push;
  K.block<3, 3>(6, 6) = b.push;
  K.block<3, 3>(0, 6) = -b.push;
  K.block<3, 3>(6, 0) = -b.push;
  K.block<3, 3>(6, 3) = b.lever_1;
  K.block<3, 3>(6, 9) = b.lever_2;
  K.block<3, 3>(0, 3) = -b.lever_1;
  K.block<3, 3>(0, 9) = -b.lever_2;
  K.block<3, 3>(3, 6) = b.lever_1.transpose();
  K.block<3, 3>(9, 6) = b.lever_2.transpose();
  K.block<3, 3>(3, 0) = -b.lever_1.transpose();
  K.block<3, 3>(9, 0) = -b.lever_2.transpose();
  K.block<3, 3>(3, 3) = b.r11;
  K.block<3, 3>(9, 9) = b.r22;
  K.block<3, 3>(3, 9) = b.r12;
  K.block<3, 3>(9, 3) = b.r12.transpose();
  return K;
}

// R' block R, made exactly symmetric where it must be.
Matrix3d turned(const Matrix3d& block, const Matrix3d& axes) {
  Matrix3d half, out;
  half.noalias() = block * axes;
  out.noalias() = axes.transpose() * half;
  return out;
}

Matrix3d turned_symmetric(const Matrix3d& block, const Matrix3d& axes) {
  Matrix3d out = turned(block, axes);
  out.triangularView<Eigen::StrictlyLower>() = out.transpose();
  return out;
}

} // namespace

Matrix12d beam_stiffness(const BeamData& data, double length) {
  return assemble(blocks(data, length));
}

Matrix12d beam_stiffness_global(const BeamData& data, double length, const Eigen::Matrix3d& axes) {
  Blocks b = blocks(data, length);
  b.push = turned_symmetric(b.push, axes);
  b.lever_1 = turned(b.lever_1, axes);
  b.lever_2 = turned(b.lever_2, axes);
  b.r11 = turned_symmetric(b.r11, axes);
  b.r12 = turned(b.r12, axes);
  b.r22 = turned_symmetric(b.r22, axes);
  return assemble(b);
}

Matrix12d beam_to_global(const Matrix12d& local, const Eigen::Matrix3d& axes) {
  Matrix12d out;
  for (int i = 0; i < 12; i += 3)
    for (int j = 0; j < 12; j += 3) out.block<3, 3>(i, j) = turned(local.block<3, 3>(i, j), axes);
  return out;
}

Vector12d beam_to_local(const Vector12d& global, const Eigen::Matrix3d& axes) {
  Vector12d out;
  for (int i = 0; i < 12; i += 3) out.segment<3>(i).noalias() = axes * global.segment<3>(i);
  return out;
}

Vector12d beam_to_global(const Vector12d& local, const Eigen::Matrix3d& axes) {
  Vector12d out;
  for (int i = 0; i < 12; i += 3) out.segment<3>(i).noalias() = axes.transpose() * local.segment<3>(i);
  return out;
}

} // namespace bedbow
