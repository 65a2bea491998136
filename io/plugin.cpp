#include "io/plugin.h"

#include "io/bedbow_plugin.h"
#include "io/errors.h"

#include <dlfcn.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <cstring>
#include <limits>

namespace bedbow {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t message_size = 512;
constexpr std::size_t most_values = 256;
constexpr std::uint32_t most_entries = 1000;

/// Room for a plugin's message; whatever it leaves there ends at the last byte.
struct Message {
  std::array<char, message_size> text{};
  std::string str() {
    text.back() = '\0';
    std::string out(text.data());
    for (char& c : out)
      if (static_cast<unsigned char>(c) < ' ') c = ' ';
    return out.empty() ? "it gave no reason" : out;
  }
};

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
  Message message;
  if (law.moment(&sheet, &moment, message.text.data(), message_size) != 0)
    throw std::invalid_argument("plugin " + place + ": " + message.str());
  if (!(std::isfinite(moment) && moment > 0))
    throw std::invalid_argument("plugin " + place + ": gave a moment of " + std::to_string(moment) +
                                " N m/m; a finite one above zero is due");
  return moment;
}

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
  Message message;
  if (finding.evaluate(steps.data(), steps.size(), values.data(), values.size(), &count, message.text.data(),
                       message_size) != 0)
    throw PluginError(place, message.str());
  if (count > values.size())
    throw PluginError(place, "claims " + std::to_string(count) + " values; there was room for " +
                                 std::to_string(values.size()));
  std::vector<std::pair<std::string, double>> out;
  for (std::size_t i = 0; i < count; ++i) {
    if (!usable_key(values[i]))
      throw PluginError(place, "value " + std::to_string(i + 1) +
                                   " has no usable key; letters, digits and _ are, at "
                                   "most 63 of them");
    out.emplace_back(values[i].key, values[i].value);
  }
  return out;
}

/// The table of functions of an entry. \tparam Table starts with struct_size.
template <class Table> const Table& functions_of(const bedbow_entry& entry, const std::string& place) {
  const auto* table = static_cast<const Table*>(entry.functions);
  if (table == nullptr) throw PluginError(place, "has no table of functions");
  if (table->struct_size != sizeof(Table))
    throw PluginError(place, "its table of functions has " + std::to_string(table->struct_size) + " bytes, " +
                                 std::to_string(sizeof(Table)) + " are due; build it against this version's header");
  return *table;
}

void check_entry(const bedbow_entry& e, const std::string& place) {
  if (e.interface_version != BEDBOW_PLUGIN_INTERFACE)
    throw PluginError(place, "speaks interface version " + std::to_string(e.interface_version) +
                                 ", this program speaks " + std::to_string(BEDBOW_PLUGIN_INTERFACE) +
                                 "; build it against this version's header");
  if (e.struct_size != sizeof(bedbow_entry))
    throw PluginError(place, "its entry has " + std::to_string(e.struct_size) + " bytes, " +
                                 std::to_string(sizeof(bedbow_entry)) + " are due");
  for (const char* text : {e.kind, e.name, e.version, e.description, e.source})
    if (text == nullptr || *text == '\0')
      throw PluginError(place, "kind, name, version, description and source must not be empty");
}

void add_entry(const bedbow_entry& e, const std::string& file, Registries& registries, Plugins& plugins) {
  const std::string place = file + ": " + e.kind + " '" + e.name + "'";
  const std::string origin = file + " " + e.version;
  try {
    if (std::strcmp(e.kind, "moment law") == 0) {
      const auto& law = functions_of<bedbow_moment_law>(e, place);
      if (law.moment == nullptr) throw PluginError(place, "lacks its function `moment`");
      registries.moment_laws.add(
          {e.name, e.description, e.source,
           [&law, place](const Sheet& s, const Material& m) { return law_moment(law, place, s, m); }, origin});
    } else if (std::strcmp(e.kind, "finding") == 0) {
      const auto& finding = functions_of<bedbow_finding>(e, place);
      if (finding.evaluate == nullptr) throw PluginError(place, "lacks its function `evaluate`");
      plugins.findings.add({e.name, e.description, e.source,
                            [&finding, place](const Findings& f) { return finding_values(finding, place, f); },
                            origin});
    } else {
      throw PluginError(file, std::string("brings a '") + e.kind + "'; there are: moment law, finding");
    }
  } catch (const std::invalid_argument& taken) {
    throw PluginError(file, taken.what());
  }
  plugins.loaded.push_back(file + ": " + e.name + " " + e.version);
}

} // namespace

void load_plugin(const fs::path& file, Registries& registries, Plugins& plugins) {
  std::error_code error;
  if (!fs::exists(file, error)) throw FileError("load", file, "no such file");
  // An absolute path: a bare name would be looked for among the system's libraries.
  void* handle = ::dlopen(fs::absolute(file).c_str(), RTLD_NOW | RTLD_LOCAL);
  if (handle == nullptr) throw FileError("load", file, ::dlerror(), "a plugin is a shared object for this machine");
  using Entry = const bedbow_entry* (*)(std::uint32_t);
  const auto entry = reinterpret_cast<Entry>(::dlsym(handle, "bedbow_plugin"));
  const std::string name = file.filename().string();
  if (entry == nullptr) throw PluginError(name, "does not export bedbow_plugin, so it is no plugin");
  for (std::uint32_t i = 0;; ++i) {
    const bedbow_entry* e = entry(i);
    if (e == nullptr && i > 0) return;
    if (e == nullptr) throw PluginError(name, "brings nothing");
    if (i >= most_entries) throw PluginError(name, "does not end its entries with NULL");
    check_entry(*e, name);
    add_entry(*e, name, registries, plugins);
  }
}

} // namespace bedbow
