#include "solver/analysis.h"

#include "mesh/build/mesher.h"
#include "mesh/build/seats.h"
#include "solver/arm_seats.h"
#include "solver/assembly/mass_walk.h"
#include "solver/findings/bend_line.h"
#include "solver/findings/certificate.h"
#include "solver/findings/hinge_assumptions.h"
#include "solver/findings/joint_checks.h"
#include "solver/findings/nose_hold.h"
#include "solver/findings/results.h"
#include "solver/findings/sheet_hold.h"
#include "solver/findings/statics_results.h"
#include "solver/linear/process.h"
#include "solver/model/describe.h"
#include "solver/model/displacement_guard.h"
#include "solver/model/model.h"
#include "solver/modes/fill_modes.h"
#include "solver/slip_bounds.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <iterator>
#include <limits>

namespace bedbow {

namespace {

using Sections = std::vector<std::shared_ptr<const Section>>;

/// Total mass; unknown as soon as one item's is.
void fill_mass(const Model& m, Findings& out) {
  std::vector<bool> unknown(m.machine.materials.size());
  for_each_mass(m.machine, m.mesh, m.data, [&](const MassItem& item) {
    out.mass += item.mass();
    if (item.per_extent == 0) unknown[static_cast<std::size_t>(item.material)] = true;
  });
  for (std::size_t i = 0; i < unknown.size(); ++i) {
    if (!unknown[i]) continue;
    out.mass = std::numeric_limits<double>::quiet_NaN();
    if (m.machine.gravity || m.machine.solve.modes > 0)
      out.warnings.push_back("the density of material " + m.machine.materials[i].name +
                             " is unknown: parts made of it have no mass");
  }
}

StepResult step_result(const Model& m, const StepSolution& s, const AnalysisOptions& options, const Sections& sections,
                       const std::optional<SheetLoads>& sheet) {
  StepResult r;
  r.name = s.name;
  r.angle = s.angle;
  fill_bend_line(m, s, r);
  if (sheet) fill_hold(m, s, *sheet, r);
  fill_bars(m, s, r);
  fill_joints(m, s, r);
  fill_dials(m, s, r);
  r.displaced = roughly_displaced(m, s);
  if (options.certificate) fill_checks(m, s, r);
  if (options.fields) {
    fill_loads(m, s, sheet, r);
    fill_contacts(m, s, r);
    fill_fields(m, s, sections, r);
  }
  return r;
}

/// Rows of screws whose shear stiffness comes from Huth's formula.
void note_screws(const Model& m, Findings& out) {
  int last = -1;
  for (const Joint& j : m.mesh.joints) {
    if (j.kind != JointKind::screw || j.index == last || m.machine.screws[j.index].shear_stiffness) continue;
    last = j.index;
    char text[32];
    std::snprintf(text, sizeof text, "%.4g", j.stiffness[ux] * 1e-6);
    out.assumptions.push_back((j.name.starts_with("screws") ? "" : "screws ") + j.name + ": shear stiffness " + text +
                              " kN/mm each, after Huth (LBF FB-172, 1984); the slip bounds show the effect of slip");
  }
}

/// The patches of plates on which joints act, and the seats of those on arms.
void note_seats(const Model& m, Findings& out) {
  bool any = false;
  m.machine.each_joint_list([&](JointKind kind, const auto& list) { any |= kind != JointKind::weld && !list.empty(); });
  if (!any || m.mesh.shells.empty()) return;
  out.assumptions.emplace_back(
      "joints act on patches of plates: what they touch and the plate's thickness more, unless the case gives "
      "a `seat`; posts on their washers, supports across the whole plate");
  for (const mesher::ArmSide& s : mesher::joints_on_arms(m.machine, m.mesh))
    m.machine.each_joint_list([&](JointKind kind, const auto& list) {
      if (kind != s.kind) return;
      const JointBase& j = list[s.index];
      char text[96];
      std::snprintf(text, sizeof text, " by a rigid arm of %.3g mm; its seat there is taken as %.3g x %.3g mm",
                    s.seat.arm * 1e3, s.seat.along * 1e3, s.seat.across * 1e3);
      out.assumptions.push_back(std::string(info(kind).key) + " " +
                                (j.name.empty() ? numbered(kind, s.index) : j.name) + " reaches " +
                                m.machine.plain_name(j.joins[s.side]) + text);
    });
}

/// Bars that only touch.
void note_contacts(const Model& m, Findings& out) {
  std::string last;
  for (const Joint& j : m.mesh.joints) {
    if (j.kind != JointKind::pressure || j.name == last) continue;
    last = j.name;
    out.assumptions.push_back(j.name + ": neither screwed nor welded, compression-only contact");
  }
}

/// Which matrices a named element provides, and what replaces those that it does not.
void note_elements(const Model& m, Findings& out) {
  for (const ElementEntry& e : m.data.own.entries) {
    std::string text = "element '" + e.name + "' (" + e.origin + ") provides stiffness";
    text += std::string(e.mass ? ", mass" : "") + (e.geometric ? ", geometric stiffness" : "") +
            (e.load ? ", distributed loads" : "") + "; the shape between nodes is the built-in element's";
    if (!e.load) text += ", as are the equivalent nodal loads";
    if (!e.mass && m.machine.solve.modes > 0) text += "; its mass is lumped at the nodes, from density and section";
    out.assumptions.push_back(std::move(text));
  }
}

/// Where the machine tips until nose and bed touch beyond the sheet.
void note_touches(const std::vector<StepResult>& steps, Findings& out) {
  for (const StepResult& s : steps) {
    const auto touches = joints_of(s, JointKind::touch);
    if (touches.empty()) continue;
    double sum = 0;
    const JointResult* most = &touches.front();
    for (const JointResult& j : touches) {
      sum += j.value;
      if (clearly_greater(j.value, most->value)) most = &j;
    }
    char text[64];
    std::snprintf(text, sizeof text, "%.4g kN, greatest at x = %.4g mm", sum * 1e-3, most->at.x() * 1e3);
    out.assumptions.push_back("step " + s.name + ": beyond the sheet nose and bed press on each other with " + text +
                              "; each face deflects by its force per length over 2 E (an estimate)");
  }
}

void note_assumptions(const Model& m, Findings& out) {
  out.warnings = m.mesh.warnings;
  // The verdict does not cover them: who reads "within the limits" must know.
  for (std::string& line : unchecked_joints(m.machine)) out.warnings.push_back(std::move(line));
  if (std::string line = unchecked_stress(m.machine); !line.empty()) out.warnings.push_back(std::move(line));
  note_elements(m, out);
  if (!m.mesh.shells.empty())
    out.assumptions.emplace_back("plate bars and panels are shells on their mid-plane: stress beside a point force or "
                                 "a rigid support grows with a finer mesh");
  for (const Cam& c : m.machine.cams)
    if (!c.stiffness) {
      out.assumptions.emplace_back("cams without stiffness are taken as rigid (1e11 N/mm)");
      break;
    }
  note_seats(m, out);
  std::ranges::move(hinge_assumptions(m.machine, m.mesh), std::back_inserter(out.assumptions));
  note_screws(m, out);
  note_contacts(m, out);
  if (!m.machine.posts.empty() || !m.machine.screws.empty())
    out.assumptions.emplace_back("posts and screws are steel, E = 205 GPa (common practice, no source)");
  if (!m.machine.posts.empty())
    out.assumptions.emplace_back("a post's free length runs down from the nut's seat on top of the upper bar; with it "
                                 "stretch the nuts and the threads engaged in them (VDI 2230)");
  if (m.machine.sheet) {
    std::ranges::move(friction_assumptions(m.machine), std::back_inserter(out.assumptions));
    if (std::string text = nose_opening_assumption(m.machine); !text.empty())
      out.assumptions.push_back(std::move(text));
    if (m.mesh.beams.size() > m.mesh.strips.size())
      out.assumptions.emplace_back("beam bars bend as beams: cross-sections stay plane and keep their shape");
    if (!m.mesh.strips.empty())
      out.assumptions.emplace_back(
          "strips bend across their width too, by a few functions: within about 5 % of plates in "
          "the forces of posts and cams");
  }
}

/// The step whose bend angle varies most; without an apron, the one with the greatest bow.
std::optional<std::size_t> worst_step(const std::vector<StepResult>& steps) {
  std::optional<std::size_t> worst;
  double most = -1;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    double v = std::isfinite(steps[i].bow.angle_spread) ? steps[i].bow.angle_spread : 0;
    if (!judges_bend(steps[i]) && steps.size() > 1) v = 0;
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

/// What the sheet asks of the machine, by which law, and its springback with what that assumes.
void fill_sheet(const Machine& machine, const Registries& registries, const SheetLoads& loads, Findings& out) {
  const Sheet& s = *machine.sheet;
  const Material& material = machine.materials.at(static_cast<std::size_t>(s.material));
  const ChosenLaw law = choose_law(s, material, registries.moment_laws);
  out.sheet = {loads.moment, loads.apron(s.angle),
               loads.grip,   springback(s, material, law.name, loads.moment),
               s.friction,   law.name,
               law.why};
  out.assumptions.emplace_back("springback: the sheet lies on the nose's edge and on the bed a grip's depth behind it, "
                               "so that it bends elastically between them; held flat there, the grip's share vanishes");
}

/// Where no step can be solved, ends the analysis, or only its statics.
void note_failure(const Model& model, const Registries& registries, const AnalysisOptions& options, Status status,
                  const std::string& trouble, Findings& out) {
  if (status == Status::mechanism && options.allow_mechanisms && model.machine.solve.modes > 0) {
    out.warnings.push_back("modes only, without loads: " + trouble);
    fill_modes(model, registries, {}, shared_sections(model, options), out);
    return;
  }
  out.status = status;
  out.trouble = trouble;
}

} // namespace

Findings analyse(const Machine& machine, const Registries& registries, const AnalysisOptions& options) {
  const OneThread one_thread; // results must not depend on the caller
  Findings out;
  out.title = machine.title;
  Mesh mesh = make_mesh(machine, registries.shapes);
  std::optional<Mesh> spare; // mesh for the slip bounds
  if (options.slip_bounds && !machine.screws.empty()) spare = mesh;
  const Model model = make_model(machine, registries, std::move(mesh), options.parts);
  if (machine.solve.buckling > 0) require_geometric(model.data.own);
  out.linear_solver = model.factored.solver;
  out.unknowns = model.factored.unknowns;
  out.dimension = machine.solve.dimension;
  if (options.fields) out.parts = parts_of(model);
  note_assumptions(model, out);
  fill_mass(model, out);
  if (!model.factored.mechanisms.empty()) {
    note_failure(model, registries, options, Status::mechanism, describe_mechanism(model.factored.mechanisms.front()),
                 out);
    return out;
  }
  const std::optional<SheetLoads> sheet = sheet_loads_of(machine, registries);
  if (sheet) {
    fill_sheet(machine, registries, *sheet, out);
  }
  StepsOutcome solved = solve_steps(model, sheet);
  if (solved.status != Status::ok) {
    note_failure(model, registries, options, solved.status, solved.trouble, out);
    if (out.status != Status::ok) out.history = solved.history;
    return out;
  }
  const Sections sections = shared_sections(model, options);
  for (const StepSolution& s : solved.steps) out.steps.push_back(step_result(model, s, options, sections, sheet));
  certify(out);
  if (out.status != Status::ok) {
    out.steps.clear();
    return out;
  }
  note_touches(out.steps, out);
  out.worst_step = worst_step(out.steps);
  out.verdict = judge(machine, out.steps);
  warn_of_displacements(out.verdict, out.warnings);
  if (std::string text = hold_warning(machine, out.steps); !text.empty()) out.warnings.push_back(std::move(text));
  std::ranges::move(friction_warnings(out.steps), std::back_inserter(out.warnings));
  if (options.slip_bounds && std::ranges::any_of(out.steps, [](const StepResult& s) { return s.hold.has_value(); }))
    out.friction_bounds = friction_bounds_of(model, sheet);
  if (options.slip_bounds) out.arm_seats = arm_seats_of(machine, registries, model.mesh, out.steps, sheet);
  if (out.arm_seats) warn_of_seats(*out.arm_seats, out.warnings);
  if (spare) out.slip_bounds = slip_bounds_of(machine, registries, *spare, sheet);
  fill_modes(model, registries, solved.steps, sections, out);
  if (out.modes) judge_buckling(machine, *out.modes, out.verdict);
  return out;
}

} // namespace bedbow
