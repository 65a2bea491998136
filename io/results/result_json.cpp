#include "io/results/result_json.h"

#include "io/results/json_numbers.h"
#include "io/results/reason_text.h"
#include "io/results/statics_json.h"
#include "io/units/quantities_out.h"
#include "solver/findings/part_peaks.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

using Json = nlohmann::ordered_json;

// All numbers go through this function.
Json number(double value) {
  return json_number(value);
}

Json numbers(const std::vector<double>& values, double (*convert)(double)) {
  Json out = Json::array();
  for (const double v : values) out.push_back(number(convert(v)));
  return out;
}

Json checks_json(const StepChecks& c) {
  return {{"equilibrium", number(c.equilibrium)},
          {"residual", number(c.residual)},
          {"contact_iterations", c.contact_iterations},
          {"worst_closure", number(c.worst_closure)},
          {"worst_tension", number(c.worst_tension)}};
}

StepChecks worst_of(const std::vector<StepResult>& steps) {
  StepChecks worst;
  for (const StepResult& s : steps) {
    // NaN takes precedence: a failed check must not be hidden by one that passed.
    const auto take = [](double& to, double v) {
      if (std::isnan(v) || v > to) to = v;
    };
    take(worst.equilibrium, s.checks.equilibrium);
    take(worst.residual, s.checks.residual);
    take(worst.worst_closure, s.checks.worst_closure);
    take(worst.worst_tension, s.checks.worst_tension);
    worst.contact_iterations = std::max(worst.contact_iterations, s.checks.contact_iterations);
  }
  return worst;
}

Json sheet_json(const SheetResult& s) {
  return {{"moment_N_mm_per_mm", number(s.moment)}, // N m/m is the same number
          {"apron_N_per_mm", number(to_N_per_mm(s.apron))},
          {"grip_N_per_mm", number(to_N_per_mm(s.grip))},
          {"friction", number(s.friction)},
          {"moment_law", s.law},
          {"moment_law_why", s.why},
          {"springback_deg", number(to_deg(s.springback.sum()))},
          {"springback_arc_deg", number(to_deg(s.springback.arc))},
          {"springback_flange_deg", number(to_deg(s.springback.flange))},
          {"springback_grip_deg", number(to_deg(s.springback.grip))}};
}

Json bow_json(const BowResult& b) {
  const auto of = [](const std::array<double, 3>& values, BodyKind body) {
    return number(to_mm(values[static_cast<std::size_t>(body)]));
  };
  return {{"clamp_mm", of(b.bow, BodyKind::clamp)},
          {"bed_mm", of(b.bow, BodyKind::bed)},
          {"apron_mm", of(b.bow, BodyKind::apron)},
          {"clamp_straightness_mm", of(b.straightness, BodyKind::clamp)},
          {"bed_straightness_mm", of(b.straightness, BodyKind::bed)},
          {"apron_straightness_mm", of(b.straightness, BodyKind::apron)},
          {"angle_mean_deg", number(to_deg(b.angle_mean))},
          {"angle_spread_deg", number(to_deg(b.angle_spread))}};
}

Json bend_line_json(const BendLine& l) {
  return {{"x_mm", numbers(l.x, to_mm)},
          {"nose_y_mm", numbers(l.nose_y, to_mm)},
          {"nose_z_mm", numbers(l.nose_z, to_mm)},
          {"bed_z_mm", numbers(l.bed_z, to_mm)},
          {"apron_n_mm", numbers(l.apron_n, to_mm)},
          {"angle_deviation_deg", numbers(l.angle_deviation, to_deg)},
          {"clamp_N_per_mm", numbers(l.clamp_force, to_N_per_mm)},
          {"lifted", l.lifted},
          {"clamp_reserve_N_per_mm", numbers(l.clamp_reserve, to_N_per_mm)},
          {"nose_opening_mm", numbers(l.nose_opening, to_mm)}};
}

Json bar_json(const BarResult& b) {
  const SectionForces& f = b.forces;
  return {{"name", b.name},
          {"stress_MPa", number(to_MPa(b.stress))},
          {"at_x_mm", number(to_mm(b.at_x))},
          {"utilisation", number(b.utilisation)},
          {"peak_MPa", number(to_MPa(b.peak_stress))},
          {"peak_x_mm", number(to_mm(b.peak_x))},
          {"at_section_mm", Json::array({number(to_mm(b.y)), number(to_mm(b.z))})},
          {"sigma_MPa", number(to_MPa(b.sigma))},
          {"tau_MPa", number(to_MPa(b.tau))},
          {"forces_N", Json::array({number(f.N), number(f.Vy), number(f.Vz)})},
          {"moments_N_mm", Json::array({number(to_N_mm(f.T)), number(to_N_mm(f.My)), number(to_N_mm(f.Mz))})}};
}

/// A figure under its key with its unit.
void put(Json& item, std::string key, Quantity quantity, double value) {
  const auto [suffix, scale] = file_unit(quantity);
  item[key.append(suffix)] = number(value * scale);
}

Json check_json(const Check& c) {
  Json out{{"what", c.what}};
  put(out, "actual", c.unit, c.actual);
  put(out, "allowed", c.unit, c.allowed.value > 0 ? c.allowed.value : left_out);
  out["utilisation"] = number(c.utilisation());
  out["source"] = c.allowed.source;
  return out;
}

Json joints_json(std::span<const JointResult> joints) {
  Json out = Json::array();
  for (const JointResult& j : joints) {
    Json item{{"name", j.name},
              {"force_N", number(j.value)},
              {"utilisation", number(j.utilisation)},
              {"open", j.open},
              {"at_mm", json_vector(j.at, 1e3)},
              {"vector_N", json_vector(j.force)},
              {"moment_N_mm", json_vector(j.moment, 1e3)}};
    add_joined(j, item);
    for (const JointFigure& f : j.more) put(item, f.key, f.quantity, f.value);
    if (!j.checks.empty()) {
      item["checks"] = Json::array();
      for (const Check& c : j.checks) item["checks"].push_back(check_json(c));
    }
    if (!j.remarks.empty()) item["remarks"] = j.remarks;
    out.push_back(std::move(item));
  }
  return out;
}

/// A joint over all steps: where its force is greatest, and where its utilisation is highest.
Json peaks_json(const PartPeaks& p) {
  const JointKindInfo& kind = info(*p.kind);
  Json out{{"kind", kind.key}, {"name", p.name}};
  const bool moment = kind.quantity == Quantity::moment;
  put(out, moment ? "moment" : "force", kind.quantity, p.load.value);
  out[moment ? "moment_step" : "force_step"] = p.load.step;
  for (const auto& [key, peak] : {std::pair{"across", &p.across}, std::pair{"thrust", &p.thrust}}) {
    if (peak->step.empty()) continue;
    put(out, key, Quantity::force, peak->value);
    out[std::string(key) + "_step"] = peak->step;
  }
  if (moment) return out; // nothing is checked with it
  const bool known = p.use.value > 0 && !p.check.what.empty();
  out["use"] = number(p.use.value);
  out["check"] = known ? Json(p.check.what) : Json(nullptr);
  if (known) {
    put(out, "actual", p.check.unit, p.check.actual);
    put(out, "allowable", p.check.unit, p.check.allowed.value);
  }
  out["use_step"] = p.use.value > 0 ? Json(p.use.step) : Json(nullptr);
  return out;
}

Json all_peaks_json(const std::vector<StepResult>& steps) {
  Json out = Json::array();
  for (const PartPeaks& p : part_peaks(steps))
    if (p.kind) out.push_back(peaks_json(p));
  return out;
}

Json dials_json(const std::vector<DialResult>& all) {
  Json dials = Json::object();
  for (const DialResult& d : all)
    dials[d.name] = {{"x_mm", number(to_mm(d.movement.x()))},
                     {"y_mm", number(to_mm(d.movement.y()))},
                     {"z_mm", number(to_mm(d.movement.z()))}};
  return dials;
}

Json bracket_json(const SlipBoundsSide& side) {
  Json out{{"status", word_for(status_words, side.status)}};
  if (side.status != Status::ok) out["trouble"] = side.trouble;
  out["steps"] = Json::array();
  for (const SlipBoundsStep& s : side.steps)
    out["steps"].push_back({{"name", s.name},
                            {"bow", bow_json(s.bow)},
                            {"greatest_stress_MPa", number(to_MPa(s.stress))},
                            {"highest_utilisation", number(s.use)},
                            {"dials", dials_json(s.dials)}});
  return out;
}

Json arm_seats_json(const ArmSeats& seats) {
  const auto bows = [](const std::array<double, 3>& bow) {
    Json out = Json::object();
    for (BodyKind body : all_bodies) out[to_string(body) + "_mm"] = number(to_mm(bow[static_cast<std::size_t>(body)]));
    return out;
  };
  Json out{{"status", word_for(status_words, seats.status)}};
  if (seats.status != Status::ok) out["trouble"] = seats.trouble;
  out["small_mm"] = number(to_mm(small_seat));
  out["joints"] = Json::array();
  for (const ArmSeat& j : seats.joints)
    out["joints"].push_back({{"kind", info(j.kind).key},
                             {"name", j.name},
                             {"on", j.on},
                             {"arm_mm", number(to_mm(j.arm))},
                             {"seat_mm", {number(to_mm(j.along)), number(to_mm(j.across))}},
                             {"force_N", number(j.force)},
                             {"force_small_N", number(j.force_small)}});
  out["bow"] = bows(seats.bow);
  out["bow_small"] = bows(seats.bow_small);
  return out;
}

Json step_json(const StepResult& s) {
  Json bars = Json::array();
  for (const BarResult& b : s.bars) bars.push_back(bar_json(b));
  Json out{{"name", s.name},         {"angle_deg", number(to_deg(s.angle))},     {"checks", checks_json(s.checks)},
           {"bow", bow_json(s.bow)}, {"bend_line", bend_line_json(s.bend_line)}, {"bars", std::move(bars)}};
  if (s.hold)
    out["hold"] = {{"needs_N", number(s.hold->needs)},
                   {"has_N", number(s.hold->has)},
                   {"slips", s.hold->slips()},
                   {"carried_N", number(s.hold->carried)},
                   {"settled", s.hold->settled}};
  for (const JointKindInfo& k : joint_kinds)
    if (k.plural) out[k.plural] = joints_json(joints_of(s, k.kind));
  out["dials"] = dials_json(s.dials);
  add_statics(s, out);
  return out;
}

Json shapes_json(const std::vector<ModeShape>& shapes, const char* key) {
  Json out = Json::array();
  for (const ModeShape& m : shapes) {
    Json share = Json::object();
    for (const auto& [body, part] : m.strain_share) share[body] = number(part);
    out.push_back({{key, number(m.frequency)}, {"description", m.description}, {"strain_share", std::move(share)}});
  }
  return out;
}

Json modes_json(const std::optional<ModesResult>& modes) {
  const ModesResult m = modes.value_or(ModesResult{});
  Json frequencies = Json::array();
  for (const ModeShape& s : m.modes) frequencies.push_back(number(s.frequency));
  Json factors = Json::array();
  for (const double f : m.buckling_factors) factors.push_back(number(f));
  return {{"frequencies_Hz", std::move(frequencies)},
          {"buckling_factors", std::move(factors)},
          {"shapes", shapes_json(m.modes, "frequency_Hz")},
          {"buckling_shapes", shapes_json(m.buckling_shapes, "factor")},
          {"joint_state", m.joint_state},
          {"buckling_step", m.buckling_step},
          {"buckling_note", m.buckling_note},
          {"residual", number(m.residual)},
          {"orthogonality", number(m.orthogonality)}};
}

} // namespace

Json result_json(const Findings& f, const RunStamp& stamp) {
  Json out{{"title", f.title},
           {"version", stamp.version},
           {"status", word_for(status_words, f.status)},
           {"case_sha256", stamp.case_sha256},
           {"plugins", stamp.plugins},
           {"solver", {{"linear_solver", f.linear_solver}, {"unknowns", f.unknowns}, {"dimension", f.dimension}}},
           {"checks", checks_json(worst_of(f.steps))}};
  if (f.status != Status::ok) {
    out["trouble"] = f.trouble;
    out["history"] = f.history;
  }
  if (f.sheet) out["sheet"] = sheet_json(*f.sheet);
  out["parts"] = parts_json(f.parts);
  out["steps"] = Json::array();
  for (const StepResult& s : f.steps) out["steps"].push_back(step_json(s));
  out["joints"] = all_peaks_json(f.steps);
  out["worst_step"] = f.worst_step ? Json(f.steps.at(*f.worst_step).name) : Json(nullptr);
  if (f.slip_bounds)
    out["bracket"] = {{"no_slip", bracket_json(f.slip_bounds->no_slip)},
                      {"no_slip_rolling", bracket_json(f.slip_bounds->no_slip_rolling)},
                      {"no_shear", bracket_json(f.slip_bounds->no_shear)}};
  if (f.friction_bounds)
    out["friction_bracket"] = {{"sliding", bracket_json(f.friction_bounds->sliding)},
                               {"sticking", bracket_json(f.friction_bounds->sticking)}};
  if (f.arm_seats) out["arm_seats"] = arm_seats_json(*f.arm_seats);
  out["verdict"] = {{"pass", f.verdict.pass}, {"reasons", reason_text(f.verdict.reasons, {})}};
  out["modes"] = modes_json(f.modes);
  out["mass_kg"] = number(f.mass);
  out["warnings"] = f.warnings;
  out["assumptions"] = f.assumptions;
  return out;
}

} // namespace bedbow
