#include "solver/study/prototype.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr double nudge = 1e-3; // relative change of a compliance to find its share

Findings solved(const Machine& m, const Registries& registries, const char* which) {
  AnalysisOptions options;
  options.fields = false;
  Findings f = analyse(m, registries, options);
  if (f.status != Status::ok) throw std::runtime_error(std::string(which) + ": " + f.trouble);
  return f;
}

/// A sheet of the same material as the bars gets a copy of it, so that the bars' can be varied alone.
Machine sheet_apart(Machine m) {
  if (!m.sheet) return m;
  m.materials.push_back(m.materials.at(static_cast<std::size_t>(m.sheet->material)));
  m.sheet->material = static_cast<int>(m.materials.size()) - 1;
  return m;
}

/// Multiplies compliances of one kind, or the prescribed displacements, by a factor.
using Part = void (*)(Machine&, double);

void give_by_E(Machine& m, double factor) {
  for (std::size_t i = 0; i < m.materials.size(); ++i)
    if (!m.sheet || static_cast<int>(i) != m.sheet->material) m.materials[i].E /= factor;
}

void give_by_G(Machine& m, double factor) {
  for (std::size_t i = 0; i < m.materials.size(); ++i)
    if (!m.sheet || static_cast<int>(i) != m.sheet->material) m.materials[i].G /= factor;
}

void give_more_lift(Machine& m, double factor) {
  for (Cam& c : m.cams) c.lift *= factor;
  for (Body& b : m.bodies)
    for (double& h : b.crown.height) h *= factor;
}

std::array<BowShares, 3> shares_of(const Machine& machine, const Registries& registries, std::size_t step,
                                   const char* which) {
  const Machine apart = sheet_apart(machine);
  const auto bow = [&](Part part, double factor) {
    Machine m = apart;
    part(m, factor);
    return solved(m, registries, which).steps.at(step).bow.bow;
  };
  const auto whole = bow(give_by_E, 1);
  const auto share = [&](Part part) {
    const auto up = bow(part, 1 + nudge);
    const auto down = bow(part, 1 - nudge);
    std::array<double, 3> out{};
    for (std::size_t k = 0; k < 3; ++k) out[k] = (up[k] - down[k]) / (2 * nudge * whole[k]);
    return out;
  };
  const auto bending = share(give_by_E), shear = share(give_by_G), set = share(give_more_lift);
  std::array<BowShares, 3> out;
  for (std::size_t k = 0; k < 3; ++k) {
    out[k] = {bending[k], shear[k], 0, set[k]};
    out[k].joints = 1 - bending[k] - shear[k] - set[k];
  }
  return out;
}

/// Three dials along a body's bend-line edge: its bow is the middle one less the mean of the outer two.
void add_dials(Machine& m) {
  for (const Body& b : m.bodies) {
    if (!b.present() || b.edge_bar < 0) continue;
    const bool sheet = m.sheet.has_value();
    const double left = sheet ? m.sheet->left() : b.start;
    const double right = sheet ? m.sheet->right() : b.start + b.length;
    const Bar& bar = b.bars[static_cast<std::size_t>(b.edge_bar)];
    for (const auto& [name, x] : {std::pair{"left", left}, {"middle", (left + right) / 2}, {"right", right}})
      m.dials.push_back({to_string(b.kind) + " " + name,
                         {Ref::Kind::bar, b.kind, b.edge_bar},
                         {x, bar.at.x(), bar.at.y()},
                         {},
                         -1,
                         {}});
  }
}

Allowable safe_stress(const Material& m) {
  if (m.yield > 0) return {0.67 * m.yield, "0.67 of the yield, common practice, no source"};
  return {m.tensile / 4, "a quarter of the modulus of rupture, for scatter, knots and long-term load; common "
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

void fill_loads(const Machine& m, const StepResult& real, const StepResult& proto, const Findings& f,
                PrototypeResult& out) {
  if (f.sheet && m.body(BodyKind::apron).present())
    out.loads.push_back({"push of the apron on the flange, total", f.sheet->apron * m.sheet->width,
                         f.sheet->apron * m.sheet->width * out.load_scale});
  const auto compare = [&](JointKind kind, const std::string& what) {
    const auto of_real = joints_of(real, kind), of_proto = joints_of(proto, kind);
    for (std::size_t i = 0; i < of_real.size(); ++i)
      if (std::isfinite(of_real[i].value))
        out.loads.push_back({what + of_real[i].name, of_real[i].value, of_proto[i].value});
  };
  compare(JointKind::post, "post ");
  compare(JointKind::handle, "hand at handle ");
  for (const Load& l : m.loads)
    if (l.kind == Load::Kind::point) out.loads.push_back({"load", l.force.norm(), l.force.norm() * out.load_scale});
}

} // namespace

PrototypeResult prototype(const Machine& given, const Registries& registries, const Material& material, double scale) {
  PrototypeResult out;
  Machine machine = given;
  if (machine.dials.empty()) add_dials(machine);
  Material base;
  const Machine proto = prototype_of(machine, registries, material, scale, base);
  const double e = material.E / base.E;
  out.load_scale = scale * scale * e;
  // Forces scale with scale^2 e, lengths with scale: a displacement due to E scales with scale, one due to G by E/G
  // more, one of steel joints of scaled size with scale e, a prescribed one with the size.
  out.parts = {scale, scale * e / (material.G / base.G), scale * e, scale};
  const Findings real = solved(machine, registries, "the machine");
  const Findings small = solved(proto, registries, "the prototype");
  const std::size_t step = real.worst_step.value_or(real.steps.size() - 1);
  out.step = real.steps[step].name;
  const auto shares = shares_of(machine, registries, step, "the machine");
  const auto other = shares_of(proto, registries, step, "the prototype");
  for (const BodyKind kind : all_bodies) {
    const auto k = static_cast<std::size_t>(kind);
    if (machine.body(kind).present())
      out.bows.push_back(
          {to_string(kind), real.steps[step].bow.bow[k], small.steps[step].bow.bow[k], shares[k], other[k]});
  }
  fill_dials(machine, real.steps[step], small.steps[step], out);
  fill_loads(machine, real.steps[step], small.steps[step], real, out);
  out.allowed = safe_stress(material);
  for (const StepResult& s : small.steps)
    for (const BarResult& b : s.bars)
      if (clearly_greater(b.stress, out.stress)) {
        out.stress = b.stress;
        out.stressed = b.name;
      }
  return out;
}

} // namespace bedbow
