#include "solver/study/setup.h"

#include "io/results/summary.h"
#include "io/units/quantity.h"
#include "solver/sheet/operator_force.h"
#include "tools/bedbow/commands/answer_command.h"
#include "tools/bedbow/support/exit_code.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

namespace bedbow {

namespace {

struct SetupArguments : AnswerArguments {
  std::vector<std::string> thickness, legs;
  std::string reach, effort = "whole body pull";
};

double thickness_of(const std::string& text, const Machine& m) {
  if (const auto gauge = parse_gauge(text)) {
    const Material& material = m.materials.at(static_cast<std::size_t>(m.sheet->material));
    if (const auto t = material.gauge ? gauge_thickness(*material.gauge, *gauge) : std::nullopt) return *t;
    throw std::invalid_argument("--thickness: " + material.name + " has no gauge " + std::to_string(*gauge));
  }
  return quantity_of("thickness", text, Dim::length);
}

AnswerTable bend_table(const std::vector<Setting>& settings, double legs) {
  using enum ValueOf;
  AnswerTable t{"bend",
                "The bend",
                {{"thickness", "sheet", length},
                 {"least_radius", "least radius", length},
                 {"inside_radius", "radius used", length},
                 {"k", "k", ratio},
                 {"correction", "add to legs", length},
                 {"flat_length", "flat length", length},
                 {"springback", "springback", angle}},
                {}};
  for (const Setting& s : settings)
    t.rows.push_back({s.thickness, s.least_radius.value > 0 ? s.least_radius.value : std::nan(""), s.inside_radius, s.k,
                      s.correction, legs + s.correction, s.springback});
  return t;
}

AnswerTable clamp_table(const std::vector<Setting>& settings) {
  using enum ValueOf;
  AnswerTable t{"clamp",
                "The clamp (nut turns upwards from the case's sheet; or cam angle with the nuts left alone)",
                {{"thickness", "sheet", length},
                 {"setback", "set-back, sharp nose", length},
                 {"rounded_setback", "nose rounded to the radius", length},
                 {"nut_turns", "nut turns", ratio},
                 {"cam_angle", "cam angle", angle}},
                {}};
  for (const Setting& s : settings)
    t.rows.push_back({s.thickness, s.setback, s.rounded_setback, s.nut_turns, s.cam_angle});
  return t;
}

AnswerTable nut_table(const std::vector<Setting>& settings) {
  using enum ValueOf;
  AnswerTable t{"nuts",
                "Preload by turning the nut from finger-tight, with the clamp loose on nose and cams",
                {{"thickness", "sheet", length},
                 {"post", "post", text},
                 {"preload", "preload", force},
                 {"stretch", "stud stretch", fine_length},
                 {"down", "clamp lowering", fine_length},
                 {"turn", "turn", angle}},
                {}};
  for (const Setting& s : settings)
    for (const NutSetting& n : s.nuts) t.rows.push_back({s.thickness, n.post, n.preload, n.stretch, n.down, n.turn});
  return t;
}

AnswerTable apron_table(const std::vector<Setting>& settings, const std::string& effort) {
  using enum ValueOf;
  AnswerTable t{"apron",
                "The apron (swing to: wanted angle + springback + deflection)",
                {{"thickness", "sheet", length},
                 {"lag", "deflection", angle},
                 {"apron_angle", "swing to", angle},
                 {"hand_force", "hand", force},
                 {"effort", "of limit", percent},
                 {"least_flange", "least flange", length},
                 {"remark", "", text}},
                {}};
  for (const Setting& s : settings) {
    const double part = std::isfinite(s.hand_force) ? check_effort(s.hand_force, effort).utilisation() : std::nan("");
    const std::string remark = !s.trouble.empty()   ? "can't be solved"
                               : !s.within_limits   ? "over the limits"
                               : s.flange_by_limits ? "flange by limits"
                                                    : "";
    t.rows.push_back({s.thickness, s.lag, s.apron_angle, s.hand_force, part, s.least_flange, remark});
  }
  return t;
}

std::vector<std::string> assumed(const std::vector<Setting>& settings, const std::string& effort) {
  const EffortLimit* limit = find_effort_limit(effort);
  std::vector<std::string> out{
      "set-back by geometry: the apron turns about the bend line with the flange's outer face on it, so the inner face "
      "is a thickness behind the line and the bend's inside begins a radius behind that; for a radius of one "
      "thickness that is the customary two thicknesses (common practice, no source); and as much further back as the "
      "case's nose stands for its own sheet",
      "solved with a sharp nose at that set-back, on a clamp whose bars stay at the case's places",
      "least radius: " + settings.front().least_radius.source,
      "k and the correction to the sum of the outside legs: DIN 6935",
      "swing to: wanted angle, springback of bend, flange and the sheet under the nose, and the mean deflection of the "
      "solved machine",
      "least flange: 2 thicknesses beyond the bend for the apron to bear on (common practice, no source), or the least "
      "within the case's limits",
      "effort \"" + effort + "\": " + fixed(limit->force, 0) + " N, " + limit->source};
  return out;
}

int run_setup(const SetupArguments& a) {
  const OpenCase open = open_for_answer(a);
  const Registries& registries = open.registries;
  const Case& c = open.value;
  if (!c.machine.sheet) throw std::invalid_argument("nothing to set up: the case needs [sheet]");
  check_effort(0, a.effort); // throws for an unknown limit
  std::vector<double> thicknesses;
  for (const std::string& text : a.thickness) thicknesses.push_back(thickness_of(text, c.machine));
  if (thicknesses.empty()) thicknesses.push_back(c.machine.sheet->thickness);
  double legs = std::numeric_limits<double>::quiet_NaN();
  if (!a.legs.empty()) legs = quantity_of("legs", a.legs[0], Dim::length) + quantity_of("legs", a.legs[1], Dim::length);
  const double reach =
      a.reach.empty() ? std::numeric_limits<double>::quiet_NaN() : quantity_of("reach", a.reach, Dim::length);
  const auto settings = find_settings(c.machine, registries, thicknesses, reach);
  Answer answer;
  answer.command = "setup";
  answer.tables = {bend_table(settings, legs), clamp_table(settings), apron_table(settings, a.effort)};
  if (AnswerTable nuts = nut_table(settings); !nuts.rows.empty()) answer.tables.push_back(std::move(nuts));
  for (const Setting& s : settings) {
    if (!s.trouble.empty()) answer.findings.push_back(fixed(s.thickness * 1e3, 2) + " mm: " + s.trouble);
    if (std::isnan(s.hand_force) && s.trouble.empty()) {
      answer.findings.emplace_back("hand force: give `reach` of the [[handle]], or --reach");
      break;
    }
  }
  answer.assumed = assumed(settings, a.effort);
  answer.cautions = cautions();
  answer.cautions.emplace_back("Try each setting on a strip of scrap first: springback differs from coil to coil.");
  give_answer(a, open, std::move(answer));
  if (std::ranges::any_of(settings, [](const Setting& s) { return !s.trouble.empty(); })) return exit_unsolvable;
  return std::ranges::all_of(settings, &Setting::within_limits) ? exit_ok : exit_limit_exceeded;
}

} // namespace

void add_setup(CLI::App& app, Run& run) {
  CLI::App* command =
      add_command(app, "setup", "settings of the machine for each sheet thickness",
                  "bedbow setup cases/hive-lid/case.toml --thickness \"1 mm\" \"1.5 mm\" --reach \"400 mm\"");
  auto a = std::make_shared<SetupArguments>();
  add_answer_options(*command, *a);
  command->add_option("--thickness", a->thickness,
                      "sheet thicknesses, such as \"1.5 mm\" or \"16 ga\" (default: the case's)");
  command->add_option("--legs", a->legs, "the two outside legs, for the flat length")->expected(2);
  command->add_option("--reach", a->reach, "distance from the bend line to the hand, for handles without `reach`");
  command->add_option("--effort", a->effort, "published limit with which the hand force is compared")
      ->capture_default_str();
  command->callback([&run, a] { run = [a] { return run_setup(*a); }; });
}

} // namespace bedbow
