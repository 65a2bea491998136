// Sheet moment laws from plugins.
#include "io/plugin/plugin_parts.h"

#include <cmath>
#include <limits>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

double known(double value) {
  return value > 0 ? value : unknown;
}

double law_moment(const bedbow_moment_law& law, const std::string& place, const Sheet& s, const Material& m) {
  bedbow_sheet sheet{sizeof(bedbow_sheet),
                     s.thickness,
                     s.width,
                     s.flange,
                     s.inside_radius,
                     s.angle,
                     known(m.E),
                     known(m.nu),
                     known(m.yield),
                     known(m.tensile),
                     m.K.value_or(unknown),
                     m.n.value_or(unknown)};
  double moment = std::numeric_limits<double>::quiet_NaN();
  PluginMessage message;
  if (law.moment(&sheet, &moment, message.data(), PluginMessage::size()) != 0)
    throw std::invalid_argument("plugin " + place + ": " + message.str());
  if (!(std::isfinite(moment) && moment > 0))
    throw std::invalid_argument("plugin " + place + ": gave a moment of " + std::to_string(moment) +
                                " N m/m; expected a finite one above zero");
  return moment;
}

} // namespace

void add_plugin_law(const PluginEntry& p, Registries& registries) {
  const auto& law = p.functions<bedbow_moment_law>();
  p.need(law.moment != nullptr, "moment");
  registries.moment_laws.add(
      {p.entry.name, p.entry.description, p.entry.source,
       [&law, place = p.place](const Sheet& s, const Material& m) { return law_moment(law, place, s, m); }, p.origin});
}

} // namespace bedbow
