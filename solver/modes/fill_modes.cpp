#include "solver/modes/fill_modes.h"

#include "solver/assembly/mass_walk.h"
#include "solver/findings/results.h"
#include "solver/model/recovery.h"
#include "solver/modes/eigen/eigenpairs.h"
#include "solver/modes/shape_description.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <stdexcept>

namespace bedbow {

namespace {

using Sections = std::vector<std::shared_ptr<const Section>>;
using Motions = std::vector<std::vector<Vector6d>>;

/// Displacements of the nodes, greatest translation 1 m, the greatest component positive so that reruns and solvers
/// agree.
Motions scaled_motions(const FreeMap& free, const Eigen::MatrixXd& vectors) {
  Motions out;
  for (Eigen::Index j = 0; j < vectors.cols(); ++j) {
    out.push_back(node_motions(free, vectors.col(j)));
    double most = 0;
    double sign = 1;
    for (const Vector6d& v : out.back())
      for (int k = 0; k < 3; ++k)
        if (std::abs(v[k]) > most * (1 + 1e-9)) {
          most = std::abs(v[k]);
          sign = v[k] < 0 ? -1 : 1;
        }
    double length = 0;
    for (const Vector6d& v : out.back()) length = std::max(length, v.head<3>().norm());
    if (length > 0)
      for (Vector6d& v : out.back()) v *= sign / length;
  }
  return out;
}

Fields fields_of(const Model& m, const JointState& state, const std::vector<Vector6d>& motion,
                 const Sections& sections) {
  StepSolution step;
  step.angle = state.angle;
  step.motion = motion;
  step.loads.beams.resize(m.mesh.beams.size());
  step.ends = end_displacements(m, step);
  StepResult result;
  fill_fields(m, step, sections, result);
  return std::move(result.fields);
}

std::vector<ModeShape> shapes_of(const Model& m, const JointState& state, const Modes& modes, const FreeMap& free,
                                 const Sections& sections) {
  const Motions motions = scaled_motions(free, modes.vectors);
  const auto shares = strain_shares(m, state, motions);
  const std::vector<BodyMass> bodies = body_masses(m);
  std::vector<ModeShape> out;
  for (std::size_t j = 0; j < motions.size(); ++j) {
    ModeShape shape;
    const bool rigid = j < modes.names.size();
    shape.description = rigid ? modes.names[j] : describe_shape(m, bodies, motions[j], shares[j], state.angle);
    if (!rigid) shape.strain_share = shares[j];
    if (!sections.empty()) shape.fields = fields_of(m, state, motions[j], sections);
    out.push_back(std::move(shape));
  }
  return out;
}

void fill_natural(const Model& m, const Registries& registries, const JointState& state, const Sections& sections,
                  Findings& out) {
  const SolveSettings& solve = m.machine.solve;
  ModesResult& result = *out.modes;
  const VibratingMachine machine(m, state, registries.linear_solvers, solve.lumped_mass);
  const Modes modes = machine.lowest(solve.modes);
  result.joint_state = state.name;
  result.modes = shapes_of(m, state, modes, machine.map(), sections);
  for (std::size_t j = 0; j < result.modes.size(); ++j)
    result.modes[j].frequency = std::sqrt(modes.values[static_cast<Eigen::Index>(j)]) / (2 * std::numbers::pi);
  result.residual = modes.residual;
  result.orthogonality = modes.orthogonality;
  if (static_cast<int>(result.modes.size()) < solve.modes)
    out.warnings.push_back("only " + std::to_string(result.modes.size()) + " of " + std::to_string(solve.modes) +
                           " modes exist on this mesh: refine it for more");
}

const StepSolution& buckling_step(const Machine& machine, const std::vector<StepSolution>& steps,
                                  const std::optional<std::size_t>& worst) {
  const std::string& wanted = machine.solve.buckling_step;
  std::string names;
  for (const StepSolution& s : steps) {
    if (s.name == wanted) return s;
    names += (names.empty() ? "\"" : ", \"") + s.name + "\"";
  }
  if (!wanted.empty())
    throw std::invalid_argument("[solve] buckling_step: unknown step \"" + wanted + "\"; available: " + names);
  return steps.at(worst.value_or(steps.size() - 1));
}

void fill_buckling(const Model& m, const Registries& registries, const StepSolution& step, const Sections& sections,
                   Findings& out) {
  ModesResult& result = *out.modes;
  const Modes modes = buckling_modes(m, step, registries.linear_solvers, m.machine.solve.buckling);
  result.buckling_step = step.name;
  result.buckling_shapes = shapes_of(m, state_of(m, step), modes, make_free_map(m.map), sections);
  for (std::size_t j = 0; j < result.buckling_shapes.size(); ++j) {
    result.buckling_shapes[j].frequency = modes.values[static_cast<Eigen::Index>(j)];
    result.buckling_factors.push_back(modes.values[static_cast<Eigen::Index>(j)]);
  }
  if (result.buckling_shapes.empty())
    result.buckling_note = "no buckling: the loads of step " + step.name + " cause no compression";
  result.residual = std::max(result.residual, modes.residual);
  result.orthogonality = std::max(result.orthogonality, modes.orthogonality);
}

/// A part that nothing holds and that has no mass swings at any frequency. Throws std::invalid_argument, naming the
/// materials without density.
void require_mass(const Model& m) {
  std::vector<double> mass(m.map.substructures.size(), 0);
  std::vector<std::string> weightless;
  for_each_mass(m.machine, m.mesh, m.data, [&](const MassItem& item) {
    const std::string& material = m.machine.materials.at(static_cast<std::size_t>(item.material)).name;
    if (item.per_extent == 0 && std::ranges::find(weightless, material) == weightless.end())
      weightless.push_back(material);
    if (item.kind == MassItem::Kind::rod) return;
    const int node =
        item.kind == MassItem::Kind::beam ? m.mesh.beams[item.index].nodes[0] : m.mesh.shells[item.index].nodes[0];
    if (const int c = m.map.substructure[node]; c >= 0) mass[static_cast<std::size_t>(c)] += item.mass();
  });
  for (std::size_t c = 0; c < mass.size(); ++c) {
    if (mass[c] > 0 || m.map.substructures[c].size == 0 || m.map.substructures[c].rigid.cols() == 0) continue;
    std::string names;
    for (const std::string& name : weightless) names += (names.empty() ? "" : ", ") + name;
    throw std::invalid_argument("natural frequencies need masses, and " + m.map.substructures[c].name +
                                " has none: give `density` of material " + names);
  }
}

/// Runs a search; failure to converge becomes a status of the findings.
template <class Search> void searched(const char* what, const char* key, Findings& out, Search search) {
  try {
    search();
  } catch (const EigenFailure& e) {
    out.status = Status::no_convergence;
    out.trouble = std::string("the search for ") + what + " does not converge (" + e.what() +
                  "): request fewer by [solve] " + key + ", change element_size or divisions, or omit `" + key +
                  "` to get the other results";
  }
}

} // namespace

void fill_modes(const Model& m, const Registries& registries, const std::vector<StepSolution>& steps,
                const Sections& sections, Findings& out) {
  const SolveSettings& solve = m.machine.solve;
  if (solve.modes <= 0 && solve.buckling <= 0) return;
  out.modes.emplace();
  if (solve.modes > 0)
    searched("natural frequencies", "modes", out, [&] {
      require_mass(m);
      fill_natural(m, registries, steps.empty() ? all_closed(m) : state_of(m, steps.front()), sections, out);
    });
  if (solve.buckling > 0 && !steps.empty())
    searched("buckling load factors", "buckling", out,
             [&] { fill_buckling(m, registries, buckling_step(m.machine, steps, out.worst_step), sections, out); });
}

void judge_buckling(const Machine& machine, const ModesResult& modes, Verdict& verdict) {
  if (modes.buckling_factors.empty()) return;
  const double limit = limit_or_usual(machine.limits, &Limits::buckling);
  const double factor = modes.buckling_factors.front();
  if (factor >= limit) return;
  Reason r{Failure::breaks, modes.buckling_shapes.front().description, "buckling", factor, limit};
  r.least = true;
  r.step = modes.buckling_step;
  verdict.pass = false;
  verdict.reasons.push_back(std::move(r));
  sort_reasons(verdict.reasons);
}

} // namespace bedbow
