#include "solver/study/prototype.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr double stiff = 1e3; // times as stiff counts as rigid
constexpr double rigid_screw = 1e13;

Findings solved(const Machine& m, const Registries& registries, const char* which) {
  AnalysisOptions options;
  options.fields = false;
  Findings f = analyse(m, registries, options);
  if (f.status != Status::ok) throw std::runtime_error(std::string(which) + ": " + f.trouble);
  return f;
}

Machine without_shear(Machine m) {
  const int sheet = m.sheet ? m.sheet->material : -1;
  for (std::size_t i = 0; i < m.materials.size(); ++i)
    if (static_cast<int>(i) != sheet) m.materials[i].G *= stiff;
  return m;
}

Machine without_joints(Machine m) {
  for (Post& p : m.posts) p.free_length /= stiff;
  for (Cam& c : m.cams) c.stiffness.reset();
  for (Screws& s : m.screws) s.shear_stiffness = rigid_screw;
  for (Tie& t : m.ties)
    if (t.only == Sense::both) t.stiffness.reset(), t.rotational_stiffness.reset();
  for (Support& s : m.supports) s.stiffness.reset(), s.rotational_stiffness.reset();
  return m;
}

struct Split {
  std::array<double, 3> bow{}, shear{}, joints{};
};

Split split(const Machine& m, const Registries& registries, std::size_t step, const char* which) {
  const auto bow = [&](const Machine& machine) { return solved(machine, registries, which).steps.at(step).bow.bow; };
  const auto whole = bow(m);
  const auto no_shear = bow(without_shear(m));
  const auto no_joints = bow(without_joints(m));
  Split out;
  for (std::size_t k = 0; k < 3; ++k) {
    out.bow[k] = whole[k];
    out.shear[k] = whole[k] > 0 ? 1 - no_shear[k] / whole[k] : std::nan("");
    out.joints[k] = whole[k] > 0 ? 1 - no_joints[k] / whole[k] : std::nan("");
  }
  return out;
}

Allowable safe_stress(const Material& m) {
  if (m.yield > 0) return {0.67 * m.yield, "0.67 of the yield, common practice, no source"};
  return {m.tensile / 4, "a quarter of the modulus of rupture, for its spread, knots and load that stays on; common "
                         "practice, no source"};
}

void fill_dials(const Machine& m, const StepResult& real, const StepResult& proto, PrototypeResult& out) {
  constexpr std::array axes{"x", "y", "z"};
  for (std::size_t i = 0; i < m.dials.size(); ++i)
    for (Eigen::Index k = 1; k < 3; ++k) {
      if (m.dials[i].direction >= 0 && m.dials[i].direction != k) continue;
      out.dials.push_back(
          {m.dials[i].name, axes[static_cast<std::size_t>(k)], real.dials[i].movement[k], proto.dials[i].movement[k]});
    }
}

void fill_loads(const Machine& m, double scale, const StepResult& real, const StepResult& proto, const Findings& f,
                PrototypeResult& out) {
  if (f.sheet && m.body(BodyKind::apron).present())
    out.loads.push_back({"apron's push on the flange, all along", f.sheet->apron * m.sheet->width,
                         f.sheet->apron * m.sheet->width * out.load_scale});
  for (std::size_t i = 0; i < real.posts.size(); ++i)
    out.loads.push_back({"post " + real.posts[i].name, real.posts[i].value, proto.posts[i].value});
  for (std::size_t i = 0; i < real.handles.size(); ++i)
    if (i < m.handles.size() && std::isfinite(m.handles[i].reach))
      out.loads.push_back({"hand at handle " + real.handles[i].name, real.handles[i].value / m.handles[i].reach,
                           proto.handles[i].value / (m.handles[i].reach * scale)});
  for (const Load& l : m.loads)
    if (l.kind == Load::Kind::point) out.loads.push_back({"load", l.force.norm(), l.force.norm() * out.load_scale});
}

} // namespace

PrototypeResult prototype(const Machine& machine, const Registries& registries, const Material& material,
                          double scale) {
  PrototypeResult out;
  double modulus = 0;
  const Machine proto = prototype_of(machine, registries, material, scale, modulus);
  out.load_scale = scale * scale * material.E / modulus;
  const Findings real = solved(machine, registries, "the machine");
  const Findings small = solved(proto, registries, "the prototype");
  const std::size_t step = real.worst_step.value_or(real.steps.size() - 1);
  out.step = real.steps[step].name;
  const Split one = split(machine, registries, step, "the machine");
  const Split other = split(proto, registries, step, "the prototype");
  for (const BodyKind kind : all_bodies) {
    const auto k = static_cast<std::size_t>(kind);
    if (machine.body(kind).present())
      out.bows.push_back(
          {to_string(kind), one.bow[k], other.bow[k], one.shear[k], other.shear[k], one.joints[k], other.joints[k]});
  }
  fill_dials(machine, real.steps[step], small.steps[step], out);
  fill_loads(machine, scale, real.steps[step], small.steps[step], real, out);
  out.allowed = safe_stress(material);
  for (const StepResult& s : small.steps)
    for (const BarResult& b : s.bars)
      if (b.stress > out.stress) {
        out.stress = b.stress;
        out.stressed = b.name;
      }
  return out;
}

} // namespace bedbow
