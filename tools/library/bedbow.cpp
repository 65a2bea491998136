#include "tools/library/bedbow.h"

#include "io/case/toml_source.h"
#include "io/files/errors.h"
#include "io/plugin/open_case.h"
#include "io/plugin/plugin_results.h"
#include "io/results/reason_text.h"
#include "io/results/result_files.h"
#include "io/results/result_json.h"
#include "io/results/summary.h"
#include "io/text/version.h"
#include "mesh/piece/si.h"
#include "solver/analysis.h"

#include <nlohmann/json.hpp>

#include <utility>

namespace bedbow::library {

namespace {

using si::degree;

/// Runs a call and turns its errors into the library's error class.
template <class F> auto guarded(F&& call) {
  try {
    return call();
  } catch (const bedbow::CaseError& e) {
    std::string lines;
    for (const Problem& p : e.problems()) lines += (lines.empty() ? "" : "\n") + to_string(p, e.file());
    throw Error(Error::Kind::case_file, lines);
  } catch (const bedbow::FileError& e) {
    throw Error(Error::Kind::file, e.what());
  } catch (const bedbow::PluginError& e) {
    throw Error(Error::Kind::plugin, e.what());
  } catch (const std::invalid_argument& e) {
    throw Error(Error::Kind::case_file, e.what());
  }
}

std::vector<double> scaled(const std::vector<double>& values, double unit) {
  std::vector<double> out;
  out.reserve(values.size());
  for (const double v : values) out.push_back(v / unit);
  return out;
}

Bow bow_of(const BowResult& b) {
  const auto mm = [](const std::array<double, 3>& values, BodyKind k) {
    return values[static_cast<std::size_t>(k)] * 1e3;
  };
  return {mm(b.bow, BodyKind::clamp),
          mm(b.bow, BodyKind::bed),
          mm(b.bow, BodyKind::apron),
          mm(b.straightness, BodyKind::clamp),
          mm(b.straightness, BodyKind::bed),
          mm(b.straightness, BodyKind::apron),
          b.angle_mean / degree,
          b.angle_spread / degree};
}

Step step_of(const StepResult& s) {
  Step out{s.name, s.angle / degree, bow_of(s.bow), {}, {}, {}, {}};
  const bedbow::BendLine& b = s.bend_line;
  out.bend_line = {scaled(b.x, 1e-3),
                   scaled(b.nose_z, 1e-3),
                   scaled(b.bed_z, 1e-3),
                   scaled(b.apron_n, 1e-3),
                   scaled(b.angle_deviation, degree),
                   scaled(b.clamp_force, 1e3)};
  for (const BarResult& bar : s.bars)
    out.bars.push_back({bar.name, bar.stress * 1e-6, bar.at_x * 1e3, bar.utilisation});
  for (const JointResult& j : s.joints)
    if (const JointKindInfo& kind = info(j.kind); kind.part && kind.quantity == Quantity::force)
      out.joints.push_back({kind.key, j.name, j.value, j.utilisation});
  for (const DialResult& d : s.dials)
    out.dials.push_back({d.name, d.movement.x() * 1e3, d.movement.y() * 1e3, d.movement.z() * 1e3});
  return out;
}

PluginOptions options_of(const Plugins& plugins) {
  PluginOptions out;
  for (const auto& file : plugins.files) out.files.push_back(file.string());
  out.allowed = plugins.of_case;
  return out;
}

std::vector<Finding> plugin_findings(const nlohmann::ordered_json& json) {
  std::vector<Finding> out;
  if (!json.contains("findings")) return out;
  for (const auto& [name, values] : json["findings"].items())
    for (const auto& [key, value] : values.items()) out.push_back({name, key, value.get<double>()});
  return out;
}

} // namespace

Error::~Error() = default;

struct Case::Inner : OpenCase {
  explicit Inner(OpenCase open)
      : OpenCase(std::move(open)) {}
};

struct Result::Inner {
  Findings findings;
  OutputUnits units;
  std::vector<std::string> assumptions;
  nlohmann::ordered_json json;
  std::vector<ResultFile> written; ///< by plugins
};

std::string version() {
  return bedbow::version();
}

Case Case::from_text(std::string_view text, const std::string& name, const Plugins& plugins) {
  return guarded([&] { return Case(std::make_shared<Inner>(open_case_text(text, options_of(plugins), name))); });
}

Case Case::from_machine(const Machine& machine, const std::string& name, const Plugins& plugins) {
  return from_text(machine.toml(), name, plugins);
}

Case Case::from_file(const std::filesystem::path& file, const Plugins& plugins) {
  return guarded([&] { return Case(std::make_shared<Inner>(open_case(file, options_of(plugins)))); });
}

Case Case::with(const std::string& key, const std::string& value) const {
  return guarded([&] {
    const TomlText parsed = read_toml("value = " + value + "\n");
    const CaseNode* node = parsed.root.find("value");
    if (!parsed.problems.empty() || node == nullptr)
      throw std::invalid_argument(key + ": " + value +
                                  R"( is not a TOML value; expected one such as "80 mm" in quotes, 0.3, true)");
    const std::pair<std::string, CaseNode> change{key, *node};
    OpenCase other{inner_->registries, inner_->plugins, {}};
    other.value = understand(with_values(inner_->value.source, {&change, 1}), other.registries);
    return Case(std::make_shared<Inner>(std::move(other)));
  });
}

std::string Case::title() const {
  return inner_->value.machine.title;
}

std::vector<std::string> Case::warnings() const {
  std::vector<std::string> out;
  for (const Problem& p : inner_->value.warnings) out.push_back(to_string(p, inner_->value.source.file));
  return out;
}

std::vector<std::string> Case::assumptions() const {
  return inner_->value.assumptions;
}

std::vector<std::string> Case::plugins() const {
  return inner_->plugins.loaded;
}

Result Case::solve() const {
  return guarded([&] {
    const bedbow::Case& c = inner_->value;
    Findings f = analyse(c.machine, inner_->registries);
    if (f.status != Status::ok) throw Error(Error::Kind::unsolvable, f.trouble);
    Result out;
    out.pass = f.verdict.pass;
    out.reasons = reason_text(f.verdict.reasons, c.output);
    out.mass_kg = f.mass;
    for (const StepResult& s : f.steps) out.steps.push_back(step_of(s));
    auto json = result_json(f, {bedbow::version(), c.text_hash, inner_->plugins.loaded});
    add_findings(inner_->plugins, f, json);
    out.findings = plugin_findings(json);
    std::vector<ResultFile> written;
    add_written(inner_->plugins, f, json, written);
    out.inner_ = std::make_shared<const Result::Inner>(
        Result::Inner{std::move(f), c.output, c.assumptions, std::move(json), std::move(written)});
    return out;
  });
}

std::string Result::json() const {
  return inner_->json.dump(1);
}

std::string Result::summary() const {
  return bedbow::summary(inner_->findings, inner_->units, Style(false), inner_->assumptions);
}

std::vector<std::string> Result::write(const std::filesystem::path& directory) const {
  return guarded([&] { return write_results(directory, inner_->findings, inner_->json, inner_->written); });
}

} // namespace bedbow::library
