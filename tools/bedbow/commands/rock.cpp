#include "io/results/result_tables.h"
#include "io/results/summary.h"
#include "mesh/piece/si.h"
#include "solver/study/rocking.h"
#include "tools/bedbow/commands/answer_command.h"
#include "tools/bedbow/support/exit_code.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

using si::degree;

struct RockArguments : AnswerArguments {
  int steps = 6;
  std::vector<std::string> lags{"1 deg", "2 deg", "5 deg"};
};

AnswerTable turn_table(const RockResult& r) {
  using enum ValueOf;
  AnswerTable t{"turn",
                "Turning the cams from their lowest position (lever: cam force x ratio; rigid: bars that do not bend)",
                {{"angle", "angle", angle},
                 {"lift", "lift", fine_length},
                 {"opening", "opening", fine_length},
                 {"nose_force", "nose", force},
                 {"lever_force", "lever", force},
                 {"rigid_force", "rigid", force},
                 {"least", "least", line_force},
                 {"greatest", "greatest", line_force}},
                {}};
  for (const RockPoint& p : r.turn)
    t.rows.push_back({p.angle, p.lift, p.opening, p.nose_force, p.lever_force, p.rigid_force, p.least, p.greatest});
  return t;
}

AnswerTable hand_table(const RockResult& r) {
  using enum ValueOf;
  AnswerTable t{"hand",
                "At the cam shaft (back: moment that turns the cams back by themselves)",
                {{"angle", "angle", angle},
                 {"cam_force", "all cams", force},
                 {"moment", "to turn", moment},
                 {"back_moment", "back", moment},
                 {"hand", "hand", force},
                 {"shift", "set-back shift", fine_length}},
                {}};
  for (const RockPoint& p : r.turn) t.rows.push_back({p.angle, p.cam_force, p.moment, p.back_moment, p.hand, p.shift});
  return t;
}

AnswerTable lag_table(const RockResult& r) {
  using enum ValueOf;
  AnswerTable t{"lag",
                "Right cams trail: clamp force on the halves of the sheet (rigid: each half a separate lever)",
                {{"lag", "lag", angle},
                 {"left", "left", force},
                 {"right", "right", force},
                 {"least", "least", line_force},
                 {"greatest", "greatest", line_force},
                 {"rigid_left", "rigid left", force},
                 {"rigid_right", "rigid right", force},
                 {"skew", "skew", fine_length}},
                {}};
  for (const RockLag& l : r.lags)
    t.rows.push_back({l.lag, l.left, l.right, l.least, l.greatest, l.rigid_left, l.rigid_right, l.skew});
  return t;
}

/// The nose force over the cams' angle, or over their lift where they have no angle: flexible and rigid bars.
Plot turn_plot(const RockResult& r, const OutputUnits& u) {
  const bool turns = std::isfinite(r.turn.back().angle);
  Plot p{"Clamping force while the cams turn", turns ? "cam angle [deg]" : "lift of the cams [" + u.length.name + "]",
         "force of the nose [" + u.force.name + "]"};
  p.file = "turn";
  PlotSeries bent{"flexible bars"};
  PlotSeries rigid{"rigid bars"};
  for (const RockPoint& point : r.turn) {
    for (PlotSeries* s : {&bent, &rigid}) s->x.push_back(turns ? point.angle / degree : point.lift / u.length.size);
    bent.y.push_back(point.nose_force / u.force.size);
    rigid.y.push_back(point.rigid_force / u.force.size);
  }
  p.series = {std::move(bent), std::move(rigid)};
  return p;
}

/// A share in a sentence, where a table has "-".
std::string share(double part) {
  return part > 0 ? percent(part) : "none";
}

std::vector<std::string> findings_of(const RockResult& r) {
  std::vector<std::string> out = r.warnings;
  const RockPoint& shut = r.turn.back();
  if (shut.rigid_force > 0)
    out.push_back("clamped, the nose presses with " + share(shut.nose_force / shut.rigid_force) +
                  " of the force with rigid bars: the rest of the lift bends the bars");
  if (const auto touch = std::ranges::find_if(r.turn, [](const RockPoint& p) { return p.lift >= 0; });
      touch != r.turn.end() && std::isfinite(shut.shift) && shut.shift != touch->shift)
    out.push_back("from touching to clamped the cams move the nose " +
                  fixed(std::abs(shut.shift - touch->shift) * 1e3, 2) + " mm " +
                  (shut.shift < touch->shift ? "forward" : "back") +
                  ": it drags over the sheet, and the bend line moves with it");
  if (shut.least <= 0) out.emplace_back("clamped, the nose does not press on the sheet everywhere along the bend line");
  if (shut.back_moment > 0)
    out.emplace_back(
        "clamped, the cams turn back by themselves when released: friction does not hold them; turn them further "
        "towards the top, or latch the lever");
  else if (std::isfinite(shut.angle))
    out.emplace_back("clamped, friction holds the cams; oil, wear or a knock may release them");
  for (const RockLag& l : r.lags)
    if (l.lag != 0 && l.left + l.right > 0)
      out.push_back("a lag of " + fixed(l.lag / degree, 1) + " deg leaves " + share(l.right / (l.left + l.right)) +
                    " of the clamp force on the right half");
  return out;
}

int run_rock(const RockArguments& a) {
  const OpenCase open = open_for_answer(a);
  const Registries& registries = open.registries;
  const Case& c = open.value;
  std::vector<double> lags{0};
  for (const std::string& lag : a.lags) lags.push_back(quantity_of("lag", lag, Dim::angle));
  const RockResult r = rock(c.machine, registries, a.steps, lags);
  Answer answer;
  answer.command = "rock";
  answer.facts = {{"lever_ratio", "Lever: nose force over cam force", ValueOf::ratio, r.lever.ratio()},
                  {"opening_ratio", "Nose opening over lowering of the tail", ValueOf::ratio, r.lever.opening()}};
  answer.tables = {turn_table(r)};
  if (std::isfinite(r.turn.back().angle)) answer.tables.push_back(hand_table(r));
  if (!r.lags.empty()) answer.tables.push_back(lag_table(r));
  answer.plots = {turn_plot(r, c.output)};
  answer.findings = findings_of(r);
  answer.assumed = {
      "cams push straight up on a flat tail; friction there and on the shaft by `friction` (0.15 where "
      "omitted, greased "
      "steel, common practice, no source)",
      "posts stretch with their nuts and engaged threads (VDI 2230), steel 205 GPa (common practice, no source), those "
      "with `preload` pull with exactly that force; the sheet as the pad of "
      "docs/case-format.md"};
  answer.cautions = cautions();
  answer.cautions.emplace_back("A cam lever under load can swing back: keep face and fingers out of its way.");
  const int exit = report_overload(r.clamped, c.output, answer);
  give_answer(a, open, std::move(answer));
  return exit;
}

} // namespace

void add_rock(CLI::App& app, Run& run) {
  CLI::App* command = add_command(app, "rock",
                                  "clamp that rocks on its posts by cams under its tail: opening, force, "
                                  "lever, hand moment, lag",
                                  "bedbow rock cases/rocking-clamp/case.toml --lag \"2 deg\"");
  auto a = std::make_shared<RockArguments>();
  add_answer_options(*command, *a);
  command->add_option("--steps", a->steps, "number of positions from lowest to clamped")
      ->check(CLI::Range(1, 90))
      ->capture_default_str();
  command->add_option("--lag", a->lags, "angle by which the right cams trail, in the clamped position")
      ->capture_default_str();
  command->callback([&run, a] { run = [a] { return run_rock(*a); }; });
}

} // namespace bedbow
