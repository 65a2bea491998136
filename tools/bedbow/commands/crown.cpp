#include "solver/study/crown.h"

#include "io/results/summary.h"
#include "tools/bedbow/commands/answer_command.h"
#include "tools/bedbow/support/choice_option.h"
#include "tools/bedbow/support/exit_code.h"

#include <cmath>
#include <iostream>
#include <stdexcept>

namespace bedbow {

namespace {

struct CrownArguments : AnswerArguments {
  BodyKind on = CrownTask{}.on;
  CrownAim aim = CrownTask{}.aim;
  std::string step, rod;
  std::vector<std::string> stock{"0.05 mm", "0.1 mm", "0.2 mm"}, at;
  int places = 7;
};

std::vector<double> places_of(const CrownArguments& a, const Sheet& sheet) {
  std::vector<double> out;
  for (const std::string& x : a.at) out.push_back(quantity_of("at", x, Dim::length));
  if (!out.empty()) return out;
  for (int i = 0; i < a.places; ++i) out.push_back(std::lerp(sheet.left(), sheet.right(), i / (a.places - 1.0)));
  return out;
}

AnswerTable state_table(const std::vector<std::pair<std::string, CrownState>>& states) {
  using enum ValueOf;
  AnswerTable t{"residual",
                "Remaining deviation, solved again with the correction",
                {{"state", "", text}, {"bow", "bow", fine_length}, {"angle_spread", "angle spread", angle}},
                {}};
  for (const auto& [name, s] : states) t.rows.push_back({name, s.bow, s.spread});
  return t;
}

AnswerTable shim_table(const CrownResult& r, const OutputUnits& u) {
  using enum ValueOf;
  AnswerTable t{"shims",
                "Heights towards the sheet",
                {{"x", "x", length},
                 {"height", "exact", fine_length},
                 {"shim", "shim", fine_length},
                 {"pieces", "made of", text}},
                {}};
  for (const ShimPlace& p : r.places) {
    std::string pieces;
    for (const double piece : p.pieces) pieces += (pieces.empty() ? "" : " + ") + in_unit(piece, u.length, 1e-5);
    t.rows.push_back({p.x, p.height, p.shim, pieces.empty() ? "none" : pieces});
  }
  return t;
}

/// Heights along the bend line, exact and from the stock.
Plot shim_plot(const CrownResult& r, const OutputUnits& u) {
  Plot p{"Heights of the correction", "x along the bend line [" + u.length.name + "]",
         "height [" + u.length.name + "]"};
  p.file = "shims";
  PlotSeries exact{"exact"};
  PlotSeries stock{"from the stock"};
  stock.kind = PlotSeries::Kind::points;
  for (const ShimPlace& place : r.places) {
    for (PlotSeries* s : {&exact, &stock}) s->x.push_back(place.x / u.length.size);
    exact.y.push_back(place.height / u.length.size);
    stock.y.push_back(place.shim / u.length.size);
  }
  p.series = {std::move(exact), std::move(stock)};
  return p;
}

/// The lines for the case file that describe the shims.
std::string case_lines(const CrownResult& r, const std::string& on) {
  std::string x, height;
  for (const ShimPlace& p : r.places) {
    x += (x.empty() ? "\"" : ", \"") + fixed(p.x * 1e3, 1) + " mm\"";
    height += (height.empty() ? "\"" : ", \"") + fixed(p.shim * 1e3, 3) + " mm\"";
  }
  return "in the case: [" + on + ".crown] x = [" + x + "] height = [" + height + "]";
}

void tell_shims(const CrownArguments& a, const Case& c, const Registries& registries, CrownTask task, Answer& answer) {
  for (const std::string& s : a.stock) task.stock.push_back(quantity_of("stock", s, Dim::length));
  const CrownResult r = find_crown(c.machine, registries, task);
  answer.facts.push_back({"step", "Corrected in step", ValueOf::text, r.step});
  answer.tables = {
      shim_table(r, c.output),
      state_table({{"as it is", r.before}, {"exact heights", r.exact}, {"shims from the stock", r.rounded}})};
  answer.plots = {shim_plot(r, c.output)};
  answer.findings.push_back(case_lines(r, to_string(a.on)));
  answer.findings.emplace_back("to machine or scrape a pre-bow instead: remove the greatest height less that of each "
                               "place");
}

void tell_rod(const CrownArguments& a, const Case& c, const Registries& registries, const CrownTask& task,
              Answer& answer) {
  const double offset = quantity_of("rod", a.rod, Dim::length);
  const RodResult r = find_rod(c.machine, registries, task, offset);
  answer.facts = {
      {"offset", "Rod above the centroid of the " + to_string(a.on) + "'s edge bar", ValueOf::length, offset},
      {"tension", "Tension", ValueOf::force, r.tension},
      {"thread", "Smallest thread, class 8.8 at half its proof load", ValueOf::text,
       r.thread.empty() ? std::string("none up to M24") : r.thread}};
  answer.tables = {state_table({{"as it is", r.before}, {"with the rod", r.after}})};
  if (r.tension < 0) answer.findings.emplace_back("a rod can't push: put it on the other side of the bar");
  answer.assumed.emplace_back("the tension of the rod is constant; its own stretch during bending is neglected");
}

int run_crown(const CrownArguments& a) {
  const OpenCase open = open_for_answer(a);
  const Registries& registries = open.registries;
  const Case& c = open.value;
  if (!c.machine.sheet) throw std::invalid_argument("there is no bend line to crown: the case needs [sheet]");
  AnalysisOptions options;
  options.fields = false;
  const Findings f = analyse(c.machine, registries, options);
  if (f.status != Status::ok) {
    std::cerr << "bedbow: " << f.trouble << '\n';
    return exit_unsolvable;
  }
  CrownTask task;
  task.on = a.on;
  task.aim = a.aim;
  task.step = a.step.empty() ? f.worst_step.value_or(f.steps.size() - 1) : step_named(f, a.step);
  task.places = places_of(a, *c.machine.sheet);
  Answer answer;
  answer.command = "crown";
  answer.assumed = {"a strip on the bend-line edge, linear between the places, as stiff as the edge it lies on",
                    "correction for this sheet and this step; another sheet needs other heights"};
  if (a.rod.empty())
    tell_shims(a, c, registries, task, answer);
  else
    tell_rod(a, c, registries, task, answer);
  answer.cautions = cautions();
  const int exit = report_overload(f.verdict, c.output, answer);
  give_answer(a, open, std::move(answer));
  return exit;
}

} // namespace

void add_crown(CLI::App& app, Run& run) {
  CLI::App* command =
      add_command(app, "crown", "shims, a pre-bow or a truss rod that make the line straight or the bend angle even",
                  "bedbow crown cases/hive-lid/case.toml --on apron --stock \"0.05 mm\" \"0.1 mm\"\n"
                  "bedbow crown cases/hive-lid/case.toml --on clamp --aim straight --rod \"60 mm\"");
  auto a = std::make_shared<CrownArguments>();
  add_answer_options(*command, *a);
  add_choice(*command, "--on", a->on, body_choices, "body to be corrected");
  add_choice(*command, "--aim", a->aim, crown_aims,
             "quantity to correct: straight (the body's edge) or even (the bend angle)");
  command->add_option("--step", a->step, "step to correct (default: the worst)");
  command->add_option("--places", a->places, "number of points across the sheet")
      ->check(CLI::Range(2, 60))
      ->capture_default_str();
  command->add_option("--at", a->at, "points along the bend line instead");
  command->add_option("--stock", a->stock, "available shims")->capture_default_str();
  command->add_option("--rod", a->rod, "use a truss rod at this height above the bar's centroid instead of shims");
  command->callback([&run, a] { run = [a] { return run_crown(*a); }; });
}

} // namespace bedbow
