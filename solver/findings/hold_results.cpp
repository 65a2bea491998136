// Reactions of plain holds: forces of the elements at held nodes, less loads and joint forces there.
#include "mesh/machine/frame.h"
#include "mesh/machine/holds.h"
#include "solver/findings/results.h"
#include "solver/model/recovery.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Forces and moments on reference nodes; they balance only at unheld nodes.
class Balance {
public:
  Balance(const Model& m, const StepSolution& step)
      : m_(m)
      , step_(step)
      , wanted_(m.mesh.nodes.size(), 0)
      , missing_(m.mesh.nodes.size(), Vector6d::Zero()) {
    for (int dof : m.map.constrained) wanted_[dof / 6] = 1;
    add_elements();
    for (std::size_t n = 0; n < wanted_.size(); ++n)
      if (wanted_[n]) missing_[n] -= step.loads.nodal[n];
    add_joints();
  }
  /// Reaction of ground on a reference node: (force, moment).
  [[nodiscard]] const Vector6d& missing(int ref) const { return missing_[ref]; }

private:
  /// \param f (force, moment) at a node.
  void take(int node, const Vector6d& f) {
    const NodeLink& link = m_.map.links[node];
    if (wanted_[link.ref]) missing_[link.ref] += carry(link.arm).transpose() * f;
  }

  template <class Nodes> [[nodiscard]] bool meets(const Nodes& nodes) const {
    return std::ranges::any_of(nodes, [&](int n) { return wanted_[m_.map.links[n].ref] != 0; });
  }

  /// Forces of one element on its nodes, K u.
  template <int n, class Nodes> void add_element(const Nodes& nodes, const Eigen::Matrix<double, 6 * n, 6 * n>& K) {
    Eigen::Matrix<double, 6 * n, 1> u;
    for (int k = 0; k < n; ++k) u.template segment<6>(6 * k) = step_.motion[nodes[k]];
    const Eigen::Matrix<double, 6 * n, 1> f = K * u;
    for (int k = 0; k < n; ++k) take(nodes[k], f.template segment<6>(6 * k));
  }

  void add_elements() {
    for (std::size_t i = 0; i < m_.mesh.beams.size(); ++i)
      if (meets(m_.mesh.beams[i].nodes))
        add_element<2>(m_.mesh.beams[i].nodes, beam_stiffness_of(m_.mesh, m_.data, static_cast<int>(i)));
    for (std::size_t i = 0; i < m_.mesh.strips.size(); ++i) {
      const std::vector<int> nodes = nodes_of(m_.mesh, m_.mesh.strips[i]);
      if (!meets(nodes)) continue;
      const Eigen::VectorXd f =
          m_.data.bending[m_.data.of_bending[i]] * strip_unknowns(m_.mesh, m_.mesh.strips[i], step_.motion);
      for (std::size_t k = 0; k < nodes.size(); ++k) take(nodes[k], f.segment<6>(6 * static_cast<Eigen::Index>(k)));
    }
    for (std::size_t i = 0; i < m_.mesh.shells.size(); ++i)
      if (meets(m_.mesh.shells[i].nodes))
        add_element<4>(m_.mesh.shells[i].nodes, shell_stiffness_of(m_.machine, m_.mesh, m_.data, static_cast<int>(i)));
  }

  void add_joints() {
    for (std::size_t r = 0; r < step_.rows.size(); ++r) {
      const Joint& j = m_.mesh.joints[step_.rows[r].joint];
      if (j.kind != JointKind::hold) add_spring(j, step_.rows[r].direction, step_.force[static_cast<Eigen::Index>(r)]);
    }
    for (const Joint& j : m_.mesh.joints) {
      if (!is_bonded(j)) continue;
      const auto f = screw_springs(step_, j);
      for (int k = 0; k < 6; ++k) add_spring(j, k, f[k]);
    }
  }

  /// A spring that pulls its two places together with f; as an element it pulls its nodes back.
  void add_spring(const Joint& j, int direction, double f) {
    Vector6d pull = Vector6d::Zero();
    pull.segment<3>(direction < 3 ? 0 : 3) = f * j.axes.row(direction % 3).transpose();
    for (const PlaceTerm& t : j.a.terms) take(t.node, t.movement.transpose() * -pull);
    for (const PlaceTerm& t : j.b.terms) take(t.node, t.movement.transpose() * pull);
  }

  const Model& m_;
  const StepSolution& step_;
  std::vector<char> wanted_;
  std::vector<Vector6d> missing_;
};

/// Reaction of ground at one spot of a hold along one direction, global axes of the step.
struct HeldSpot {
  int part;
  Eigen::Vector3d at, direction;
  bool moment;
};

/// Adds it to a resultant about the resultant's place.
template <class R> void add_spot(const HeldSpot& spot, double value, R& r) {
  const Eigen::Vector3d brought = value * spot.direction;
  if (!spot.moment) r.force += brought;
  r.moment += spot.moment ? brought : Eigen::Vector3d((spot.at - r.at).cross(brought));
}

/// The same for the hold's reaction on the spot's part, about the first spot there.
void add_share(const HeldSpot& spot, double value, JointResult& hold) {
  auto share = std::ranges::find(hold.shares, spot.part, &HoldShare::part);
  if (share == hold.shares.end()) {
    hold.shares.push_back({spot.part, spot.at});
    share = hold.shares.end() - 1;
  }
  add_spot(spot, value, *share);
}

/// The nodes of a hold's set of points; none for a hold of a point or line.
std::vector<int> nodes_of_set(const Model& m, const Hold& hold) {
  std::vector<int> out;
  if (hold.set < 0) return out;
  for (int p : m.machine.own.sets.at(hold.set).points) out.push_back(m.mesh.own_nodes.at(p));
  return out;
}

/// The centre of a point, line or set, about which its moment is given.
Eigen::Vector3d middle_of(const Mesh& mesh, const Hold& hold, const std::vector<int>& nodes) {
  if (hold.set < 0) return (hold.from + hold.to) / 2;
  Eigen::Vector3d sum = Eigen::Vector3d::Zero();
  for (int n : nodes) sum += mesh.nodes[n].x;
  return sum / static_cast<double>(nodes.size());
}

/// Nodes of each hold of the machine, as found by the mesher, and their places in a step.
class HeldNodes {
public:
  HeldNodes(const Model& m, double angle)
      : m_(m)
      , turn_(apron_turn(angle)) {
    for (const Hold& h : m.machine.holds) sets_.push_back(nodes_of_set(m, h));
  }
  /// The first hold that holds a node along a direction; the number of holds where none does.
  [[nodiscard]] std::size_t hold_of(int node, int dof) const {
    std::size_t i = 0;
    while (i < sets_.size() && !(m_.machine.holds[i].holds[dof] && on(i, node))) ++i;
    return i;
  }
  [[nodiscard]] Eigen::Matrix3d turn_of(int node) const {
    return m_.mesh.nodes[node].frame == Frame::apron ? turn_ : Eigen::Matrix3d::Identity();
  }
  /// The point about which a hold's moment is given, in this step.
  [[nodiscard]] Eigen::Vector3d middle_of_hold(std::size_t i) const {
    const auto held = std::ranges::find_if(m_.mesh.held_dofs, [&](int dof) { return on(i, dof / 6); });
    const Eigen::Vector3d middle = middle_of(m_.mesh, m_.machine.holds[i], sets_[i]);
    return held == m_.mesh.held_dofs.end() ? middle : Eigen::Vector3d(turn_of(*held / 6) * middle);
  }

private:
  [[nodiscard]] bool on(std::size_t i, int node) const {
    const Hold& h = m_.machine.holds[i];
    return h.set >= 0 ? std::ranges::find(sets_[i], node) != sets_[i].end() : on_hold(h, m_.mesh.nodes[node].x);
  }

  const Model& m_;
  Eigen::Matrix3d turn_;
  std::vector<std::vector<int>> sets_; ///< by hold
};

} // namespace

void fill_holds(const Model& m, const StepSolution& step, StepResult& out) {
  const std::vector<Hold>& given = m.machine.holds;
  if (given.empty()) return;
  const HeldNodes nodes(m, step.angle);
  std::vector<JointResult> holds(given.size());
  for (std::size_t i = 0; i < holds.size(); ++i) {
    holds[i].kind = JointKind::support;
    holds[i].name = "hold " + std::to_string(i + 1);
    holds[i].at = nodes.middle_of_hold(i);
  }
  // A spot shared by two holds belongs to the first that holds it in that direction.
  const auto give = [&](int node, int dof, const Eigen::Vector3d& direction, double value) {
    const std::size_t i = nodes.hold_of(node, dof);
    if (i == holds.size()) return;
    const HeldSpot spot{m.map.substructure[node], nodes.turn_of(node) * m.mesh.nodes[node].x, direction, dof >= 3};
    add_spot(spot, value, holds[i]);
    add_share(spot, value, holds[i]);
  };
  const Balance balance(m, step);
  for (int held : m.map.constrained) { // in the axes of the node's frame
    const int dof = held % 6;
    give(held / 6, dof, nodes.turn_of(held / 6).col(dof % 3), balance.missing(held / 6)[dof]);
  }
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const Joint& j = m.mesh.joints[step.rows[r].joint];
    const int dof = step.rows[r].direction;
    if (j.kind == JointKind::hold) // a node on a rigid arm: a joint to ground, which pulls it back
      give(j.b.terms.front().node, dof, j.axes.row(dof % 3), -step.force[static_cast<Eigen::Index>(r)]);
  }
  for (JointResult& h : holds) {
    h.value = h.force.norm();
    out.joints.push_back(std::move(h));
  }
}

} // namespace bedbow
