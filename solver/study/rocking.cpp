#include "solver/study/rocking.h"

#include "mesh/piece/si.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

/// The clamp alone: no bending, so that each position of the cams is one solve.
Machine clamping_only(Machine m) {
  m.solve.angles = std::vector<double>{};
  return m;
}

void turn_cam(Cam& c, double angle, double lag) {
  c.angle = angle;
  c.lag = lag;
  c.lift = cam_lift(*c.throw_, angle - lag, c.touch);
}

/// The machine with its cams at step i of `steps`: from the lowest position to touching in one step, from there to the
/// case's position in equal steps.
Machine turned(const Machine& machine, int i, int steps) {
  Machine m = machine;
  const double whole = static_cast<double>(i) / steps;
  for (Cam& c : m.cams) {
    if (!c.throw_ || !c.angle) {
      c.lift *= whole;
    } else if (c.touch == 0 || steps == 1) {
      turn_cam(c, *c.angle * whole, c.lag);
    } else {
      const double onward = static_cast<double>(i - 1) / (steps - 1);
      turn_cam(c, i == 0 ? 0 : std::lerp(c.touch, *c.angle, onward), c.lag);
    }
  }
  return m;
}

struct NoseForce {
  double whole = 0, left = 0, right = 0, least = nan, greatest = nan;
};

NoseForce nose_force(const StepResult& step, double middle) {
  NoseForce out;
  const BendLine& b = step.bend_line;
  for (std::size_t i = 0; i < b.x.size(); ++i) {
    if (std::isnan(b.clamp_force[i])) continue;
    const double from = i == 0 ? b.x[i] : (b.x[i - 1] + b.x[i]) / 2;
    const double to = i + 1 == b.x.size() ? b.x[i] : (b.x[i] + b.x[i + 1]) / 2;
    // A station astride the middle counts to both sides.
    const double left = std::clamp(middle - from, 0.0, to - from);
    out.left += b.clamp_force[i] * left;
    out.right += b.clamp_force[i] * (to - from - left);
    out.least = std::fmin(out.least, b.clamp_force[i]);
    out.greatest = std::fmax(out.greatest, b.clamp_force[i]);
  }
  out.whole = out.left + out.right;
  return out;
}

double nose_sum(const std::vector<ClampSpring>& springs) {
  double out = 0;
  for (const ClampSpring& s : springs)
    if (s.kind == ClampSpring::Kind::nose) out += s.force;
  return out;
}

double own_angle(const Cam& c) {
  return c.angle.value_or(nan) - c.lag;
}

/// Horizontal shift from the lowest position; NaN unless captive.
double shift_of(const Cam& c) {
  return c.captive && c.throw_ ? *c.throw_ / 2 * std::sin(own_angle(c)) : nan;
}

void fill_hand(const Machine& m, const StepResult& step, RockPoint& p) {
  p.hand = nan;
  p.moment = p.back_moment = 0;
  double linked = 0;
  double lever = nan;
  const auto cams = joints_of(step, JointKind::cam);
  for (std::size_t i = 0; i < m.cams.size(); ++i) {
    const Cam& c = m.cams[i];
    const double force = std::max(cams[i].value, 0.0);
    p.cam_force += force;
    const double moment = cam_moment(c, own_angle(c), force);
    p.moment += moment;
    p.back_moment += cam_moment(c, own_angle(c), force, true);
    if (c.linked) {
      linked += moment; // one hand turns all of them
      lever = std::fmax(lever, c.lever);
    } else {
      p.hand = std::fmax(p.hand, moment / c.lever);
    }
  }
  p.hand = std::fmax(p.hand, linked / lever);
}

/// Solves one position. \return false where the clamp is still loose: the nose does not press yet.
/// \param verdict out: of this position.
bool solve_point(const Machine& m, const Registries& registries, const ClampLever& lever, RockPoint& p,
                 Verdict& verdict) {
  p.lift = std::ranges::min_element(m.cams, {}, &Cam::lift)->lift;
  p.angle = m.cams.front().angle.value_or(nan);
  p.shift = shift_of(m.cams.front());
  if (p.lift <= 0 && std::ranges::none_of(m.posts, [](const Post& x) { return x.preload.value_or(0) > 0; })) {
    p.opening = -p.lift * lever.opening();
    return true;
  }
  AnalysisOptions options;
  options.fields = false;
  const Findings f = analyse(clamping_only(m), registries, options);
  if (f.status != Status::ok) return false;
  verdict = f.verdict;
  const NoseForce force = nose_force(f.steps.front(), m.sheet->centre);
  p.nose_force = force.whole;
  p.least = force.least;
  p.greatest = force.greatest;
  p.rigid_force = nose_sum(solve_rigid_clamp(clamp_springs(m)));
  fill_hand(m, f.steps.front(), p);
  p.lever_force = p.cam_force * lever.ratio();
  return true;
}

/// \param trouble why a lag can't be solved; its forces are NaN then.
RockLag solve_lag(const Machine& machine, const Registries& registries, double lag, std::string& trouble) {
  Machine m = machine;
  const bool linked = std::ranges::any_of(m.cams, &Cam::linked);
  RockLag out;
  out.lag = lag;
  double left = nan, right = nan;
  for (Cam& c : m.cams) {
    const bool trails = c.at.x() > m.sheet->centre && (c.linked || !linked);
    turn_cam(c, *c.angle, c.lag + (trails ? lag : 0));
    (c.at.x() > m.sheet->centre ? right : left) = shift_of(c);
  }
  out.skew = right - left;
  AnalysisOptions options;
  options.fields = false;
  const Findings f = analyse(clamping_only(m), registries, options);
  if (f.status != Status::ok) {
    trouble = f.trouble;
    out.left = out.right = out.least = out.greatest = out.rigid_left = out.rigid_right = nan;
    return out;
  }
  const NoseForce force = nose_force(f.steps.front(), m.sheet->centre);
  out.left = force.left;
  out.right = force.right;
  out.least = force.least;
  out.greatest = force.greatest;
  const auto springs = clamp_springs(m);
  out.rigid_left = nose_sum(solve_rigid_lever(springs, [&](double x) { return x < m.sheet->centre; }));
  out.rigid_right = nose_sum(solve_rigid_lever(springs, [&](double x) { return x >= m.sheet->centre; }));
  return out;
}

} // namespace

double cam_moment(const Cam& c, double angle, double force, bool back) {
  if (!c.throw_ || std::isnan(angle)) return 0;
  const double e = *c.throw_ / 2;
  const double load = force * e * std::sin(angle);
  const double under = std::isfinite(c.radius) ? c.radius - e * std::cos(angle) : 0;
  const double shaft = std::isfinite(c.shaft) ? c.shaft / 2 : 0;
  const double friction = c.friction * force * (under + shaft);
  return back ? std::max(0.0, std::abs(load) - friction) : load + friction;
}

RockResult rock(const Machine& machine, const Registries& registries, int steps, const std::vector<double>& lags) {
  RockResult out;
  out.lever = clamp_lever(machine);
  for (int i = 0; i <= steps; ++i) {
    const Machine m = turned(machine, i, steps);
    RockPoint p;
    if (solve_point(m, registries, out.lever, p, out.clamped)) {
      out.turn.push_back(p);
    } else if (i == steps) {
      const Findings f = analyse(clamping_only(m), registries);
      throw std::runtime_error("in the clamped position: " + f.trouble);
    }
  }
  const bool eccentric = std::ranges::all_of(machine.cams, [](const Cam& c) { return c.throw_ && c.angle; });
  if (!eccentric)
    out.warnings.emplace_back(
        "hand moment, set-back and lag need cams by `throw` and `angle`; this case gives a `lift`");
  else
    for (const double lag : lags) {
      std::string trouble;
      out.lags.push_back(solve_lag(machine, registries, lag, trouble));
      if (!trouble.empty()) out.warnings.push_back("clamped with a lag: " + trouble);
    }
  return out;
}

} // namespace bedbow
