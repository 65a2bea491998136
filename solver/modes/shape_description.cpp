#include "solver/modes/shape_description.h"

#include "mesh/machine/frame.h"
#include "solver/assembly/mass_walk.h"
#include "solver/model/recovery.h"

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <algorithm>
#include <array>
#include <cmath>

namespace bedbow {

namespace {

using Eigen::Vector3d;

constexpr double least_rigid = 0.6; // fraction of its energy in the best rigid-body mode: else a body bends
constexpr double own_strain = 0.5;  // fraction of all strain energy in the body itself: then it also bends
constexpr std::array<const char*, 3> axis{"x", "y", "z"};

/// Displacements of a body's nodes, in global axes.
struct Cloud {
  std::vector<double> mass;
  std::vector<Vector3d> at, moved;
  double whole = 0;  ///< mass
  double energy = 0; ///< sum of m |u|^2
  Vector3d centre = Vector3d::Zero();
};

Cloud cloud_of(const Model& m, const BodyMass& body, const std::vector<Vector6d>& motion, double angle) {
  Cloud c;
  c.mass = body.mass;
  for (std::size_t i = 0; i < body.nodes.size(); ++i) {
    const Node& n = m.mesh.nodes[body.nodes[i]];
    const Eigen::Matrix3d turn = n.frame == Frame::apron ? apron_turn(angle) : Eigen::Matrix3d::Identity();
    c.at.emplace_back(turn * n.x);
    c.moved.emplace_back(turn * motion[body.nodes[i]].head<3>());
    c.whole += c.mass[i];
    c.centre += c.mass[i] * c.at[i];
    c.energy += c.mass[i] * c.moved[i].squaredNorm();
  }
  c.centre /= c.whole;
  return c;
}

/// Best rigid-body mode: translation of the centre of mass, rotation about it, and their energies by axis.
struct Rigid {
  Vector3d slide, turn; ///< sum of m |u|^2 of each
};

Rigid rigid_part(const Cloud& c) {
  Vector3d mean = Vector3d::Zero(), momentum = Vector3d::Zero();
  Eigen::Matrix3d inertia = Eigen::Matrix3d::Zero();
  for (std::size_t i = 0; i < c.mass.size(); ++i) {
    const Vector3d r = c.at[i] - c.centre;
    mean += c.mass[i] * c.moved[i];
    momentum += c.mass[i] * r.cross(c.moved[i]);
    inertia += c.mass[i] * (r.squaredNorm() * Eigen::Matrix3d::Identity() - r * r.transpose());
  }
  // A straight row of nodes has no inertia about itself: a small value makes the rotation about it zero.
  const Vector3d omega = (inertia + 1e-9 * inertia.trace() * Eigen::Matrix3d::Identity()).inverse() * momentum;
  return {mean.cwiseAbs2() / c.whole, omega.cwiseAbs2().cwiseProduct(inertia.diagonal())};
}

/// Whether slices across the body's longest axis translate or turn about it.
std::string bending(const Cloud& c) {
  Vector3d lower = c.at.front(), upper = lower;
  for (const Vector3d& p : c.at) {
    lower = lower.cwiseMin(p);
    upper = upper.cwiseMax(p);
  }
  Eigen::Index along = 0;
  const double length = (upper - lower).maxCoeff(&along);
  std::vector<std::size_t> order(c.at.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return c.at[a][along] < c.at[b][along]; });
  Vector3d shared = Vector3d::Zero();
  for (std::size_t i = 0; i < order.size();) {
    double mass = 0;
    Vector3d sum = Vector3d::Zero();
    const double here = c.at[order[i]][along];
    for (; i < order.size() && c.at[order[i]][along] <= here + 1e-6 * length; ++i) {
      mass += c.mass[order[i]];
      sum += c.mass[order[i]] * c.moved[order[i]];
    }
    if (mass > 0) shared += sum.cwiseAbs2() / mass;
  }
  Eigen::Index most = 0;
  const double largest = shared.maxCoeff(&most);
  if (c.energy - shared.sum() > largest) return std::string(" twists about ") + axis[static_cast<std::size_t>(along)];
  return std::string(most == along ? " stretches along " : " bends along ") + axis[static_cast<std::size_t>(most)];
}

std::string movement(const Cloud& c, double strain) {
  const Rigid r = rigid_part(c);
  if (strain >= own_strain || r.slide.sum() + r.turn.sum() < least_rigid * c.energy) return bending(c);
  Eigen::Index k = 0;
  const double slide = r.slide.maxCoeff(&k);
  Eigen::Index a = 0;
  const double turn = r.turn.maxCoeff(&a);
  return slide >= turn ? std::string(" slides along ") + axis[static_cast<std::size_t>(k)]
                       : std::string(" turns about ") + axis[static_cast<std::size_t>(a)];
}

} // namespace

std::string body_name(const Machine& machine, const Ref& owner) {
  switch (owner.kind) {
  case Ref::Kind::bar:
    return to_string(owner.body);
  case Ref::Kind::member:
    return "member " + machine.members[owner.index].name;
  case Ref::Kind::panel:
    return "panel " + machine.panels[owner.index].name;
  case Ref::Kind::own:
    return machine.name_of(owner);
  default:
    return "part";
  }
}

std::vector<BodyMass> body_masses(const Model& m) {
  std::map<std::string, std::map<int, double>> masses;
  const auto share = [&](const auto& element, double mass) {
    for (int n : element.nodes)
      masses[body_name(m.machine, element.owner)][n] += mass / static_cast<double>(element.nodes.size());
  };
  for_each_mass(m.machine, m.mesh, m.data, [&](const MassItem& item) {
    if (item.kind == MassItem::Kind::beam) share(m.mesh.beams[item.index], item.mass());
    if (item.kind == MassItem::Kind::shell) share(m.mesh.shells[item.index], item.mass());
    // A rod's mass moves with the nodes of the joined parts: it is not a separate body.
  });
  std::vector<BodyMass> out;
  for (const auto& [name, of] : masses) {
    out.push_back({name, {}, {}});
    for (auto [node, mass] : of) {
      out.back().nodes.push_back(node);
      out.back().mass.push_back(mass);
    }
  }
  return out;
}

std::string describe_shape(const Model& m, const std::vector<BodyMass>& bodies, const std::vector<Vector6d>& motion,
                           const std::map<std::string, double>& strain, double angle) {
  std::vector<std::pair<double, std::string>> parts;
  double whole = 0;
  for (const BodyMass& b : bodies) {
    const Cloud c = cloud_of(m, b, motion, angle);
    whole += c.energy;
    const auto own = strain.find(b.name);
    if (c.energy > 0) parts.emplace_back(c.energy, b.name + movement(c, own == strain.end() ? 0 : own->second));
  }
  std::stable_sort(parts.begin(), parts.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  std::string out;
  for (const auto& [energy, text] : parts)
    if (out.empty() || energy >= whole / 4) out += (out.empty() ? "" : ", ") + text;
  return out.empty() ? "nothing that has mass moves" : out;
}

} // namespace bedbow
