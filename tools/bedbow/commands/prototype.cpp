#include "solver/study/prototype.h"

#include "io/results/summary.h"
#include "tools/bedbow/commands/answer_command.h"
#include "tools/bedbow/support/exit_code.h"

#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

struct PrototypeArguments : AnswerArguments {
  std::string material, reach;
  double scale = 1;
};

/// A material of the case, else a built-in one.
Material material_named(const Case& c, const std::string& name) {
  for (const Material& m : c.machine.materials)
    if (m.name == name) return m;
  if (const Material* m = find_material(name)) return *m;
  throw std::invalid_argument("--material: unknown material \"" + name +
                              "\"; `bedbow list` shows the built-in ones (sugar maple, Douglas-fir, ...)");
}

AnswerTable bow_table(const PrototypeResult& r) {
  using enum ValueOf;
  AnswerTable t{"bow",
                "Bow over the sheet width (by parts: from the shares below and the ratios above)",
                {{"body", "body", text},
                 {"machine", "machine", fine_length},
                 {"prototype", "prototype", fine_length},
                 {"ratio", "ratio", ratio},
                 {"ratio_by_parts", "by parts", ratio}},
                {}};
  for (const PrototypeBow& b : r.bows)
    t.rows.push_back(
        {b.body, b.machine, b.prototype, b.machine > 0 ? b.prototype / b.machine : std::nan(""), r.parts.of(b.shares)});
  return t;
}

AnswerTable share_table(const PrototypeResult& r) {
  using enum ValueOf;
  AnswerTable t{"shares",
                "Contributions to the bow (negative: this flexibility reduces the bow)",
                {{"body", "body", text},
                 {"of", "of", text},
                 {"bending", "bending", percent},
                 {"shear", "shear, twist", percent},
                 {"joints", "joints, contact", percent},
                 {"set", "cams, crown", percent}},
                {}};
  for (const PrototypeBow& b : r.bows)
    for (const auto& [name, s] : {std::pair{"machine", b.shares}, std::pair{"prototype", b.prototype_shares}})
      t.rows.push_back({b.body, std::string(name), s.bending, s.shear, s.joints, s.set});
  return t;
}

AnswerTable dial_table(const PrototypeResult& r) {
  using enum ValueOf;
  AnswerTable t{"dials",
                "Expected dial readings at these loads",
                {{"dial", "dial", text},
                 {"axis", "along", text},
                 {"machine", "machine", fine_length},
                 {"prototype", "prototype", fine_length},
                 {"ratio", "ratio", ratio},
                 {"told_to", "reading accuracy", percent}},
                {}};
  for (const PrototypeDial& d : r.dials)
    t.rows.push_back({d.name, d.axis, d.machine, d.prototype,
                      std::abs(d.machine) > 1e-9 ? d.prototype / d.machine : std::nan(""),
                      std::abs(d.prototype) > 1e-9 ? d.told_to() : std::nan("")});
  return t;
}

AnswerTable load_table(const PrototypeResult& r) {
  using enum ValueOf;
  AnswerTable t{"loads",
                "Loads that bend the prototype to the machine's shape, and the greatest in its safe range",
                {{"what", "load", text},
                 {"machine", "machine", force},
                 {"prototype", "prototype", force},
                 {"most", "at most", force}},
                {}};
  for (const PrototypeLoad& l : r.loads)
    t.rows.push_back({l.what, l.machine, l.prototype, l.prototype * r.safe_factor()});
  return t;
}

constexpr double well_told = 0.1; // of the reading

/// Which dials are worth reading.
std::string dials_to_read(const PrototypeResult& r) {
  std::string names;
  for (const PrototypeDial& d : r.dials)
    if (d.told_to() <= well_told) names += (names.empty() ? "" : ", ") + d.name + " " + d.axis;
  return names.empty() ? "no dial reads more than 0.05 mm at these loads: load it up to \"at most\", or build it larger"
                       : "a 0.01 mm dial is accurate to 10 % or better here: " + names;
}

std::vector<std::string> findings_of(const PrototypeResult& r, double scale) {
  std::vector<std::string> out;
  for (const PrototypeBow& b : r.bows)
    if (b.machine > 1e-9)
      out.push_back("the " + b.body + " bows " + fixed(b.prototype / b.machine / scale, 2) +
                    " times as much as E alone would predict (scale times the machine's bow)");
  out.push_back(dials_to_read(r));
  out.emplace_back("a reading on the prototype divided by its ratio is the machine's value; E alone does not give it");
  if (r.safe_factor() < 1)
    out.emplace_back(
        "these loads overstress the prototype: apply no more than \"at most\"; readings decrease in proportion");
  else
    out.push_back("the prototype may carry " + fixed(r.safe_factor(), 1) +
                  " times these loads; readings increase in proportion as long as nothing lifts off");
  return out;
}

std::vector<std::string> wood_words() {
  return {"E of clear wood scatters by 22 % about its mean, the modulus of rupture by 16 % (coefficients of variation, "
          "USDA "
          "Wood Handbook, from memory): first load a strip cut from the same board and measure its deflection",
          "creep: under a load of days the deflection of wood may double (USDA Wood Handbook, from "
          "memory): read within a minute, unload, read again",
          "moisture: values are for 12 %; each 1 % more reduces E by about 2 % (USDA Wood Handbook, from memory)"};
}

int run_prototype(const PrototypeArguments& a) {
  const OpenCase open = open_for_answer(a);
  const Registries& registries = open.registries;
  const Case& c = open.value;
  const Material material = material_named(c, a.material);
  Machine machine = c.machine;
  if (!a.reach.empty())
    for (Handle& h : machine.handles)
      if (std::isnan(h.reach)) h.reach = quantity_of("reach", a.reach, Dim::length);
  const PrototypeResult r = prototype(machine, registries, material, a.scale);
  Answer answer;
  answer.command = "prototype";
  answer.facts = {{"step", "In step", ValueOf::text, r.step},
                  {"scale", "Scale", ValueOf::ratio, a.scale},
                  {"load_scale", "Prototype force over machine force", ValueOf::ratio, r.load_scale},
                  {"bending_ratio", "Ratio of bending contributions (E)", ValueOf::ratio, r.parts.bending},
                  {"shear_ratio", "Ratio of shear and twist contributions (G)", ValueOf::ratio, r.parts.shear},
                  {"joint_ratio", "Ratio of steel joint and contact contributions", ValueOf::ratio, r.parts.joints},
                  {"stress", "Greatest stress in the prototype (" + r.stressed + ")", ValueOf::stress, r.stress},
                  {"allowed", "Allowable stress", ValueOf::stress, r.allowed.value}};
  answer.tables = {bow_table(r), share_table(r), dial_table(r), load_table(r)};
  answer.findings = findings_of(r, a.scale);
  answer.assumed = {material.name + ": E " + fixed(material.E * 1e-9, 1) + " GPa, G " + fixed(material.G * 1e-9, 2) +
                        " GPa; " + material.source,
                    "safe range: " + r.allowed.source,
                    "studs and screws are steel, scaled with the rest; given stiffnesses of supports and ties times "
                    "scale E'/E"};
  if (material.yield == 0)
    for (std::string& line : wood_words()) answer.assumed.push_back(std::move(line));
  answer.cautions = cautions();
  answer.cautions.emplace_back(
      "Wood breaks without warning across knots and slanting grain: stand clear of loaded bars.");
  give_answer(a, open, std::move(answer));
  return exit_ok;
}

} // namespace

void add_prototype(CLI::App& app, Run& run) {
  CLI::App* command =
      add_command(app, "prototype", "behaviour of a wooden or scaled prototype compared with the machine",
                  "bedbow prototype cases/hive-lid/case.toml --material \"Douglas-fir\" --scale 0.5");
  auto a = std::make_shared<PrototypeArguments>();
  add_answer_options(*command, *a);
  command->add_option("--material", a->material, "material of the prototype's bars, built-in or from the case")
      ->required();
  command->add_option("--scale", a->scale, "size of the prototype relative to the machine")
      ->check(CLI::Range(0.01, 10.0))
      ->capture_default_str();
  command->add_option("--reach", a->reach,
                      "distance from the bend line to the hand on the machine, for handles without `reach`");
  command->callback([&run, a] { run = [a] { return run_prototype(*a); }; });
}

} // namespace bedbow
