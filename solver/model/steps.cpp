#include "solver/model/steps.h"

#include "mesh/piece/si.h"
#include "solver/model/describe.h"
#include "solver/model/displacement_guard.h"
#include "solver/model/recovery.h"
#include "solver/model/sheet_friction.h"
#include "solver/model/step_name.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

/// Response of the separate parts to the loads of each step, without joint forces: columns are steps.
struct FreeResponse {
  Eigen::MatrixXd functionals; ///< p' K^-1 f
  Eigen::MatrixXd rigid_load;
};

/// All steps at once: their right-hand sides share each pass over the factor.
FreeResponse free_response(const Model& m, const std::vector<StepSolution>& steps) {
  const auto count = static_cast<Eigen::Index>(steps.size());
  FreeResponse r;
  r.functionals = Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(m.rows.functionals().size()), count);
  r.rigid_load = Eigen::MatrixXd::Zero(m.factored.rigid.cols(), count);
  for (std::size_t c = 0; c < m.map.substructures.size(); ++c) {
    const Substructure& comp = m.map.substructures[c];
    Eigen::MatrixXd u(comp.size, count);
    for (Eigen::Index k = 0; k < count; ++k) {
      u.col(k) = gather(m.map, comp, steps[k].loads);
      r.rigid_load.col(k).segment(m.factored.rigid_start[c], comp.rigid.cols()) =
          comp.rigid.transpose() * resultant(m.mesh, comp, steps[k].loads);
    }
    if (m.factored.factors[c]) m.factored.factors[c]->solve(u);
    for (int f : m.factored.functionals_of[c])
      for (Eigen::Index k = 0; k < count; ++k) r.functionals(f, k) = evaluate(m.rows.functionals()[f], u.col(k));
  }
  return r;
}

CondensedSystem condense(const Model& m, const std::vector<JointSpring>& rows, const FreeResponse& free,
                         Eigen::Index k) {
  const auto n = static_cast<Eigen::Index>(rows.size());
  CondensedSystem s;
  s.compliance.resize(n, n);
  s.rigid_elongation.resize(n, m.factored.rigid.cols());
  s.free_elongation = Eigen::VectorXd::Zero(n);
  s.rigid_load = free.rigid_load.col(k);
  s.laws.reserve(rows.size());
  Eigen::VectorXd seen(m.factored.compliance.rows()); // displacement of the functionals under a unit force in row j
  for (Eigen::Index j = 0; j < n; ++j) {
    seen.setZero();
    s.rigid_elongation.row(j) = rigid_elongation(m.factored, rows[j]);
    for (auto [f, v] : rows[j].terms) {
      seen += v * m.factored.compliance.col(f);
      s.free_elongation[j] += v * free.functionals(f, k);
    }
    for (Eigen::Index i = j; i < n; ++i) {
      double sum = 0;
      for (auto [f, v] : rows[i].terms) sum += v * seen[f];
      s.compliance(i, j) = s.compliance(j, i) = sum;
    }
    s.laws.push_back({.compliance = rows[j].compliance, .gap = rows[j].gap, .sense = rows[j].sense});
  }
  return s;
}

/// The rows with unknown force.
std::vector<Eigen::Index> unknown_rows(const Forced& forced) {
  std::vector<Eigen::Index> out;
  for (std::size_t i = 0; i < forced.size(); ++i)
    if (!forced[i]) out.push_back(static_cast<Eigen::Index>(i));
  return out;
}

/// Removes rows of known force from the unknowns: their force becomes a load on the rest.
CondensedSystem reduce(const CondensedSystem& s, const Forced& forced, const std::vector<Eigen::Index>& kept) {
  CondensedSystem r;
  Eigen::VectorXd known = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(s.laws.size()));
  for (std::size_t i = 0; i < s.laws.size(); ++i) known[static_cast<Eigen::Index>(i)] = forced[i].value_or(0);
  const Eigen::VectorXd elongation = s.free_elongation - s.compliance * known;
  r.compliance = s.compliance(kept, kept);
  r.rigid_elongation = s.rigid_elongation(kept, Eigen::all);
  r.free_elongation = elongation(kept);
  r.rigid_load = s.rigid_load - s.rigid_elongation.transpose() * known;
  for (Eigen::Index i : kept) r.laws.push_back(s.laws[i]);
  return r;
}

/// Displacements under loads and joint forces, all steps at once.
void fill_displacements(const Model& m, std::vector<StepSolution>& steps) {
  const auto count = static_cast<Eigen::Index>(steps.size());
  // By component, loads and joint forces are solved together: the response of a part to its loads alone can be far
  // larger than the final one, and the difference of the two mostly rounding.
  std::vector<Eigen::MatrixXd> forces;
  for (const Substructure& c : m.map.substructures) {
    forces.emplace_back(c.size, count);
    for (Eigen::Index k = 0; k < count; ++k) forces.back().col(k) = gather(m.map, c, steps[k].loads);
  }
  for (Eigen::Index k = 0; k < count; ++k)
    for (std::size_t i = 0; i < steps[k].rows.size(); ++i)
      for (auto [f, v] : steps[k].rows[i].terms) {
        const DisplacementFunctional& functional = m.rows.functionals()[f];
        if (functional.component < 0) continue;
        const double pull = v * steps[k].force[static_cast<Eigen::Index>(i)];
        for (auto [dof, value] : functional.terms) forces[functional.component](dof, k) -= pull * value;
      }
  for (std::size_t c = 0; c < forces.size(); ++c) {
    if (m.factored.factors[c]) m.factored.factors[c]->solve(forces[c]);
    for (Eigen::Index k = 0; k < count; ++k) steps[k].displacements.elastic.emplace_back(forces[c].col(k));
  }
  for (StepSolution& s : steps) {
    s.motion = node_motions(m.mesh, m.map, m.factored, s.displacements);
    s.ends = end_displacements(m, s);
  }
}

/// Solves one step in place. \return false with trouble filled in.
bool solve_step(const Model& m, const CondensedSystem& whole, const Forced& forced, const std::vector<char>& start,
                StepSolution& step, StepsOutcome& out) {
  const std::vector<Eigen::Index> kept = unknown_rows(forced);
  const bool all = kept.size() == forced.size();
  std::vector<char> begin;
  if (start.size() == step.rows.size())
    for (Eigen::Index i : kept) begin.push_back(start[i]);
  const ContactSolution solved = all ? solve_contact(whole, begin) : solve_contact(reduce(whole, forced, kept), begin);
  if (solved.status != ContactStatus::ok) {
    const bool loose = solved.status == ContactStatus::mechanism;
    out.status = loose ? Status::mechanism : Status::no_convergence;
    out.trouble =
        "step " + step.name + ": " +
        (loose ? describe_movement(m, solved.mechanism) +
                     " under these loads: none of the joints that carry load restrains it"
               : "the one-sided joints do not converge after " + std::to_string(solved.iterations) + " iterations");
    out.history = solved.history;
    return false;
  }
  const auto n = static_cast<Eigen::Index>(step.rows.size());
  step.force = Eigen::VectorXd::Zero(n);
  step.active.assign(step.rows.size(), 1);
  for (std::size_t i = 0; i < kept.size(); ++i) {
    step.force[kept[i]] = solved.force[static_cast<Eigen::Index>(i)];
    step.active[kept[i]] = solved.active[i];
  }
  for (std::size_t i = 0; i < forced.size(); ++i)
    if (forced[i]) step.force[static_cast<Eigen::Index>(i)] = *forced[i];
  step.displacements.rigid_amplitudes = solved.rigid_amplitudes;
  if (all)
    step.elongation = solved.elongation;
  else
    step.elongation =
        whole.free_elongation - whole.compliance * step.force + whole.rigid_elongation * solved.rigid_amplitudes;
  step.iterations = solved.iterations;
  return true;
}

/// Solves a bend step with the sheet's friction as `step.friction` says. Friction that does not settle is omitted.
/// \param start active rows to begin with.
bool solve_bend(const Model& m, CondensedSystem whole, const StepSolution& clamp, const std::vector<char>& start,
                StepSolution& step, StepsOutcome& out) {
  const Forced free(step.rows.size()), sliding = without_friction(m, step.rows);
  if (step.friction == SheetFriction::sliding) return solve_step(m, whole, sliding, start, step, out);
  if (step.friction == SheetFriction::sticking) return solve_step(m, whole, free, start, step, out);
  FrictionRounds rounds(m, m.machine.sheet->friction, step.sheet_grip, clamp);
  rounds.apply(whole);
  if (!solve_step(m, whole, free, start, step, out)) return false;
  if (rounds.empty()) return true;
  while (!rounds.take(step)) {
    if (rounds.rounds() > most_friction_rounds) {
      step.friction_settled = false;
      step.friction = SheetFriction::sliding;
      return solve_step(m, whole, sliding, start, step, out);
    }
    rounds.apply(whole);
    if (!solve_step(m, whole, free, step.active, step, out)) return false;
  }
  return true;
}

/// Movement along x of a part's point in a combination of rigid-body modes.
double slide_of(const Model& m, const Place& place, const Eigen::VectorXd& rigid_amplitudes) {
  if (place.ground()) return 0;
  const int c = m.map.substructure[main_node(place)];
  if (c < 0) return 0;
  const Substructure& comp = m.map.substructures[c];
  const Vector6d v = comp.rigid * rigid_amplitudes.segment(m.factored.rigid_start[c], comp.rigid.cols());
  return v[ux] + v.tail<3>().cross(place.at - comp.centre).x();
}

/// Whether it slides along the pin of a hinge that floats.
bool slides_on_a_pin(const Model& m, const Eigen::VectorXd& rigid_amplitudes) {
  return std::ranges::any_of(m.mesh.joints, [&](const Joint& j) {
    return j.kind == JointKind::hinge && j.stiffness[ux] == 0 &&
           std::abs(slide_of(m, j.b, rigid_amplitudes) - slide_of(m, j.a, rigid_amplitudes)) >
               1e-3 * rigid_amplitudes.cwiseAbs().maxCoeff();
  });
}

/// Reports unrestrained modes, even with every one-sided joint closed.
bool find_loose(const Model& m, std::vector<JointSpring> rows, StepsOutcome& out) {
  // What only the sheet's friction holds is not held.
  std::erase_if(rows, [&](const JointSpring& r) { return m.mesh.joints[r.joint].kind == JointKind::friction; });
  CondensedSystem s;
  s.rigid_load = Eigen::VectorXd::Zero(m.factored.rigid.cols());
  s.rigid_elongation.resize(static_cast<Eigen::Index>(rows.size()), m.factored.rigid.cols());
  for (std::size_t i = 0; i < rows.size(); ++i)
    s.rigid_elongation.row(static_cast<Eigen::Index>(i)) = rigid_elongation(m.factored, rows[i]);
  const Eigen::MatrixXd loose = rigid_body_modes(s);
  for (Eigen::Index c = 0; c < loose.cols(); ++c) out.trouble += (c ? "; " : "") + describe_movement(m, loose.col(c));
  if (loose.cols() == 0) return false;
  out.trouble += ": nothing restrains it; add a tie, support or other joint that does";
  for (Eigen::Index c = 0; c < loose.cols(); ++c) {
    if (!slides_on_a_pin(m, loose.col(c))) continue;
    out.trouble += ". Its hinges float along their pins; end_float = \"0 mm\" locks one";
    break;
  }
  out.status = Status::mechanism;
  return true;
}

std::string bend_name(double angle) {
  char text[40];
  std::snprintf(text, sizeof text, "bend %.4g deg", si::in_degrees(angle));
  return text;
}

StepSolution begin_step(const LoadBuilder& builder, const Model& m, std::string name, double angle) {
  StepSolution s;
  s.name = std::move(name);
  s.angle = angle;
  s.loads = builder.empty();
  s.rows = m.rows.rows(m.mesh, angle);
  return s;
}

/// Initially active rows of the clamp step: all except those beyond the sheet, which are seldom active.
std::vector<char> first_guess(const Model& m, const std::vector<JointSpring>& rows) {
  std::vector<char> out;
  for (const JointSpring& row : rows) out.push_back(m.mesh.joints[row.joint].kind != JointKind::touch);
  return out;
}

bool is_preloaded_post(const Model& m, const JointSpring& row) {
  const Joint& j = m.mesh.joints[row.joint];
  return j.kind == JointKind::post && row.direction == uz && j.preload.has_value();
}

} // namespace

std::vector<double> bend_angles(const Machine& machine) {
  if (!machine.sheet) return {};
  if (machine.solve.angles) return *machine.solve.angles;
  return {0, machine.sheet->angle / 2, machine.sheet->angle};
}

StepsOutcome solve_steps(const Model& m, const std::optional<SheetLoads>& sheet, SheetFriction friction) {
  StepsOutcome out;
  if (!m.factored.mechanisms.empty()) {
    out.status = Status::mechanism;
    out.trouble = describe_mechanism(m.factored.mechanisms.front());
    return out;
  }
  const LoadBuilder builder(m.machine, m.mesh, m.map, m.data);
  std::vector<StepSolution> steps;
  steps.push_back(begin_step(builder, m, sheet ? clamp_step : "load", 0));
  if (find_loose(m, steps.front().rows, out)) return out;
  builder.add_applied_loads(0, steps.front().loads);
  if (sheet)
    for (double angle : bend_angles(m.machine)) {
      StepSolution& step = steps.emplace_back(begin_step(builder, m, bend_name(angle), angle));
      step.bending = true;
      builder.add_applied_loads(angle, step.loads);
      builder.add_sheet(*sheet, angle, step.loads);
      step.sheet_lift = sheet->nose_lift(angle);
      step.sheet_grip = sheet->grip;
      step.friction =
          m.machine.sheet->friction > 0 || friction == SheetFriction::sticking ? friction : SheetFriction::sliding;
    }
  const FreeResponse free = free_response(m, steps);
  // Clamping: a preloaded post pulls with exactly that force.
  StepSolution& clamp = steps.front();
  Forced forced = without_friction(m, clamp.rows);
  for (std::size_t i = 0; i < clamp.rows.size(); ++i)
    if (is_preloaded_post(m, clamp.rows[i])) forced[i] = *m.mesh.joints[clamp.rows[i].joint].preload;
  if (!solve_step(m, condense(m, clamp.rows, free, 0), forced, first_guess(m, clamp.rows), clamp, out)) return out;
  for (std::size_t k = 1; k < steps.size(); ++k) {
    // From there the posts elongation: slack at the clamped length less the elongation under that force. The sheet
    // sticks where it lies when clamped.
    StepSolution& step = steps[k];
    for (std::size_t i = 0; i < step.rows.size(); ++i)
      if (forced[i])
        step.rows[i].gap = clamp.elongation[static_cast<Eigen::Index>(i)] - *forced[i] * step.rows[i].compliance;
    if (!solve_bend(m, condense(m, step.rows, free, static_cast<Eigen::Index>(k)), clamp, steps[k - 1].active, step,
                    out))
      return out;
  }
  fill_displacements(m, steps);
  for (const StepSolution& s : steps)
    if (auto trouble = beyond_small_displacements(m, s)) {
      out.status = Status::out_of_range;
      out.trouble = std::move(*trouble);
      return out;
    }
  out.steps = std::move(steps);
  return out;
}

} // namespace bedbow
