#include "solver/modes/geometric.h"

#include "mesh/machine/frame.h"
#include "solver/model/recovery.h"
#include "solver/modes/node_block.h"

#include <Eigen/Geometry>

namespace bedbow {

namespace {

Matrix12d beam_geometric_of(const Model& m, const StepSolution& step, int i) {
  const BeamElement& e = m.mesh.beams[i];
  Matrix12d k = beam_local_geometric(m.mesh, m.data, i, element_forces(m, step, i, 0), element_forces(m, step, i, 1));
  if (const BeamReleases releases = releases_of(e); releases.any) {
    const Matrix12d t = release_map(beam_local_stiffness(m.mesh, m.data, i), releases);
    k = (t.transpose() * k * t).eval();
  }
  return e.axes.isIdentity(0) ? k : beam_to_global(k, e.axes);
}

/// Of the direct stress in the middle of the element, by N and the moment in the flat's plane.
Eigen::MatrixXd strip_geometric_of(const Model& m, const StepSolution& step, int i) {
  const StripElement& strip = m.mesh.strips[i];
  const BeamElement& beam = m.mesh.beams[strip.beam];
  const SectionProperties& p = m.mesh.sections[beam.section].props;
  const SectionForces f = element_forces(m, step, strip.beam, 0.5);
  const double gradient = strip.flat.standing ? f.My / p.Iyy : -f.Mz / p.Izz;
  return strip_geometric(m.data.strips[strip.across], beam.length, f.N / p.A, gradient);
}

template <int N, class Nodes> Eigen::Matrix<double, N, 1> motion_of(const StepSolution& step, const Nodes& nodes) {
  Eigen::Matrix<double, N, 1> u;
  for (std::size_t k = 0; k < nodes.size(); ++k) u.template segment<6>(6 * static_cast<int>(k)) = step.motion[nodes[k]];
  return u;
}

/// Sums forces on arms.
class Arms {
public:
  Arms(const DofMap& map, std::vector<SymmetricMatrix>& out)
      : map_(map)
      , out_(out) {}
  /// \param sign +1: the force acts on the arm's end; -1: it is the reaction to an element there.
  void add(int ref, const Eigen::Vector3d& force, const Eigen::Vector3d& arm, double sign = 1) {
    if (arm.isZero(0) || force.isZero(0)) return;
    Matrix6d block = Matrix6d::Zero();
    block.bottomRightCorner<3, 3>() = sign * beam_load_height(force, arm);
    add_node_block(out_, map_, ref, block);
  }
  void add(const Place& place, const Eigen::Vector3d& force) {
    for (const PlaceTerm& t : place.terms) {
      if (t.weight == 0) continue;
      const NodeLink& l = map_.links[t.node];
      add(l.ref, t.weight * force, l.arm + t.lever() / t.weight);
    }
  }
  template <std::size_t N> [[nodiscard]] bool none(const std::array<int, N>& nodes) const {
    for (int n : nodes)
      if (!map_.links[n].arm.isZero(0)) return false;
    return true;
  }
  template <std::size_t N, class Vector> void add_element(const std::array<int, N>& nodes, const Vector& f) {
    for (std::size_t k = 0; k < N; ++k) {
      const NodeLink& l = map_.links[nodes[k]];
      add(l.ref, f.template segment<3>(6 * static_cast<int>(k)), l.arm, -1);
    }
  }

private:
  const DofMap& map_;
  std::vector<SymmetricMatrix>& out_;
};

/// Forces by which nodes hold elements that are joined to them by arms.
void add_elements(const Model& m, const StepSolution& step, Arms& arms) {
  for (std::size_t i = 0; i < m.mesh.beams.size(); ++i) {
    const auto& nodes = m.mesh.beams[i].nodes;
    if (arms.none(nodes)) continue;
    arms.add_element(nodes,
                     Vector12d(beam_stiffness_of(m.mesh, m.data, static_cast<int>(i)) * motion_of<12>(step, nodes)));
  }
  for (std::size_t i = 0; i < m.mesh.shells.size(); ++i) {
    const auto& nodes = m.mesh.shells[i].nodes;
    if (arms.none(nodes)) continue;
    arms.add_element(nodes, Vector24d(shell_stiffness_of(m.machine, m.mesh, m.data, static_cast<int>(i)) *
                                      motion_of<24>(step, nodes)));
  }
}

/// A force between two places, along a direction of this step's global axes: +f on a, -f on b.
void add_pull(const StepSolution& step, const Joint& j, const Eigen::Vector3d& pull, Arms& arms) {
  const Eigen::Matrix3d turn = apron_turn(step.angle);
  const bool own = j.a.frame == Frame::apron && j.b.frame == Frame::apron;
  const auto on = [&](const Place& p, double sign) {
    const bool turned = p.frame == Frame::apron && !own;
    arms.add(p, sign * (turned ? Eigen::Vector3d(turn.transpose() * pull) : pull));
  };
  on(j.a, 1);
  on(j.b, -1);
}

void add_joints(const Model& m, const StepSolution& step, Arms& arms) {
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const JointSpring& row = step.rows[r];
    if (row.direction >= 3) continue; // a couple turns half-way with its rows: it has no term
    const Joint& j = m.mesh.joints[row.joint];
    add_pull(step, j, step.force[static_cast<Eigen::Index>(r)] * j.axes.row(row.direction).transpose(), arms);
  }
  for (const Joint& j : m.mesh.joints) {
    if (!is_bonded(j)) continue;
    const Vector6d elongation = frame_motion(step.motion, j.b) - frame_motion(step.motion, j.a);
    const Eigen::Vector3d pull =
        elongation.head<3>().cwiseProduct(Eigen::Vector3d(j.stiffness[0], j.stiffness[1], j.stiffness[2]));
    add_pull(step, j, pull, arms);
  }
}

} // namespace

std::vector<SymmetricMatrix> assemble_geometric(const Model& m, const DofMap& map, const StepSolution& step) {
  Matrix12d last;
  const BeamMatrix beams = [&](int i) -> const Matrix12d& { return last = beam_geometric_of(m, step, i); };
  const ShellMatrix shells = [&](int i) {
    return shell_geometric_of(m.machine, m.mesh, m.data, i, motion_of<24>(step, m.mesh.shells[i].nodes));
  };
  Eigen::MatrixXd strip;
  const StripMatrix strips = [&](int i) -> const Eigen::MatrixXd& { return strip = strip_geometric_of(m, step, i); };
  std::vector<SymmetricMatrix> out = assemble(m.mesh, map, beams, strips, shells, false);
  Arms arms(map, out);
  add_elements(m, step, arms);
  add_joints(m, step, arms);
  for (const ArmForce& load : step.loads.arms) arms.add(load.node, load.force, load.arm);
  return out;
}

} // namespace bedbow
