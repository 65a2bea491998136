#include "mesh/machine/frame.h"
#include "solver/model/recovery.h"
#include "solver/modes/shape_description.h"

#include <Eigen/Geometry>

namespace bedbow {

namespace {

using Shares = std::vector<std::map<std::string, double>>;

/// Adds u' K u of one element to every shape.
template <int N, class Nodes, class Stiffness>
void add_element(const std::vector<std::vector<Vector6d>>& motions, const Nodes& nodes, const Stiffness& k,
                 const std::string& body, Shares& out) {
  Eigen::Matrix<double, N, 1> u;
  for (std::size_t s = 0; s < motions.size(); ++s) {
    for (std::size_t i = 0; i < nodes.size(); ++i)
      u.template segment<6>(6 * static_cast<int>(i)) = motions[s][nodes[i]];
    out[s][body] += u.dot(k * u);
  }
}

double joint_energy(const Model& m, const JointState& state, const std::vector<Vector6d>& motion) {
  double energy = 0;
  const Eigen::Matrix3d turn = apron_turn(state.angle);
  const auto global = [&](const Place& p, bool own) {
    Vector6d v = frame_motion(motion, p);
    if (p.frame == Frame::apron && !own && !m.map.plane) {
      v.head<3>() = turn * v.head<3>();
      v.tail<3>() = turn * v.tail<3>();
    }
    return v;
  };
  for (const JointSpring& row : state.rows) {
    if (row.compliance <= 0) continue;
    const Joint& j = m.mesh.joints[row.joint];
    const bool own = j.a.frame == Frame::apron && j.b.frame == Frame::apron;
    const Vector6d d = global(j.b, own) - global(j.a, own);
    const double elongation = j.axes.row(row.direction % 3).dot(row.direction < 3 ? d.head<3>() : d.tail<3>());
    energy += elongation * elongation / row.compliance;
  }
  for (const Joint& j : m.mesh.joints) {
    if (!is_bonded(j)) continue;
    const Vector6d d = frame_motion(motion, j.b) - frame_motion(motion, j.a);
    energy += d.cwiseAbs2().dot(Eigen::Map<const Vector6d>(j.stiffness.data()));
  }
  return energy;
}

} // namespace

Shares strain_shares(const Model& m, const JointState& state, const std::vector<std::vector<Vector6d>>& motions) {
  Shares out(motions.size());
  for (std::size_t i = 0; i < m.mesh.beams.size(); ++i)
    add_element<12>(motions, m.mesh.beams[i].nodes, beam_stiffness_of(m.mesh, m.data, static_cast<int>(i)),
                    body_name(m.machine, m.mesh.beams[i].owner), out);
  for (std::size_t i = 0; i < m.mesh.strips.size(); ++i) {
    const StripElement& strip = m.mesh.strips[i];
    for (std::size_t s = 0; s < motions.size(); ++s) {
      const Eigen::VectorXd u = strip_unknowns(m.mesh, strip, motions[s]);
      out[s][body_name(m.machine, m.mesh.beams[strip.beam].owner)] += u.dot(m.data.bending[m.data.of_bending[i]] * u);
    }
  }
  for (std::size_t i = 0; i < m.mesh.shells.size(); ++i)
    add_element<24>(motions, m.mesh.shells[i].nodes, shell_stiffness_of(m.machine, m.mesh, m.data, static_cast<int>(i)),
                    body_name(m.machine, m.mesh.shells[i].owner), out);
  for (std::size_t s = 0; s < motions.size(); ++s) {
    const double joints = joint_energy(m, state, motions[s]);
    if (joints > 0) out[s]["joints"] = joints;
    double whole = 0;
    for (const auto& [name, energy] : out[s]) whole += energy;
    for (auto& [name, energy] : out[s]) energy = whole > 0 ? energy / whole : 0;
  }
  return out;
}

} // namespace bedbow
