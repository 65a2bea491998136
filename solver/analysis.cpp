#include "solver/analysis.h"

#include "mesh/mesher.h"
#include "solver/bend_line.h"
#include "solver/bracket.h"
#include "solver/joint_checks.h"
#include "solver/model.h"
#include "solver/modes/fill_modes.h"
#include "solver/nose_hold.h"
#include "solver/results.h"
#include "solver/words.h"

#include <Eigen/Geometry>

#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

using Sections = std::vector<std::shared_ptr<const Section>>;

void fill_mass(const Model& m, Findings& out) {
  for (std::size_t i = 0; i < m.mesh.beams.size(); ++i) {
    const BeamData& d = m.data.beams[m.data.of_beam[i]];
    out.mass += d.density * d.section.A * m.mesh.beams[i].length;
  }
  for (const BarLayout& l : m.mesh.layouts) {
    if (l.across.empty()) continue;
    const Bar& bar = m.machine.bar(l.owner);
    out.mass += m.machine.materials.at(bar.material).density * m.mesh.sections[l.section].props.A * bar.length;
  }
  for (std::size_t i = 0; i < m.mesh.fingers.size(); ++i) {
    if (!m.mesh.fingers[i].plate()) continue;
    const Fingers& f = *m.machine.fingers;
    out.mass += m.machine.materials.at(f.material).density * f.thickness * f.reach * f.widths[i];
  }
  for (const ShellElement& e : m.mesh.shells) {
    if (e.owner.kind != Ref::Kind::own) continue;
    const Corners c = corners_of(m.mesh, e);
    out.mass += m.machine.materials.at(e.material).density * e.thickness * (c[2] - c[0]).cross(c[3] - c[1]).norm() / 2;
  }
  for (const Panel& p : m.machine.panels)
    out.mass += m.machine.materials.at(p.material).density * p.thickness * p.edge_a.cross(p.edge_b).norm();
}

StepResult step_result(const Model& m, const StepSolution& s, const AnalysisOptions& options,
                       const Sections& sections) {
  StepResult r;
  r.name = s.name;
  r.angle = s.angle;
  fill_bend_line(m, s, r);
  fill_bars(m, s, r);
  fill_joints(m, s, r);
  fill_dials(m, s, r);
  if (options.certificate) fill_checks(m, s, r);
  if (options.fields) fill_fields(m, s, sections, r);
  return r;
}

/// Rows whose stiffness in shear the case leaves to Huth's formula.
void note_screws(const Model& m, Findings& out) {
  int last = -1;
  for (const Joint& j : m.mesh.joints) {
    if (j.kind != JointKind::screw || j.index == last || m.machine.screws[j.index].shear_stiffness) continue;
    last = j.index;
    char text[32];
    std::snprintf(text, sizeof text, "%.4g", j.stiffness[ux] * 1e-6);
    out.assumptions.push_back((j.name.starts_with("screws") ? "" : "screws ") + j.name + " give way in shear by " +
                              text + " kN/mm each, after Huth (LBF FB-172, 1984); the bracket shows what slip can do");
  }
}

/// Bars that only lie on each other.
void note_contacts(const Model& m, Findings& out) {
  std::string last;
  for (const Joint& j : m.mesh.joints) {
    if (j.kind != JointKind::pressure || j.name == last) continue;
    last = j.name;
    out.assumptions.push_back(j.name + ": neither screwed nor welded, they press on each other and part freely");
  }
}

/// What bars and panels that name an element take from it, and what stands in for what it does not bring.
void note_elements(const Model& m, Findings& out) {
  for (const ElementEntry& e : m.data.own.entries) {
    std::string text = "element '" + e.name + "' (" + e.origin + ") gives stiffness";
    text += std::string(e.mass ? ", mass" : "") + (e.geometric ? ", geometric stiffness" : "") +
            (e.load ? ", distributed loads" : "") + "; the shape between nodes is the built-in element's";
    if (!e.load) text += ", and so is how loads go to the nodes";
    if (!e.mass && m.machine.solve.modes > 0)
      text += "; its mass counts as lumped at the nodes, from density and section";
    out.assumptions.push_back(std::move(text));
  }
}

void note_assumptions(const Model& m, Findings& out) {
  out.warnings = m.mesh.warnings;
  note_elements(m, out);
  if (!m.mesh.shells.empty())
    out.assumptions.emplace_back("plate bars and panels are shells on their mid-plane: stress beside a point force or "
                                 "a rigid support grows with a finer mesh");
  for (const Cam& c : m.machine.cams)
    if (!c.stiffness) {
      out.assumptions.emplace_back("cams without stiffness count as rigid (1e11 N/mm)");
      break;
    }
  note_screws(m, out);
  note_contacts(m, out);
  if (!m.machine.posts.empty() || !m.machine.screws.empty())
    out.assumptions.emplace_back("posts and screws are steel, E = 205 GPa (common practice, no source)");
  for (std::string& line : unchecked_joints(m.machine)) out.assumptions.push_back(std::move(line));
  if (m.machine.sheet) {
    out.assumptions.emplace_back("the held sheet passes pressure only, no friction along the nose");
    if (std::string text = nose_opening_assumption(m.machine); !text.empty())
      out.assumptions.push_back(std::move(text));
    if (!m.mesh.beams.empty())
      out.assumptions.emplace_back("beam bars bend as beams: cross-sections stay plane and keep their shape");
  }
}

/// The step whose bend angle varies most; without an apron, the one with the greatest bow.
std::optional<std::size_t> worst_step(const std::vector<StepResult>& steps) {
  std::optional<std::size_t> worst;
  double most = -1;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    double v = std::isfinite(steps[i].bow.angle_spread) ? steps[i].bow.angle_spread : 0;
    if (i == 0 && steps.size() > 1) v = 0; // nothing is bent while clamping
    if (v == 0)
      for (double b : steps[i].bow.bow)
        if (std::isfinite(b)) v = std::max(v, b * 1e-6);
    if (clearly_greater(v, most)) {
      most = v;
      worst = i;
    }
  }
  return worst;
}

Sections shared_sections(const Model& model, const AnalysisOptions& options) {
  Sections out;
  if (options.fields)
    for (const Section& s : model.mesh.sections) out.push_back(std::make_shared<const Section>(s));
  return out;
}

/// No step can be solved: that ends the analysis, or only its statics.
void note_failure(const Model& model, const Registries& registries, const AnalysisOptions& options, Status status,
                  const std::string& trouble, Findings& out) {
  if (status == Status::mechanism && options.allow_loose && model.machine.solve.modes > 0) {
    out.warnings.push_back("only modes, no loads: " + trouble);
    fill_modes(model, registries, {}, shared_sections(model, options), out);
    return;
  }
  out.status = status;
  out.trouble = trouble;
}

} // namespace

Findings analyse(const Machine& machine, const Registries& registries, const AnalysisOptions& options) {
  Findings out;
  out.title = machine.title;
  Mesh mesh = make_mesh(machine, registries.shapes);
  std::optional<Mesh> spare; // what the bracket needs again
  if (options.bracket && !machine.screws.empty()) spare = mesh;
  const Model model = make_model(machine, registries, std::move(mesh), options.parts);
  if (machine.solve.buckling > 0) require_geometric(model.data.own);
  out.linear_solver = model.structure.solver;
  out.unknowns = model.structure.unknowns;
  note_assumptions(model, out);
  fill_mass(model, out);
  if (!model.structure.mechanisms.empty()) {
    note_failure(model, registries, options, Status::mechanism, describe_mechanism(model.structure.mechanisms.front()),
                 out);
    return out;
  }
  const std::optional<SheetLoads> sheet = sheet_loads_of(machine, registries);
  if (sheet) {
    const Material& material = machine.materials.at(machine.sheet->material);
    out.sheet = {sheet->moment, sheet->apron, sheet->grip, springback(*machine.sheet, material, sheet->moment)};
  }
  StepsOutcome solved = solve_steps(model, sheet);
  if (solved.status != StepsOutcome::Status::ok) {
    const bool loose = solved.status == StepsOutcome::Status::mechanism;
    note_failure(model, registries, options, loose ? Status::mechanism : Status::no_convergence, solved.trouble, out);
    if (out.status != Status::ok) out.history = solved.history;
    return out;
  }
  const Sections sections = shared_sections(model, options);
  for (const StepSolution& s : solved.steps) out.steps.push_back(step_result(model, s, options, sections));
  out.worst_step = worst_step(out.steps);
  out.verdict = judge(machine, out.steps);
  if (std::string text = reserve_warning(machine, out.steps); !text.empty()) out.warnings.push_back(std::move(text));
  if (spare) out.bracket = bracket_of(machine, registries, *spare, sheet);
  fill_modes(model, registries, solved.steps, sections, out);
  if (out.modes) judge_buckling(machine, *out.modes, out.verdict);
  return out;
}

} // namespace bedbow
