#include "solver/findings/results.h"
#include "solver/model/recovery.h"

#include <algorithm>
#include <cmath>
#include <utility>

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

/// Evaluates one element. Without a load on it forces vary linearly, and the ends are sufficient.
void look_along(const Model& m, const StepSolution& step, int element, double start, const Reach& reach, Worst& worst) {
  const BeamElement& e = m.mesh.beams[element];
  const Section& section = m.mesh.sections[e.section];
  const BeamData& data = m.data.beams[m.data.of_beam[element]];
  const BeamLineLoad& load = step.loads.beams[element];
  const int pieces = load.force.isZero(0) && load.moment.isZero(0) ? 1 : 4;
  const SectionForces first = element_forces(m, step, element, 0);
  for (int i = 0; i <= pieces; ++i) {
    const double s = double(i) / pieces;
    const SectionForces f = i == 0 ? first : forces_further(data, load, first, s * e.length);
    if (!reach.beats(f, worst.stress)) continue;
    const auto [stress, point] = worst_von_mises(section, f);
    if (clearly_greater(stress, worst.stress)) worst = {stress, start + s * e.length, point, f};
  }
}

BarResult result_of(const std::string& name, const Section& section, const Material& material, const Worst& worst) {
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
  return r;
}

/// Pieces of one part of the user's mesh as one result: the worst, by utilisation where the yield is known.
void merge_parts(const Machine& machine, std::vector<BarResult>& bars) {
  for (std::size_t p = 0; p < machine.own.parts.size(); ++p) {
    const std::string name = machine.plain_name({Ref::Kind::own, BodyKind::bed, static_cast<int>(p)});
    const auto first = std::ranges::find(bars, name, &BarResult::name);
    if (first == bars.end()) continue;
    for (auto it = first + 1; it != bars.end(); ++it)
      if (it->name == name && std::pair(it->utilisation, it->stress) > std::pair(first->utilisation, first->stress))
        *first = *it;
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
      look_along(m, step, i, 0, Reach(m.mesh.sections[m.mesh.beams[i].section]), worst);
      if (worst.stress > before) at = &m.mesh.beams[i];
    }
  }
  if (!at) return;
  worst.at = m.mesh.nodes[at->nodes[0]].x.x();
  out.bars.push_back(
      result_of("clamp.fingers", m.mesh.sections[at->section], m.machine.materials.at(at->material), worst));
}

} // namespace

void fill_bars(const Model& m, const StepSolution& step, StepResult& out) {
  for (const BarLayout& l : m.mesh.layouts) {
    if (!l.across.empty() || l.first_element < 0) continue;
    Worst worst;
    const Reach reach(m.mesh.sections[l.section]);
    for (std::size_t i = 0; i + 1 < l.stations.size(); ++i)
      look_along(m, step, l.first_element + static_cast<int>(i), l.stations[i], reach, worst);
    const int material = m.mesh.beams[l.first_element].material;
    if (l.owner.kind == Ref::Kind::own) // a run of lines begins anywhere: report x
      worst.at = m.mesh.nodes[l.nodes[0]].x.x() + worst.at * m.mesh.beams[l.first_element].axes(0, 0);
    out.bars.push_back(
        result_of(m.machine.plain_name(l.owner), m.mesh.sections[l.section], m.machine.materials.at(material), worst));
  }
  add_fingers(m, step, out);
  for (const ShellStress& s : shell_stresses(m, step)) {
    BarResult r;
    r.name = s.fingers ? "clamp.fingers" : m.machine.plain_name(s.owner);
    for (std::size_t i = 0; i < s.nodes.size(); ++i)
      for (double v : s.von_mises[i])
        if (v > r.stress) {
          r.stress = v;
          r.at_x = m.mesh.nodes[s.nodes[i]].x.x();
        }
    const double yield = m.machine.materials.at(s.material).yield;
    r.utilisation = yield > 0 ? r.stress / yield : 0;
    out.bars.push_back(r);
  }
  merge_parts(m.machine, out.bars);
}

} // namespace bedbow
