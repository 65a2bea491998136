#include "io/case/case_reader.h"
#include "io/case/fault_text.h"
#include "io/results/reason_text.h"
#include "io/text/json_text.h"
#include "io/text/table.h"
#include "io/text/text.h"
#include "io/units/output_units.h"
#include "io/units/quantities_out.h"
#include "solver/study/cost.h"
#include "solver/study/stock_choice.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/choice_option.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/output_place.h"
#include "tools/bedbow/support/plugins.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <iostream>
#include <map>
#include <memory>
#include <stdexcept>

namespace bedbow {

namespace {

struct StockArguments {
  std::string file, kerf = "3 mm";
  StockGoal cut = StockTask{}.goal;
  std::vector<std::string> bars;
  int threads = 0;
  long most = StockTask{}.most_tries;
  bool json = false;
  PluginOptions plugins;
};

/// Bars by name, or all of bed, clamp and apron.
std::vector<Ref> bars_of(const Machine& m, const std::vector<std::string>& names) {
  std::vector<Ref> all, out;
  std::string known;
  for (const BodyKind kind : all_bodies)
    for (std::size_t i = 0; i < m.body(kind).bars.size(); ++i) {
      all.push_back({Ref::Kind::bar, kind, static_cast<int>(i)});
      known += (known.empty() ? "" : ", ") + m.name_of(all.back());
    }
  if (names.empty()) return all;
  for (const std::string& name : names) {
    const auto it = std::ranges::find_if(all, [&](const Ref& r) { return m.name_of(r) == name; });
    if (it == all.end()) throw std::invalid_argument("--bars: unknown bar \"" + name + "\"; available: " + known);
    out.push_back(*it);
  }
  return out;
}

std::string sizes_of(const Shape& s) {
  if (s.diameter > 0) return "diameter " + fixed(to_mm(s.diameter), 1);
  std::string out = fixed(to_mm(s.width), 1) + " x " + fixed(to_mm(s.height), 1);
  return s.wall > 0 ? out + " x " + fixed(to_mm(s.wall), 1) : out;
}

/// A chosen machine with its pieces.
struct Built {
  const StockChoice& choice;
  MaterialCost cost;
};

nlohmann::ordered_json json_of(const Built& b, const Case& c) {
  if (!b.choice.found) return nullptr;
  nlohmann::ordered_json out;
  const SummaryMetrics& h = b.choice.headline;
  out["cost"] = b.choice.cost;
  out["mass_kg"] = h.mass;
  out["angle_spread_deg"] = to_deg(h.angle_spread);
  out["clamp_bow_mm"] = to_mm(h.bow[static_cast<std::size_t>(BodyKind::clamp)]);
  out["worst_utilisation"] = h.utilisation;
  out["complete"] = b.choice.complete;
  out["unbuildable"] = b.choice.unbuildable;
  out["bars"] = nlohmann::ordered_json::array();
  for (const StockPick& p : b.choice.picks)
    out["bars"].push_back({{"name", c.machine.name_of(p.bar)},
                           {"stock", c.stock[p.item].name},
                           {"width_mm", twelve_digits(to_mm(p.shape.width))},
                           {"height_mm", twelve_digits(to_mm(p.shape.height))}});
  return out;
}

/// Pieces by stock, in the order of first use.
std::vector<std::pair<std::string, std::vector<const CutPiece*>>> by_stock(const MaterialCost& cost) {
  std::vector<std::pair<std::string, std::vector<const CutPiece*>>> out;
  for (const CutPiece& p : cost.pieces) {
    const std::string name = p.stock.empty() ? "not in stock" : p.stock;
    auto it = std::ranges::find(out, name, [](const auto& group) { return group.first; });
    if (it == out.end()) it = out.insert(out.end(), {name, {}});
    it->second.push_back(&p);
  }
  return out;
}

const StockItem* item_named(const Case& c, const std::string& name) {
  const auto it = std::ranges::find(c.stock, name, &StockItem::name);
  return it == c.stock.end() ? nullptr : &*it;
}

/// Number of stock bars needed for the pieces; nullopt where their length is not given.
std::optional<std::size_t> bars_to_buy(const Case& c, const std::string& stock,
                                       const std::vector<const CutPiece*>& pieces, double kerf) {
  const StockItem* item = item_named(c, stock);
  if (!item || !item->bar_length) return std::nullopt;
  std::vector<double> lengths;
  for (const CutPiece* p : pieces) lengths.push_back(p->length);
  return cut_plan(lengths, *item->bar_length, kerf).size();
}

nlohmann::ordered_json cut_json(const Built& b, const Case& c, double kerf) {
  nlohmann::ordered_json out = nlohmann::ordered_json::array();
  for (const auto& [stock, pieces] : by_stock(b.cost))
    for (const CutPiece* p : pieces) {
      out.push_back({{"stock", stock},
                     {"bar", p->name},
                     {"length_mm", twelve_digits(to_mm(p->length))},
                     {"mass_kg", p->mass},
                     {"cost", p->cost}});
      if (const auto bars = bars_to_buy(c, stock, pieces, kerf)) out.back()["bars_of_this_stock"] = *bars;
    }
  return out;
}

void print_choice(const char* what, const Built& b, const Case& c, const Style& style) {
  const StockChoice& choice = b.choice;
  std::cout << '\n' << style.bold(what);
  if (!choice.found) {
    std::cout << ": none passes of " << choice.tries << " machines tried"
              << (choice.complete ? "" : "; there are more, raise --most to try them") << '\n';
    const std::string why = !choice.faults.empty()   ? "can't be built: " + faults_line(choice.faults, c.output)
                            : choice.trouble.empty() ? reasons_line(choice.reasons, c.output)
                                                     : choice.trouble;
    if (!why.empty())
      for (const std::string& line : wrap("even the heaviest: " + printable(why), 96))
        std::cout << "  " << line << '\n';
    return;
  }
  const SummaryMetrics& h = choice.headline;
  std::cout << ": " << fixed(h.mass, 2) << " kg"
            << (std::isfinite(choice.cost) ? ", cost " + fixed(choice.cost, 2) : std::string()) << "; angle spread "
            << degrees_text(h.angle_spread) << ", clamp bow "
            << length_text(h.bow[static_cast<std::size_t>(BodyKind::clamp)], c.output, 1e-6) << ", utilisation "
            << fixed(h.utilisation, 2) << " (" << choice.tries << " tried"
            << (choice.unbuildable > 0 ? ", " + std::to_string(choice.unbuildable) + " can't be built" : "") << ")\n";
  TextTable table({{"bar", Align::left}, {"stock", Align::left}, {"width x height, mm", Align::left}});
  for (const StockPick& p : choice.picks)
    table.row({printable(c.machine.name_of(p.bar)), printable(c.stock[p.item].name), sizes_of(p.shape)});
  std::cout << table.render(style);
}

void print_cuts(const Built& b, const Case& c, double kerf, const Style& style) {
  const OutputUnit& unit = c.output.length;
  TextTable table({{"stock", Align::left}, {"for", Align::left}, {"length " + unit.name}, {"kg"}, {"cost"}});
  std::string buy;
  for (const auto& [stock, pieces] : by_stock(b.cost)) {
    for (const CutPiece* p : pieces)
      table.row(
          {printable(stock), printable(p->name), in_unit(p->length, unit, 1e-4), fixed(p->mass, 2), fixed(p->cost, 2)});
    if (const auto bars = bars_to_buy(c, stock, pieces, kerf))
      buy += "  " + std::to_string(*bars) + " x " + length_text(*item_named(c, stock)->bar_length, c.output, 1e-4) +
             " of " + printable(stock) + "\n";
  }
  double mass = 0;
  for (const CutPiece& p : b.cost.pieces) mass += p.mass;
  table.row({"total", "", "", fixed(mass, 2), fixed(b.cost.total, 2)});
  std::cout << "\nCut list\n" << table.render(style);
  if (!buy.empty()) std::cout << "To buy, with " << length_text(kerf, c.output, 1e-4) << " a cut:\n" << buy;
  std::cout << "Caution: studs, screws, pins, panels and waste are not included.\n";
}

int stock(const StockArguments& a) {
  const OpenCase open = open_case(a.file, a.plugins);
  const Registries& registries = open.registries;
  const Case& c = open.value;
  if (c.stock.empty()) throw std::invalid_argument("the case has no [[stock]] to choose from");
  const double kerf = quantity_of("kerf", a.kerf, Dim::length);
  StockTask task;
  task.bars = bars_of(c.machine, a.bars);
  task.threads = a.threads;
  task.most_tries = a.most;
  const bool priced =
      std::ranges::any_of(c.stock, [](const StockItem& s) { return s.price_per_metre || s.price_per_kg; });
  StockChoice cheapest;
  if (priced) cheapest = choose_stock(c.machine, c.stock, registries, task);
  task.goal = StockGoal::lightest;
  const StockChoice lightest = choose_stock(c.machine, c.stock, registries, task);
  const auto built = [&](const StockChoice& choice) {
    return Built{choice, material_cost(with_stock(c.machine, c.stock, choice.picks, registries.shapes), c.stock,
                                       registries.shapes)};
  };
  const Built cheap = built(cheapest), light = built(lightest);
  const Built& cut = a.cut == StockGoal::cheapest && priced ? cheap : light;
  if (a.json) {
    nlohmann::ordered_json out;
    out["cheapest"] = json_of(cheap, c);
    out["lightest"] = json_of(light, c);
    out["cut_list"] = cut.choice.found ? cut_json(cut, c, kerf) : nlohmann::ordered_json::array();
    std::cout << json_text(out);
  } else {
    const Style style = style_for(1);
    std::cout << style.bold(printable(c.machine.title)) << '\n';
    if (priced) print_choice("Cheapest machine that passes", cheap, c, style);
    print_choice("Lightest machine that passes", light, c, style);
    if (cut.choice.found) print_cuts(cut, c, kerf, style);
  }
  return cut.choice.found ? exit_ok : exit_limit_exceeded;
}

} // namespace

void add_stock(CLI::App& app, Run& run) {
  CLI::App* command = add_command(app, "stock", "choose bars among the case's [[stock]]: cheapest and lightest",
                                  "bedbow stock cases/hive-lid-stock/case.toml");
  auto a = std::make_shared<StockArguments>();
  command->add_option("CASE", a->file, "the case file")->required();
  command->add_option("--bars", a->bars, "bars to choose, such as clamp.rib (default: all)");
  add_choice(*command, "--cut", a->cut, stock_goals, "machine for the cut list");
  command->add_option("--kerf", a->kerf, "width lost by each cut")->capture_default_str();
  command->add_option("--most", a->most, "greatest number of machines tried, for each of the two")
      ->check(CLI::PositiveNumber)
      ->capture_default_str();
  command->add_option("--threads", a->threads, "number of threads (default: all)")->check(CLI::Range(1, 4096));
  command->add_flag("--json", a->json, "print JSON for scripts");
  add_plugin_options(*command, a->plugins);
  command->callback([&run, a] { run = [a] { return stock(*a); }; });
}

} // namespace bedbow
