#include "tools/bedbow/commands/sensitivity.h"

#include "io/case/knob.h"
#include "io/files/errors.h"
#include "io/results/summary.h"
#include "mesh/build/mesher.h"
#include "solver/analysis.h"
#include "solver/study/machine_knob.h"
#include "solver/study/sensitivity.h"
#include "tools/bedbow/support/exit_code.h"

#include <cmath>
#include <iostream>
#include <set>

namespace bedbow {

namespace {

constexpr double tenth = 1e-4;   // of a millimetre, for lengths
constexpr double percent = 0.01; // for everything else

/// Results of the machine that `make` returns; nothing where it can't be made or solved.
template <class Make> std::optional<Watched> answer_of(const Registries& registries, std::size_t step, Make make) {
  try {
    AnalysisOptions options;
    options.fields = false;
    const Findings f = analyse(make(), registries, options);
    if (f.status != Status::ok || step >= f.steps.size()) return std::nullopt;
    return watched_of(f.steps[step]);
  } catch (const CaseError&) {
    return std::nullopt; // a machine that can't be made
  } catch (const std::invalid_argument&) {
    return std::nullopt;
  }
}

AnswerTable table_of(const std::vector<Sensitivity>& list) {
  using enum ValueOf;
  AnswerTable t{"sensitivity",
                "Change for 0.1 mm or 1 %, greatest first: bow [um], angle spread [mdeg], each with its error",
                {{"quantity", "quantity", text},
                 {"by", "by", text},
                 {"bed_bow", "bed", tiny_length},
                 {"clamp_bow", "clamp", tiny_length},
                 {"apron_bow", "apron", tiny_length},
                 {"bow_error", "+-", tiny_length},
                 {"angle_spread", "spread", tiny_angle},
                 {"angle_spread_error", "+-", tiny_angle}},
                {}};
  for (const Sensitivity& s : list) {
    const double nan = std::nan("");
    if (!s.solved) {
      t.rows.push_back({s.name, std::string("-"), nan, nan, nan, nan, nan, nan});
      continue;
    }
    double bow_error = 0;
    for (std::size_t k = 0; k < 3; ++k) bow_error = std::fmax(bow_error, s.error[k]);
    const std::string by = std::string(s.step == tenth ? "0.1 mm" : "1 %") + (s.one_way ? "*" : "");
    t.rows.push_back({s.name, by, s.change[0], s.change[1], s.change[2], bow_error, s.change[3], s.error[3]});
  }
  return t;
}

/// Names of the materials defined in the case: their values are among the case's.
std::set<std::string> own_materials(const Case& c) {
  std::set<std::string> out;
  if (const CaseNode* table = c.source.root.find("material"))
    for (const CaseEntry& e : table->entries) out.insert(e.key);
  return out;
}

/// Sensitivity to every value, without those that have no effect.
std::vector<Sensitivity> all_sensitivities(const Case& c, const Registries& registries, std::size_t step,
                                           const Watched& base) {
  std::vector<Sensitivity> list;
  const auto keep = [&](Sensitivity s) {
    if (s.weight > 0 || !s.solved) list.push_back(std::move(s));
  };
  for (const Knob& knob : knobs_of(c.source)) {
    const double told = knob.length ? tenth : percent * std::abs(knob.si);
    if (told == 0) continue;
    // A tenth of a millimetre is large for a shim: at most a hundredth of the size itself.
    const double reach = knob.length && knob.si != 0 ? std::min(tenth, percent * std::abs(knob.si)) : told;
    keep(sensitivity(knob.name(), base, told, reach, [&](double offset) {
      return answer_of(registries, step,
                       [&] { return understand(turned(c.source, knob, knob.si + offset), registries).machine; });
    }));
  }
  for (const MachineKnob& knob : machine_knobs(c.machine, make_mesh(c.machine, registries.shapes), own_materials(c))) {
    const double told = percent * knob.value;
    keep(sensitivity(knob.name, base, told, told, [&](double offset) {
      return answer_of(registries, step, [&] {
        Machine m = c.machine;
        knob.set(m, knob.value + offset);
        return m;
      });
    }));
  }
  sort_by_weight(list);
  return list;
}

} // namespace

int tell_sensitivity(const AnswerArguments& a, const OpenCase& open) {
  const Registries& registries = open.registries;
  const Case& c = open.value;
  AnalysisOptions options;
  options.fields = false;
  const Findings f = analyse(c.machine, registries, options);
  if (f.status != Status::ok) {
    std::cerr << "bedbow: " << f.trouble << '\n';
    return exit_unsolvable;
  }
  const std::size_t step = f.worst_step.value_or(0);
  const Watched base = watched_of(f.steps.at(step));
  const std::vector<Sensitivity> list = all_sensitivities(c, registries, step, base);
  Answer answer;
  answer.command = "sensitivity";
  answer.facts = {{"step", "In step", ValueOf::text, f.steps[step].name},
                  {"bed_bow", "Bow of the bed", ValueOf::fine_length, base[0]},
                  {"clamp_bow", "Bow of the clamp", ValueOf::fine_length, base[1]},
                  {"apron_bow", "Bow of the apron", ValueOf::fine_length, base[2]},
                  {"angle_spread", "Spread of the bend angle", ValueOf::angle, base[3]}};
  answer.tables.push_back(table_of(list));
  answer.assumed = {
      "central differences (*: one-sided, because the other side is not a valid machine; -: neither side is); +- is "
      "the "
      "change with differences over twice the step; nothing else varies with the quantity (a larger bar stays "
      "where its `at` is)",
      "built-in materials: E with G; studs and rigid cams, hinges and supports are not varied",
      "a nose that lifts off or touches within the step increases +-: then only the sign is reliable"};
  answer.cautions = cautions();
  report_overload(f.verdict, c.output, answer);
  give_answer(a, open, std::move(answer));
  return f.verdict.pass ? exit_ok : exit_limit_exceeded;
}

} // namespace bedbow
