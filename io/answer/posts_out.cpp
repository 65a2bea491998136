#include "io/answer/posts_out.h"

#include "io/case/fault_text.h"
#include "io/results/reason_text.h"
#include "io/results/result_tables.h"
#include "io/text/json_text.h"
#include "io/units/quantities_out.h"

#include <nlohmann/json.hpp>

#include <array>

namespace bedbow {

namespace {

nlohmann::ordered_json json_of(const PostLayout& l) {
  std::vector<double> x;
  for (const double at : l.x) x.push_back(twelve_digits(to_mm(at)));
  return {{"count", l.x.size()},
          {"x_mm", x},
          {"angle_spread_deg", to_deg(l.angle_spread)},
          {"clamp_bow_mm", to_mm(l.clamp_bow)},
          {"clamp_straightness_mm", to_mm(l.clamp_straightness)},
          {"post_force_N", l.post_force},
          {"worst_utilisation", l.utilisation},
          {"worst_utilisation_at", l.utilisation_at},
          {"pass", l.pass},
          {"message", layout_words(l, {})}};
}

void add_row(TextTable& table, const PostLayout& l, const OutputUnits& units, const std::string& places) {
  if (!l.solved) {
    table.row({std::to_string(l.x.size()),
               "-",
               "-",
               "-",
               "-",
               "-",
               {l.faults.empty() ? "not solved" : "can't be built", Mark::bad},
               places});
    return;
  }
  table.row({std::to_string(l.x.size()), fixed(to_deg(l.angle_spread), 3), in_unit(l.clamp_bow, units.length, 1e-6),
             in_unit(l.clamp_straightness, units.length, 1e-6), in_unit(l.post_force, units.force, 10),
             percent(l.utilisation), l.pass ? TextTable::Cell("yes", Mark::good) : TextTable::Cell("no", Mark::bad),
             places});
}

TextTable empty_table(const OutputUnits& units, const std::string& last) {
  return TextTable({{"posts"},
                    {"spread deg"},
                    {"bow " + units.length.name},
                    {"straightness " + units.length.name},
                    {"post " + units.force.name},
                    {"used"},
                    {"passes", Align::left},
                    {last, Align::left}});
}

} // namespace

std::string layout_words(const PostLayout& l, const OutputUnits& units) {
  if (!l.faults.empty()) return "can't be built: " + faults_line(l.faults, units);
  return l.solved ? reasons_line(l.reasons, units) : l.trouble;
}

TextTable counts_table(const PostsFound& f, const OutputUnits& units) {
  TextTable table = empty_table(units, "at x " + units.length.name);
  for (const PostLayout& l : f.counts) {
    std::string places;
    for (const double x : l.x) places += (places.empty() ? "" : " ") + in_unit(x, units.length, 1e-3);
    add_row(table, l, units, places);
  }
  return table;
}

TextTable spacings_table(const PostsFound& f, const OutputUnits& units) {
  TextTable table = empty_table(units, "spacing " + units.length.name);
  for (const auto& [spacing, l] : f.spacings) add_row(table, l, units, in_unit(spacing, units.length, 1e-4));
  return table;
}

std::string posts_json(const PostsFound& f) {
  nlohmann::ordered_json out;
  out["counts"] = nlohmann::ordered_json::array();
  for (const PostLayout& l : f.counts) out["counts"].push_back(json_of(l));
  if (f.smallest)
    out["smallest"] = f.counts[*f.smallest].x.size();
  else
    out["smallest"] = nullptr;
  for (const auto& [spacing, l] : f.spacings) {
    out["spacings"].push_back(json_of(l));
    out["spacings"].back()["spacing_mm"] = twelve_digits(to_mm(spacing));
  }
  return json_text(out);
}

std::optional<Plot> posts_plot(const PostsFound& f, const Case& c) {
  Plot plot{"Two posts: " + c.machine.title, "spacing [mm]", "clamp [mm]"};
  plot.file = "posts";
  PlotSeries bow{"bow"}, straight{"straightness"};
  for (const auto& [spacing, l] : f.two) {
    if (!l.solved) continue;
    for (auto [series, value] : {std::pair{&bow, l.clamp_bow}, std::pair{&straight, l.clamp_straightness}}) {
      series->x.push_back(to_mm(spacing));
      series->y.push_back(to_mm(value));
    }
  }
  if (bow.x.empty()) return std::nullopt;
  plot.series = {std::move(bow), std::move(straight)};
  if (c.machine.limits.bow) plot.limits.push_back({"bow limit", to_mm(*c.machine.limits.bow)});
  return plot;
}

std::string places_words(const PostLayout& l, const OutputUnits& units) {
  std::string out;
  for (std::size_t i = 0; i < l.x.size(); ++i)
    out += (i == 0 ? "" : i + 1 == l.x.size() ? " and " : ", ") + in_unit(l.x[i], units.length, 1e-3);
  return out + " " + units.length.name;
}

} // namespace bedbow
