#include "solver/study/setup.h"

#include "mesh/machine/setback.h"
#include "mesh/machine/stud_spring.h"
#include "mesh/piece/fastener.h"
#include "mesh/piece/si.h"
#include "solver/sheet/din6935.h"
#include "solver/study/rigid_clamp.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

constexpr int flange_halvings = 8;

/// Metric coarse pitch of a plain diameter, where there is one.
std::optional<Thread> thread_of(const Post& p) {
  if (auto t = find_thread(p.thread)) return t;
  char text[24];
  std::snprintf(text, sizeof text, "M%.6g", p.diameter * 1e3);
  return find_thread(text);
}

/// How much further back than its sheet needs the case has the nose's edge: a high clamp needs that for a flange that
/// springs back far [m].
double further_back(const Machine& machine) {
  return std::max(0.0, machine.nose.setback - default_setback(machine));
}

/// The case's machine set for another thickness: the clamp rises with the sheet, and the nose edge is at its set-back.
Machine with_thickness(const Machine& machine, const Setting& s) {
  Machine m = machine;
  const double more = s.thickness - machine.sheet->thickness;
  m.sheet->thickness = s.thickness;
  m.sheet->inside_radius = s.inside_radius;
  m.nose.setback = default_setback(m) + further_back(machine);
  for (Bar& bar : m.body(BodyKind::clamp).bars) bar.at.y() += more;
  return m;
}

Findings solved(const Machine& m, const Registries& registries) {
  AnalysisOptions options;
  options.fields = false;
  return analyse(m, registries, options);
}

/// Height at y of a clamp without post forces: it lies on its nose and, where there are cams, on them.
double loose_height(const Machine& m, double y) {
  double lift = 0, cam_y = 0;
  for (const Cam& c : m.cams) {
    lift += c.lift / static_cast<double>(m.cams.size());
    cam_y += c.at.y() / static_cast<double>(m.cams.size());
  }
  const double nose_y = m.nose.setback + m.nose.land / 2;
  return m.cams.empty() || lift <= 0 ? 0 : lift * (y - nose_y) / (cam_y - nose_y);
}

/// The stud stretches, and the clamp comes down to the nut.
std::vector<NutSetting> nut_settings(const Machine& m, const StepResult& clamp) {
  std::vector<NutSetting> out;
  const auto posts = joints_of(clamp, JointKind::post);
  for (std::size_t i = 0; i < m.posts.size(); ++i) {
    const Post& p = m.posts[i];
    const auto thread = thread_of(p);
    if (!thread || !p.preload) continue;
    NutSetting n;
    n.post = posts[i].name;
    n.preload = *p.preload;
    n.stretch = *p.preload / stud_stiffness(p);
    n.down = loose_height(m, p.at.y()) - posts[i].figure("apart");
    n.turn = 2 * std::numbers::pi * (n.stretch + n.down) / thread->pitch;
    out.push_back(std::move(n));
  }
  return out;
}

double hand_force(const Machine& m, const std::vector<StepResult>& steps, double reach) {
  double most = nan;
  for (const StepResult& s : steps) {
    const auto handles = joints_of(s, JointKind::handle);
    for (std::size_t i = 0; i < handles.size() && i < m.handles.size(); ++i) {
      const double arm = std::isfinite(m.handles[i].reach) ? m.handles[i].reach : reach;
      most = std::fmax(most, handles[i].figure("moment") / arm);
    }
  }
  return most;
}

/// Least flange: two thicknesses beyond the bend for the apron to bear on (common practice, no source), or where the
/// limits end, since a shorter flange needs more force.
void find_flange(const Machine& machine, const Registries& registries, Setting& s) {
  const double bend_room = s.inside_radius + 3 * s.thickness;
  const auto holds = [&](double flange) {
    Machine m = machine;
    m.sheet->flange = flange;
    const Findings f = solved(m, registries);
    return f.status == Status::ok && f.verdict.pass;
  };
  s.least_flange = bend_room;
  if (holds(bend_room)) return;
  s.flange_by_limits = true;
  double low = bend_room;
  double high = std::max(machine.sheet->flange, 2 * bend_room);
  if (!holds(high)) {
    s.least_flange = nan;
    return;
  }
  for (int i = 0; i < flange_halvings; ++i) (holds((low + high) / 2) ? high : low) = (low + high) / 2;
  s.least_flange = high;
}

void solve_setting(const Machine& machine, const Registries& registries, double reach, Setting& s) {
  const Machine m = with_thickness(machine, s);
  const Findings f = solved(m, registries);
  if (f.status != Status::ok) {
    s.trouble = f.trouble;
    return;
  }
  s.springback = f.sheet->springback.sum();
  s.lag = -f.steps.back().bow.angle_mean;
  s.apron_angle = m.sheet->angle + s.springback + (std::isfinite(s.lag) ? s.lag : 0);
  s.nuts = nut_settings(m, f.steps.front());
  s.hand_force = hand_force(m, f.steps, reach);
  s.within_limits = f.verdict.pass;
  find_flange(m, registries, s);
}

} // namespace

double cam_angle_for(const Machine& m, double more) {
  if (m.cams.empty() || m.posts.empty()) return nan;
  const Cam& c = m.cams.front();
  if (!c.throw_ || !c.angle) return nan;
  const double e = *c.throw_ / 2;
  const double touch = std::cos(c.touch) + more / (clamp_lever(m).opening() * e);
  const double clamped = touch - c.lift / e;
  if (std::abs(touch) > 1 || std::abs(clamped) > 1) return nan;
  return std::acos(clamped);
}

std::vector<Setting> find_settings(const Machine& machine, const Registries& registries,
                                   const std::vector<double>& thicknesses, double reach) {
  if (!machine.sheet) throw std::invalid_argument("nothing to set up: the case needs [sheet]");
  std::vector<Setting> out;
  const Sheet& sheet = *machine.sheet;
  const Material& material = machine.materials.at(static_cast<std::size_t>(sheet.material));
  for (const double t : thicknesses) {
    Setting s;
    s.thickness = t;
    s.least_radius = least_inside_radius(material, t);
    s.inside_radius = std::max(sheet.inside_radius, s.least_radius.value);
    const double angle = std::max(std::numbers::pi / 2, sheet.angle);
    s.setback = least_setback(t, s.inside_radius, 0, angle) + further_back(machine);
    s.rounded_setback = least_setback(t, s.inside_radius, s.inside_radius, angle) + further_back(machine);
    s.nut_turns = nan;
    for (const Post& p : machine.posts)
      if (const auto thread = thread_of(p)) s.nut_turns = (t - sheet.thickness) / thread->pitch;
    s.cam_angle = cam_angle_for(machine, t - sheet.thickness);
    s.k = din6935_k(s.inside_radius, t);
    s.correction = din6935_correction(sheet.angle, s.inside_radius, t);
    s.apron_angle = s.springback = s.lag = s.hand_force = s.least_flange = nan;
    solve_setting(machine, registries, reach, s);
    out.push_back(std::move(s));
  }
  return out;
}

} // namespace bedbow
