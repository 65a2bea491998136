// Result writers from plugins.
#include "io/plugin/plugin_parts.h"

#include <algorithm>
#include <cstdio>
#include <cstring>
#include <deque>

namespace bedbow {

namespace {

constexpr std::size_t most_bytes = std::size_t{1} << 32;

/// A table under construction; its view remains valid.
struct Table {
  const char* name;
  std::vector<const char*> columns;
  std::vector<std::string> row_names{};
  std::vector<double> values{};
  std::vector<const char*> row_pointers{};

  void row(std::string row_name, std::initializer_list<double> row) {
    row_names.push_back(std::move(row_name));
    values.insert(values.end(), row);
  }
  bedbow_table view() {
    row_pointers.clear();
    for (const std::string& r : row_names) row_pointers.push_back(r.c_str());
    return {name, row_names.size(), columns.size(), columns.data(), row_pointers.data(), values.data()};
  }
};

double of(const std::array<double, 3>& values, BodyKind body) {
  return values[static_cast<std::size_t>(body)];
}

Table step_table(const Findings& f) {
  using enum BodyKind;
  Table t{"steps",
          {"angle_rad", "clamp_bow_m", "bed_bow_m", "apron_bow_m", "clamp_straightness_m", "bed_straightness_m",
           "apron_straightness_m", "angle_mean_rad", "angle_spread_rad"}};
  for (const StepResult& s : f.steps)
    t.row(s.name,
          {s.angle, of(s.bow.bow, clamp), of(s.bow.bow, bed), of(s.bow.bow, apron), of(s.bow.straightness, clamp),
           of(s.bow.straightness, bed), of(s.bow.straightness, apron), s.bow.angle_mean, s.bow.angle_spread});
  return t;
}

Table bend_line_table(const Findings& f) {
  Table t{"bend_line",
          {"step", "x_m", "nose_y_m", "nose_z_m", "bed_z_m", "apron_n_m", "angle_deviation_rad", "clamp_N_per_m",
           "clamp_reserve_N_per_m", "nose_opening_m"}};
  for (std::size_t k = 0; k < f.steps.size(); ++k) {
    const BendLine& b = f.steps[k].bend_line;
    for (std::size_t i = 0; i < b.x.size(); ++i)
      t.row(f.steps[k].name, {static_cast<double>(k), b.x[i], b.nose_y[i], b.nose_z[i], b.bed_z[i], b.apron_n[i],
                              b.angle_deviation[i], b.clamp_force[i], b.clamp_reserve[i], b.nose_opening[i]});
  }
  return t;
}

Table bar_table(const Findings& f) {
  Table t{"bars", {"step", "stress_Pa", "at_x_m", "utilisation", "peak_Pa", "peak_x_m"}};
  for (std::size_t k = 0; k < f.steps.size(); ++k)
    for (const BarResult& b : f.steps[k].bars)
      t.row(b.name, {static_cast<double>(k), b.stress, b.at_x, b.utilisation, b.peak_stress, b.peak_x});
  return t;
}

Table joint_table(const Findings& f) {
  Table t{"joints", {"step", "force_N", "utilisation"}};
  for (std::size_t k = 0; k < f.steps.size(); ++k) {
    for (const JointResult& j : f.steps[k].joints)
      if (const JointKindInfo& kind = info(j.kind); kind.part && kind.quantity == Quantity::force)
        t.row(std::string(kind.key) + " " + j.name, {static_cast<double>(k), j.value, j.utilisation});
  }
  return t;
}

Table dial_table(const Findings& f) {
  Table t{"dials", {"step", "x_m", "y_m", "z_m"}};
  for (std::size_t k = 0; k < f.steps.size(); ++k)
    for (const DialResult& d : f.steps[k].dials)
      t.row(d.name, {static_cast<double>(k), d.movement.x(), d.movement.y(), d.movement.z()});
  return t;
}

/// Files collected by `put`.
struct Collected {
  const std::vector<std::string>& taken;
  std::vector<WrittenFile> files{};
};

bool plain_name(const std::string& name) {
  return !name.empty() && name.size() < 200 && name.front() != '.' &&
         std::ranges::all_of(name, [](unsigned char c) { return c > ' ' && c < 127 && c != '/' && c != '\\'; });
}

int put(void* self, const char* file_name, const void* bytes, std::size_t size, char* message,
        std::size_t message_size) {
  try {
    auto& to = *static_cast<Collected*>(self);
    const std::string name = file_name ? file_name : "";
    std::string wrong;
    if (!plain_name(name)) wrong = "'" + name + "' is not a plain file name";
    const bool twice = std::ranges::find(to.files, name, &WrittenFile::name) != to.files.end();
    if (twice || std::ranges::find(to.taken, name) != to.taken.end()) wrong = "the name " + name + " is already in use";
    if (size > most_bytes || (size > 0 && bytes == nullptr)) wrong = name + " is too large";
    if (!wrong.empty()) {
      if (message && message_size > 0) std::snprintf(message, message_size, "%s", wrong.c_str());
      return 1;
    }
    to.files.push_back({name, std::string(static_cast<const char*>(bytes), size)});
    return 0;
  } catch (...) {
    return 1; // no exception may cross: out of memory
  }
}

std::vector<WrittenFile> write(const bedbow_writer& functions, const std::string& place, const Findings& f,
                               const std::string& json, const std::vector<std::string>& taken) {
  std::array<Table, 5> tables{step_table(f), bend_line_table(f), bar_table(f), joint_table(f), dial_table(f)};
  std::vector<bedbow_table> views;
  for (Table& t : tables) views.push_back(t.view());
  const bedbow_results results{sizeof(bedbow_results), f.title.c_str(), json.c_str(), views.size(), views.data()};
  Collected collected{taken};
  const bedbow_sink sink{sizeof(bedbow_sink), &collected, put};
  PluginMessage message;
  if (functions.write(&results, &sink, message.data(), PluginMessage::size()) != 0)
    throw PluginError(place, message.str());
  return std::move(collected.files);
}

} // namespace

void add_plugin_writer(const PluginEntry& p, Plugins& plugins) {
  const auto& functions = p.functions<bedbow_writer>();
  p.need(functions.write != nullptr, "write");
  plugins.writers.add({p.entry.name, p.entry.description, p.entry.source,
                       [&functions, place = p.place](const Findings& f, const std::string& json,
                                                     const std::vector<std::string>& taken) {
                         return write(functions, place, f, json, taken);
                       },
                       p.origin});
}

} // namespace bedbow
