#include "solver/findings/mean_forces.h"
#include "solver/findings/results.h"
#include "solver/model/recovery.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace bedbow {

namespace {

struct Worst {
  double stress = -1;
  double at = 0;
  int point = 0;
  SectionForces forces;
};

/// Upper bound of the stress of a section, from its box and its greatest shear per force: where it does not reach the
/// worst so far, its points are skipped.
class Reach {
public:
  explicit Reach(const Section& s)
      : per_N_(1 / s.props.A) {
    double y = 0, z = 0;
    for (const StressPoint& p : s.points) {
      y = std::max(y, std::abs(p.y));
      z = std::max(z, std::abs(p.z));
      Vy_ = std::max(Vy_, p.tau_Vy.norm());
      Vz_ = std::max(Vz_, p.tau_Vz.norm());
      T_ = std::max(T_, p.tau_T.norm());
    }
    const SectionProperties& i = s.props;
    const double det = i.Iyy * i.Izz - i.Iyz * i.Iyz;
    per_My_ = (std::abs(i.Iyz) * y + i.Izz * z) / det;
    per_Mz_ = (i.Iyy * y + std::abs(i.Iyz) * z) / det;
  }
  [[nodiscard]] bool beats(const SectionForces& f, double stress) const {
    if (stress < 0) return true; // none so far
    const double sigma = std::abs(f.N) * per_N_ + std::abs(f.My) * per_My_ + std::abs(f.Mz) * per_Mz_;
    const double tau = std::abs(f.Vy) * Vy_ + std::abs(f.Vz) * Vz_ + std::abs(f.T) * T_;
    constexpr double rounding = 1 + 1e-9;
    return (sigma * sigma + 3 * tau * tau) * rounding >= stress * stress;
  }

private:
  double per_N_, per_My_ = 0, per_Mz_ = 0, Vy_ = 0, Vz_ = 0, T_ = 0; // stress per force and moment
};

/// Evaluates one section.
void look_at(const Section& section, const SectionForces& f, double at, const Reach& reach, Worst& worst) {
  if (!reach.beats(f, worst.stress)) return;
  const auto [stress, point] = worst_von_mises(section, f);
  if (clearly_greater(stress, worst.stress)) worst = {stress, at, point, f};
}

/// Evaluates one element. Without a load on it forces vary linearly, and the ends are sufficient.
/// \param first forces at its start, which is at `start`.
void look_along(const Model& m, const StepSolution& step, int element, double start, const SectionForces& first,
                const Reach& reach, Worst& worst) {
  const BeamElement& e = m.mesh.beams[element];
  const Section& section = m.mesh.sections[e.section];
  const BeamData& data = m.data.beams[m.data.of_beam[element]];
  const BeamLineLoad& load = step.loads.beams[element];
  const int pieces = load.force.isZero(0) && load.moment.isZero(0) ? 1 : 4;
  for (int i = 0; i <= pieces; ++i) {
    const double s = double(i) / pieces;
    look_at(section, i == 0 ? first : forces_further(data, load, first, s * e.length), start + s * e.length, reach,
            worst);
  }
}

/// A bar as a chain of elements, with the forces at the start of each.
struct Chain {
  const Model& m;
  const StepSolution& step;
  const BarLayout& layout;
  Reach reach;
  std::vector<SectionForces> first;

  Chain(const Model& model, const StepSolution& solution, const BarLayout& l)
      : m(model)
      , step(solution)
      , layout(l)
      , reach(model.mesh.sections[l.section]) {
    first.reserve(l.stations.size() - 1);
    for (std::size_t i = 0; i + 1 < l.stations.size(); ++i)
      first.push_back(element_forces(m, step, l.first_element + static_cast<int>(i), 0));
  }
  void look(std::size_t i, Worst& worst) const {
    look_along(m, step, layout.first_element + static_cast<int>(i), layout.stations[i], first[i], reach, worst);
  }
};

/// The greatest local stress.
Worst local_peak(const Chain& chain) {
  Worst worst;
  for (std::size_t i = 0; i < chain.first.size(); ++i) chain.look(i, worst);
  return worst;
}

/// The same of a bar that is welded to others: where it is, of the means of its forces; elsewhere it stands alone.
Worst judged_place(const Chain& chain) {
  Worst worst;
  const BarLayout& l = chain.layout;
  const Section& section = chain.m.mesh.sections[l.section];
  MeanForces means(chain.m, chain.step, l, chain.first);
  const std::size_t elements = chain.first.size();
  for (std::size_t i = 0; i <= elements; ++i) {
    const double before = i > 0 ? l.welded_depth[i - 1] : 0, after = i < elements ? l.welded_depth[i] : 0;
    if (const double depth = std::max(before, after); depth > 0)
      look_at(section, means.at(i, window_per_depth * depth), l.stations[i], chain.reach, worst);
    if (i < elements && after == 0) chain.look(i, worst);
  }
  return worst;
}

BarResult result_of(const std::string& name, const Section& section, const Material& material, const Worst& worst,
                    const Worst& peak) {
  BarResult r;
  r.name = name;
  r.stress = std::max(worst.stress, 0.0);
  r.at_x = worst.at;
  const StressPoint& p = section.points[worst.point];
  r.y = p.y;
  r.z = p.z;
  r.sigma = direct_stress(section.props, worst.forces, p.y, p.z);
  r.tau = shear_stress(p, worst.forces).norm();
  r.forces = worst.forces;
  r.utilisation = material.yield > 0 ? r.stress / material.yield : 0;
  r.peak_stress = std::max(peak.stress, 0.0);
  r.peak_x = peak.at;
  return r;
}

/// A bar, member or run of own lines.
BarResult result_of(const Model& m, const StepSolution& step, const BarLayout& l) {
  const Chain chain(m, step, l);
  Worst peak = local_peak(chain);
  Worst worst = l.welded_depth.empty() ? peak : judged_place(chain);
  const BeamElement& head = m.mesh.beams[l.first_element];
  if (l.owner.kind == Ref::Kind::own) // a run of lines begins anywhere: report x
    for (Worst* w : {&worst, &peak}) w->at = m.mesh.nodes[l.nodes[0]].x.x() + w->at * head.axes(0, 0);
  return result_of(m.machine.plain_name(l.owner), m.mesh.sections[l.section], m.machine.materials.at(head.material),
                   worst, peak);
}

/// A plate bar, panel, plate fingers or a part of own quads.
BarResult result_of(const Model& m, const ShellStress& s) {
  BarResult r;
  r.name = s.fingers ? "clamp.fingers" : m.machine.plain_name(s.owner);
  r.stress = s.judged.stress;
  if (s.judged.point >= 0) r.at_x = s.points[s.judged.point].x();
  for (std::size_t i = 0; i < s.points.size(); ++i)
    if (const double v = std::ranges::max(s.von_mises[i]); clearly_greater(v, r.peak_stress)) {
      r.peak_stress = v;
      r.peak_x = s.points[i].x();
    }
  const double yield = m.machine.materials.at(s.material).yield;
  r.utilisation = yield > 0 ? r.stress / yield : 0;
  return r;
}

/// Pieces of one part of the user's mesh as one result: the worst, by utilisation where the yield is known.
void merge_parts(const Machine& machine, std::vector<BarResult>& bars) {
  for (std::size_t p = 0; p < machine.own.parts.size(); ++p) {
    const std::string name = machine.plain_name({Ref::Kind::own, BodyKind::bed, static_cast<int>(p)});
    const auto first = std::ranges::find(bars, name, &BarResult::name);
    if (first == bars.end()) continue;
    BarResult worst = *first;
    for (auto it = first + 1; it != bars.end(); ++it) {
      if (it->name != name) continue;
      const BarResult& peak = it->peak_stress > worst.peak_stress ? *it : worst;
      const double peak_stress = peak.peak_stress, peak_x = peak.peak_x;
      if (std::pair(it->utilisation, it->stress) > std::pair(worst.utilisation, worst.stress)) worst = *it;
      worst.peak_stress = peak_stress;
      worst.peak_x = peak_x;
    }
    *first = worst;
    bars.erase(std::remove_if(first + 1, bars.end(), [&](const BarResult& b) { return b.name == name; }), bars.end());
  }
}

void add_fingers(const Model& m, const StepSolution& step, StepResult& out) {
  if (m.mesh.fingers.empty()) return;
  Worst worst;
  const BeamElement* at = nullptr;
  for (const FingerLayout& f : m.mesh.fingers) {
    if (f.plate()) continue; // among the shells
    for (int i : {f.first_element, f.first_element + 1}) {
      const double before = worst.stress;
      look_along(m, step, i, 0, element_forces(m, step, i, 0), Reach(m.mesh.sections[m.mesh.beams[i].section]), worst);
      if (worst.stress > before) at = &m.mesh.beams[i];
    }
  }
  if (!at) return;
  worst.at = m.mesh.nodes[at->nodes[0]].x.x();
  out.bars.push_back(
      result_of("clamp.fingers", m.mesh.sections[at->section], m.machine.materials.at(at->material), worst, worst));
}

} // namespace

void fill_bars(const Model& m, const StepSolution& step, StepResult& out) {
  for (const BarLayout& l : m.mesh.layouts) {
    if (!l.across.empty() || l.first_element < 0) continue;
    out.bars.push_back(l.first_strip >= 0 ? result_of(m, strip_stress(m, step, l, true)) : result_of(m, step, l));
  }
  add_fingers(m, step, out);
  for (const ShellStress& s : judged_shell_stresses(m, step)) out.bars.push_back(result_of(m, s));
  merge_parts(m.machine, out.bars);
}

} // namespace bedbow
