#include "io/report/report_machine.h"
#include "io/results/modes_table.h"
#include "io/results/result_tables.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Greatest displacement of a bar or plate of this name.
double greatest_move(const Fields& fields, const std::string& name) {
  double most = 0;
  const auto look = [&](const auto& list) {
    for (const auto& field : list)
      if (field.name == name)
        for (const Vector6d& m : field.motion) most = std::max(most, m.head<3>().norm());
  };
  look(fields.bars);
  look(fields.shells);
  return most;
}

ReportFacts bar_facts(const StepResult& step, const BarResult& b, const OutputUnits& u) {
  return {
      {"greatest stress (von Mises)", in_unit(b.stress, u.stress, 1e5) + " " + u.stress.name},
      {"utilisation of yield", percent(b.utilisation)},
      {"local peak, not judged",
       in_unit(b.peak_stress, u.stress, 1e5) + " " + u.stress.name + " at x " + length_text(b.peak_x, u, 1e-4)},
      {"at x", length_text(b.at_x, u, 1e-4)},
      {"position from the section's centroid", "y " + length_text(b.y, u, 1e-4) + ", z " + length_text(b.z, u, 1e-4)},
      {"bending moment there", moment_text(b.forces.My, u) + " about y, " + moment_text(b.forces.Mz, u) + " about z"},
      {"axial force there", force_text(b.forces.N, u)},
      {"greatest displacement", length_text(greatest_move(step.fields, b.name), u, 1e-6)}};
}

ReportFacts joint_facts(const JointResult& j, const OutputUnits& u) {
  ReportFacts out;
  if (const double moment = j.figure("moment"); std::isfinite(moment))
    out.emplace_back("moment", moment_text(moment, u));
  if (std::isfinite(j.value)) out.emplace_back(info(j.kind).value, force_text(j.value, u));
  if (const double thrust = j.figure("thrust"); std::isfinite(thrust))
    out.emplace_back("thrust along the pin", force_text(thrust, u));
  if (j.utilisation > 0) out.emplace_back("utilisation", percent(j.utilisation));
  if (j.open) out.emplace_back("state", "open: carries nothing in this step");
  out.emplace_back("at", "x " + length_text(j.at.x(), u, 1e-4) + ", y " + length_text(j.at.y(), u, 1e-4) + ", z " +
                             length_text(j.at.z(), u, 1e-4));
  return out;
}

} // namespace

std::map<std::string, ReportFacts> step_facts(const StepResult& step, const OutputUnits& u) {
  std::map<std::string, ReportFacts> out;
  for (const BarResult& b : step.bars) out[b.name] = bar_facts(step, b, u);
  for (const JointResult& j : step.joints)
    if (info(j.kind).part) out[with_kind(info(j.kind).key, j.name)] = joint_facts(j, u);
  return out;
}

std::map<std::string, ReportFacts> shape_facts(const ModeShape& m, bool buckling) {
  std::map<std::string, ReportFacts> out;
  out[""] = {buckling ? std::pair{"buckles at", fixed(m.frequency, 2) + " times the loads"}
                      : std::pair{"frequency", fixed(m.frequency, 2) + " Hz"},
             {"what moves", m.description.empty() ? "-" : m.description},
             {"where the strain energy is", strained_most(m, m.strain_share.size())}};
  double greatest = 0;
  const auto bars = [&](const auto& list, auto&& tell) {
    for (const auto& field : list) tell(field.name, greatest_move(m.fields, field.name));
  };
  const auto look = [&](const std::string&, double move) { greatest = std::max(greatest, move); };
  const auto tell = [&](const std::string& name, double move) {
    out[name] = {{"greatest displacement",
                  fixed(greatest > 0 ? 100 * move / greatest : 0, 0) + " % of the greatest in the machine"}};
  };
  bars(m.fields.bars, look);
  bars(m.fields.shells, look);
  bars(m.fields.bars, tell);
  bars(m.fields.shells, tell);
  return out;
}

} // namespace bedbow
