// Findings from plugins.
#include "io/plugin/plugin_parts.h"

#include <algorithm>
#include <cstring>

namespace bedbow {

namespace {

constexpr std::size_t most_values = 256;

std::vector<bedbow_step> steps_of(const Findings& f) {
  std::vector<bedbow_step> out;
  for (const StepResult& s : f.steps) {
    const BendLine& b = s.bend_line;
    const auto bow = [&](BodyKind k) { return s.bow.bow[static_cast<std::size_t>(k)]; };
    out.push_back({sizeof(bedbow_step), s.name.c_str(), s.angle, bow(BodyKind::clamp), bow(BodyKind::bed),
                   bow(BodyKind::apron), s.bow.angle_mean, s.bow.angle_spread, b.x.size(), b.x.data(), b.nose_z.data(),
                   b.bed_z.data(), b.apron_n.data(), b.angle_deviation.data(), b.clamp_force.data()});
  }
  return out;
}

bool usable_key(const bedbow_value& v) {
  const std::size_t n = strnlen(v.key, sizeof v.key);
  return n > 0 && n < sizeof v.key && std::all_of(v.key, v.key + n, [](char c) {
           return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_';
         });
}

std::vector<std::pair<std::string, double>> finding_values(const bedbow_finding& finding, const std::string& place,
                                                           const Findings& f) {
  const std::vector<bedbow_step> steps = steps_of(f);
  std::vector<bedbow_value> values(most_values);
  std::size_t count = 0;
  PluginMessage message;
  if (finding.evaluate(steps.data(), steps.size(), values.data(), values.size(), &count, message.data(),
                       PluginMessage::size()) != 0)
    throw PluginError(place, message.str());
  if (count > values.size()) throw PluginError(place, lying_size("values", count, values.size()));
  std::vector<std::pair<std::string, double>> out;
  for (std::size_t i = 0; i < count; ++i) {
    if (!usable_key(values[i]))
      throw PluginError(place, "value " + std::to_string(i + 1) +
                                   " has no valid key; use letters, digits and _, at "
                                   "most 63");
    out.emplace_back(values[i].key, values[i].value);
  }
  return out;
}

} // namespace

void add_plugin_finding(const PluginEntry& p, Plugins& plugins) {
  const auto& finding = p.functions<bedbow_finding>();
  p.need(finding.evaluate != nullptr, "evaluate");
  plugins.findings.add({p.entry.name, p.entry.description, p.entry.source,
                        [&finding, place = p.place](const Findings& f) { return finding_values(finding, place, f); },
                        p.origin});
}

} // namespace bedbow
