#include "tools/bedbow/sensitivity.h"

#include "io/errors.h"
#include "io/knob.h"
#include "solver/analysis.h"
#include "solver/study/sensitivity.h"
#include "tools/bedbow/exit_code.h"

#include <cmath>
#include <iostream>

namespace bedbow {

namespace {

constexpr double tenth = 1e-4;   // of a millimetre, for lengths
constexpr double percent = 0.01; // for everything else

std::optional<Watched> solve_at(const CaseSource& source, const Registries& registries, std::size_t step) {
  try {
    AnalysisOptions options;
    options.fields = false;
    const Findings f = analyse(understand(source, registries).machine, registries, options);
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
  AnswerTable t{
      "sensitivity",
      "Change for 0.1 mm or 1 %, greatest effect first (+-: what twice the difference step would change in it)",
      {{"quantity", "quantity", text},
       {"by", "by", text},
       {"bed_bow", "bed", tiny_length},
       {"clamp_bow", "clamp", tiny_length},
       {"apron_bow", "apron", tiny_length},
       {"angle_spread", "spread", tiny_angle},
       {"angle_spread_error", "+-", tiny_angle},
       {"bow_error", "bow +-", tiny_length}},
      {}};
  for (const Sensitivity& s : list) {
    const double nan = std::nan("");
    if (!s.solved) {
      t.rows.push_back({s.name, std::string("can't be moved"), nan, nan, nan, nan, nan, nan});
      continue;
    }
    double bow_error = 0;
    for (std::size_t k = 0; k < 3; ++k) bow_error = std::fmax(bow_error, s.error[k]);
    t.rows.push_back({s.name, std::string(s.step == tenth ? "0.1 mm" : "1 %"), s.change[0], s.change[1], s.change[2],
                      s.change[3], s.error[3], bow_error});
  }
  return t;
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
  std::vector<Sensitivity> list;
  for (const Knob& knob : knobs_of(c.source)) {
    const double told = knob.length ? tenth : percent * std::abs(knob.si);
    if (told == 0) continue;
    // A tenth of a millimetre is much for a shim: no more than a hundredth of the size itself.
    const double reach = knob.length && knob.si != 0 ? std::min(tenth, percent * std::abs(knob.si)) : told;
    Sensitivity s = sensitivity(knob.name(), base, told, reach, [&](double offset) {
      return solve_at(turned(c.source, knob, knob.si + offset), registries, step);
    });
    if (s.weight > 0 || !s.solved) list.push_back(std::move(s));
  }
  sort_by_weight(list);
  Answer answer;
  answer.command = "sensitivity";
  answer.facts = {{"step", "In step", ValueOf::text, f.steps[step].name},
                  {"bed_bow", "Bow of the bed", ValueOf::fine_length, base[0]},
                  {"clamp_bow", "Bow of the clamp", ValueOf::fine_length, base[1]},
                  {"apron_bow", "Bow of the apron", ValueOf::fine_length, base[2]},
                  {"angle_spread", "Spread of the bend angle", ValueOf::angle, base[3]}};
  answer.tables.push_back(table_of(list));
  answer.assumed = {
      "central differences; nothing else moves with the quantity (a bar that grows stays where its `at` is)",
      "a nose that lifts off or touches within the step shows in +-: then trust the sign only"};
  answer.cautions = answer_cautions();
  give_answer(a, open, std::move(answer));
  return exit_ok;
}

} // namespace bedbow
