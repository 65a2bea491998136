#include "solver/study/rigid_clamp.h"

#include "mesh/machine/stud_spring.h"

#include <Eigen/Dense>

#include <algorithm>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr double stiff_cam = 1e14;       // as in the mesh
constexpr double as_soft_as_nothing = 1; // [N/m]
constexpr std::size_t pads_across = 60;  // number of pads of the nose
constexpr int most_iterations = 60;

/// Posts act once the clamp rises past their start, nose and cams once it sinks below.
bool acts(const ClampSpring& s, double movement) {
  return s.kind == ClampSpring::Kind::post ? movement > s.start : movement < s.start;
}

} // namespace

std::vector<ClampSpring> solve_rigid_clamp(std::vector<ClampSpring> springs) {
  // Unknown: displacement w + a x + b y of the clamp, up. Each active spring pulls it back to its start.
  std::vector<char> active(springs.size(), 1);
  Eigen::Vector3d q = Eigen::Vector3d::Zero();
  for (int i = 0; i < most_iterations; ++i) {
    Eigen::Matrix3d K = Eigen::Matrix3d::Zero();
    Eigen::Vector3d f = Eigen::Vector3d::Zero();
    for (std::size_t k = 0; k < springs.size(); ++k) {
      if (!active[k]) continue;
      const Eigen::Vector3d shape(1, springs[k].x, springs[k].y);
      K += springs[k].stiffness * shape * shape.transpose();
      f += springs[k].stiffness * springs[k].start * shape;
    }
    q = K.fullPivLu().solve(f);
    bool changed = false;
    for (std::size_t k = 0; k < springs.size(); ++k) {
      const char now = acts(springs[k], q.dot(Eigen::Vector3d(1, springs[k].x, springs[k].y)));
      changed |= now != active[k];
      active[k] = now;
    }
    if (changed) continue;
    for (ClampSpring& s : springs)
      s.force = std::max(0.0, s.stiffness * std::abs(q.dot(Eigen::Vector3d(1, s.x, s.y)) - s.start)) *
                (acts(s, q.dot(Eigen::Vector3d(1, s.x, s.y))) ? 1 : 0);
    return springs;
  }
  throw std::runtime_error("the clamp as a rigid lever finds no equilibrium: posts, cams and nose do not hold it");
}

std::vector<ClampSpring> solve_rigid_lever(const std::vector<ClampSpring>& springs,
                                           const std::function<bool(double x)>& within) {
  std::vector<ClampSpring> part;
  for (ClampSpring s : springs) {
    if (!within(s.x)) continue;
    s.x = 0; // in the side view a rotation about y has no effect
    part.push_back(s);
  }
  using enum ClampSpring::Kind;
  const auto has = [&](ClampSpring::Kind kind) {
    return std::ranges::find(part, kind, &ClampSpring::kind) != part.end();
  };
  return has(post) && has(cam) && has(nose) ? solve_rigid_clamp(std::move(part)) : part;
}

std::vector<ClampSpring> clamp_springs(const Machine& m) {
  std::vector<ClampSpring> out;
  if (m.posts.empty() || m.cams.empty() || !m.sheet) return out;
  using enum ClampSpring::Kind;
  for (const Post& p : m.posts) {
    // While clamping a preloaded post pulls with exactly its preload, however far its nut moves: a spring so soft that
    // no displacement changes its force.
    const double k = p.preload ? as_soft_as_nothing : stud_stiffness(p);
    out.push_back({post, p.at.x(), p.at.y(), k, -p.preload.value_or(0) / k});
  }
  for (const Cam& c : m.cams) out.push_back({cam, c.at.x(), c.at.y(), c.stiffness.value_or(stiff_cam), c.lift});
  const Sheet& s = *m.sheet;
  const double pad = m.materials.at(static_cast<std::size_t>(s.material)).E * m.nose.land / s.thickness * s.width /
                     static_cast<double>(pads_across);
  for (std::size_t i = 0; i < pads_across; ++i)
    out.push_back({nose, s.left() + s.width * (static_cast<double>(i) + 0.5) / static_cast<double>(pads_across),
                   m.nose.setback + m.nose.land / 2, pad, 0});
  return out;
}

ClampLever clamp_lever(const Machine& m) {
  if (m.posts.empty() || m.cams.empty())
    throw std::invalid_argument("a clamp rocks on posts by cams under its tail: the case needs [[post]] and [[cam]]");
  if (!m.sheet) throw std::invalid_argument("the nose has nothing to press on: the case needs [sheet]");
  ClampLever lever{m.nose.setback + m.nose.land / 2, 0, 0};
  double sum = 0;
  for (const Post& p : m.posts) {
    lever.post += stud_stiffness(p) * p.at.y();
    sum += stud_stiffness(p);
  }
  lever.post /= sum;
  for (const Cam& c : m.cams) lever.cam += c.at.y() / static_cast<double>(m.cams.size());
  if (!(lever.nose < lever.post && lever.post < lever.cam))
    throw std::invalid_argument(
        "the clamp does not rock: the posts must be between the nose and the cams; `y` of nose, posts, "
        "cams is " +
        std::to_string(lever.nose * 1e3) + ", " + std::to_string(lever.post * 1e3) + ", " +
        std::to_string(lever.cam * 1e3) + " mm");
  return lever;
}

} // namespace bedbow
