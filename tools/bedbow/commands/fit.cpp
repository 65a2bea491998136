#include "solver/study/fit.h"

#include "io/case/knob.h"
#include "io/results/summary.h"
#include "solver/analysis.h"
#include "tools/bedbow/commands/answer_command.h"
#include "tools/bedbow/support/exit_code.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace bedbow {

namespace {

struct FitArguments : AnswerArguments {
  std::string step, reading_error;
};

/// Dials with readings, as indices into Machine::dials.
std::vector<std::size_t> read_dials(const Machine& m) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < m.dials.size(); ++i)
    if (m.dials[i].reading && m.dials[i].direction >= 0) out.push_back(i);
  return out;
}

/// Value under a dotted key; its start from the file, else the geometric mean of its bounds.
struct Unknown {
  FitParameter parameter;
  CaseNode like; ///< whose unit is kept
};

Unknown unknown_of(const Case& c, const FitUnknown& u) {
  Unknown out;
  out.parameter.name =
      u.keys.front() + (u.keys.size() > 1 ? " and " + std::to_string(u.keys.size() - 1) + " more" : "");
  if (u.from) out.parameter.least = si_of(*u.from);
  if (u.to) out.parameter.most = si_of(*u.to);
  if (const CaseNode* value = find_key(c.source.root, u.keys.front())) {
    out.like = *value;
    out.parameter.start = si_of(*value);
  } else if (u.from && u.to) {
    out.like = *u.from;
    out.parameter.start = std::sqrt(*out.parameter.least * *out.parameter.most);
  } else {
    throw std::invalid_argument(u.keys.front() +
                                ": the case has no value to start from; give it one, or `from` and `to`");
  }
  return out;
}

Case with_unknowns(const Case& c, const Registries& registries, const std::vector<Unknown>& unknowns,
                   const Eigen::VectorXd& values) {
  std::vector<std::pair<std::string, CaseNode>> changes;
  for (std::size_t i = 0; i < unknowns.size(); ++i)
    for (const std::string& key : c.fit[i].keys)
      changes.emplace_back(key, like_quantity(unknowns[i].like, values[static_cast<Eigen::Index>(i)]));
  return understand(with_values(c.source, changes), registries);
}

/// Dials of the requested step, by default the last one.
Eigen::VectorXd model_readings(const Machine& m, const Registries& registries, const std::vector<std::size_t>& dials,
                               const std::string& step_name) {
  AnalysisOptions options;
  options.fields = false;
  const Findings f = analyse(m, registries, options);
  if (f.status != Status::ok) throw std::runtime_error(f.trouble);
  const StepResult& step = step_name.empty() ? f.steps.back() : f.steps[step_named(f, step_name)];
  Eigen::VectorXd out(static_cast<Eigen::Index>(dials.size()));
  for (std::size_t i = 0; i < dials.size(); ++i)
    out[static_cast<Eigen::Index>(i)] = step.dials.at(dials[i]).movement[m.dials[dials[i]].direction];
  return out;
}

/// A value in the unit used in the case, with six digits.
std::string in_own_unit(const CaseNode& like, double si) {
  if (std::isnan(si)) return "-";
  const double one = si_of(like_quantity(like, 1.0));
  const std::string text = like_quantity(like, si / one).text;
  const std::size_t space = text.find(' ');
  char number[32];
  std::snprintf(number, sizeof number, "%.5g", std::stod(text.substr(0, space)));
  return number + text.substr(space);
}

AnswerTable value_table(const FitResult& r, const std::vector<Unknown>& unknowns) {
  using enum ValueOf;
  AnswerTable t{"unknowns",
                "Unknowns that fit the readings best",
                {{"key", "unknown", text},
                 {"start", "start", text},
                 {"value", "value", text},
                 {"standard_error", "standard error", text},
                 {"value_si", "value (SI)", text},
                 {"remark", "", text}},
                {}};
  for (std::size_t i = 0; i < r.values.size(); ++i) {
    const FitValue& v = r.values[i];
    char si[32];
    std::snprintf(si, sizeof si, "%.6g", v.value);
    t.rows.push_back({v.name, in_own_unit(unknowns[i].like, unknowns[i].parameter.start),
                      in_own_unit(unknowns[i].like, v.value), in_own_unit(unknowns[i].like, v.error), std::string(si),
                      std::string(v.at_bound       ? "at its bound"
                                  : v.undetermined ? "not identifiable"
                                                   : "")});
  }
  return t;
}

AnswerTable dial_table(const FitResult& r, const Machine& m, const std::vector<std::size_t>& dials,
                       const Eigen::VectorXd& readings) {
  using enum ValueOf;
  AnswerTable t{"dials",
                "Readings against the model",
                {{"dial", "dial", text},
                 {"reading", "reading", fine_length},
                 {"before", "model at start", fine_length},
                 {"after", "model fitted", fine_length},
                 {"residual", "residual", fine_length}},
                {}};
  for (std::size_t i = 0; i < dials.size(); ++i) {
    const auto k = static_cast<Eigen::Index>(i);
    t.rows.push_back({m.dials[dials[i]].name, readings[k], r.before[k], r.after[k], r.residuals[k]});
  }
  return t;
}

std::vector<std::string> findings_of(const FitResult& r) {
  std::vector<std::string> out;
  if (!r.converged)
    out.emplace_back("the fit did not converge: start nearer, or bound the unknowns by `from` and `to`");
  for (const FitPair& p : r.alike)
    out.push_back("the readings can't separate " + r.values[p.one].name + " from " + r.values[p.other].name +
                  " (correlation " + fixed(p.correlation, 3) +
                  "): put a dial where only one of them has an effect, or fix one by another measurement");
  for (const FitValue& v : r.values) {
    if (v.undetermined) out.push_back(v.name + " has hardly any effect on the readings: its value is meaningless");
    if (v.at_bound) out.push_back(v.name + " is at its bound: widen it, or check the readings");
  }
  if (std::isnan(r.noise))
    out.emplace_back("as many unknowns as readings: the errors cannot be estimated; read more dials, or give "
                     "--reading-error");
  return out;
}

int run_fit(const FitArguments& a) {
  const OpenCase open = open_for_answer(a);
  const Registries& registries = open.registries;
  const Case& c = open.value;
  const auto dials = read_dials(c.machine);
  if (c.fit.empty())
    throw std::invalid_argument("nothing to fit: give the unknowns in [[fit.unknown]], as in key = "
                                "\"support.left.stiffness\"");
  if (dials.empty())
    throw std::invalid_argument("no [[dial]] has a `reading` with its `direction`: nothing was measured");
  Eigen::VectorXd readings(static_cast<Eigen::Index>(dials.size()));
  for (std::size_t i = 0; i < dials.size(); ++i)
    readings[static_cast<Eigen::Index>(i)] = *c.machine.dials[dials[i]].reading;
  std::vector<Unknown> unknowns;
  std::vector<FitParameter> parameters;
  for (const FitUnknown& u : c.fit) {
    unknowns.push_back(unknown_of(c, u));
    parameters.push_back(unknowns.back().parameter);
  }
  const FitModel model = [&](const Eigen::VectorXd& values) {
    return model_readings(with_unknowns(c, registries, unknowns, values).machine, registries, dials, a.step);
  };
  std::optional<double> error;
  if (!a.reading_error.empty()) error = quantity_of("reading-error", a.reading_error, Dim::length);
  const FitResult r = fit(parameters, readings, model, error);
  Answer answer;
  answer.command = "fit";
  answer.facts = {{"reading_noise", error ? "Error of a reading, as given" : "Error of a reading, from the residuals",
                   ValueOf::fine_length, r.noise},
                  {"evaluations", "Machines solved", ValueOf::count, static_cast<double>(r.evaluations)}};
  answer.tables = {value_table(r, unknowns), dial_table(r, c.machine, dials, readings)};
  answer.findings = findings_of(r);
  answer.assumed = {"readings are those of " + (a.step.empty() ? "the last step" : "the step \"" + a.step + "\"") +
                        ", each with the same error, independent of the others",
                    "Levenberg-Marquardt on the logarithms (Eigen's port of MINPACK); errors hold for small noise"};
  answer.cautions = cautions();
  give_answer(a, open, std::move(answer));
  return r.converged ? exit_ok : exit_unsolvable;
}

} // namespace

void add_fit(CLI::App& app, Run& run) {
  CLI::App* command = add_command(app, "fit", "adjust the unknowns of [fit] until the dials read what was measured",
                                  "bedbow fit cases/trestle-fit/case.toml");
  auto a = std::make_shared<FitArguments>();
  add_answer_options(*command, *a);
  command->add_option("--step", a->step, "step in which the dials were read (default: the last one)");
  command->add_option("--reading-error", a->reading_error,
                      "known standard deviation of a reading, such as \"0.005 mm\"");
  command->callback([&run, a] { run = [a] { return run_fit(*a); }; });
}

} // namespace bedbow
