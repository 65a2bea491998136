#include "io/sweep/sweep_report.h"

#include "io/files/streamed_file.h"
#include "io/results/csv.h"
#include "io/text/table.h"
#include "io/text/text.h"
#include "io/units/output_units.h"
#include "solver/study/first_order.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

constexpr std::array csv_figures{Figure::clamp_bow,    Figure::bed_bow,     Figure::apron_bow, Figure::angle_mean,
                                 Figure::angle_spread, Figure::utilisation, Figure::mass,      Figure::cost};
constexpr std::size_t most_rows = 12;   // greatest number printed of the front
constexpr std::size_t most_dots = 3000; // greatest number drawn

std::string condition(const Trade& t) {
  return std::string(t.passing ? "pass = 1" : "status = 'ok'") + " AND " + column_of(t.price) + " IS NOT NULL AND " +
         column_of(t.quality) + " IS NOT NULL";
}

std::string inputs_of(const VariantResult& r) {
  std::string out;
  for (const std::string& input : r.inputs) out += (out.empty() ? "" : ", ") + input;
  return printable(out);
}

std::string short_name(const std::string& name, int width) {
  return display_width(name) <= width ? name : "..." + name.substr(name.size() - static_cast<std::size_t>(width) + 3);
}

void tell_best(const VariantStore& store, const char* what, const std::string& order, std::string& out) {
  store.each(
      [&](const VariantResult& r) {
        out += std::string(what) + ": variant " + std::to_string(r.id + 1) + ", " + fixed(r[Figure::mass], 2) + " kg";
        if (std::isfinite(r[Figure::cost])) out += ", cost " + fixed(r[Figure::cost], 2);
        out += "\n";
        const std::vector<std::string>& keys = store.identity().keys;
        for (std::size_t i = 0; i < keys.size(); ++i) out += "    " + printable(keys[i] + " = " + r.inputs[i]) + "\n";
      },
      "WHERE pass = 1 AND " + order + " IS NOT NULL ORDER BY " + order + ", id LIMIT 1");
}

void tell_front(const VariantStore& store, const Style& style, std::string& out) {
  const Trade trade = trade_of(store);
  const auto front = trade_off_front(store, trade);
  if (front.empty()) return;
  out += "\nTrade-off of " + words_for(trade.price) + " against " + words_for(trade.quality) + ", among those that " +
         (trade.passing ? "pass" : "could be solved") + "\n";
  TextTable table({{"variant"}, {words_for(trade.price)}, {words_for(trade.quality)}, {"inputs", Align::left}});
  const std::size_t every = (front.size() + most_rows - 1) / most_rows;
  for (std::size_t i = 0; i < front.size(); ++i) {
    if (i % every != 0 && i + 1 != front.size()) continue;
    const VariantResult& r = front[i];
    table.row({std::to_string(r.id + 1), fixed(r[trade.price], 2), fixed(r[trade.quality], 4),
               pad(inputs_of(r), 0).substr(0, 44)});
  }
  out += table.render(style);
  if (every > 1)
    out += "  " + std::to_string(front.size()) + " in all, not all are listed; the picture shows them all\n";
}

void tell_shares(const VariantStore& store, const SweepSpace& space, const std::vector<std::string>& names,
                 const Style& style, std::string& out) {
  constexpr std::array figures{Figure::angle_spread, Figure::clamp_bow, Figure::utilisation, Figure::mass};
  std::vector<FirstOrderShares> sums(figures.size(), FirstOrderShares(space.counts()));
  store.each([&](const VariantResult& r) {
    if (r.failed) return;
    const std::vector<std::size_t> rows = space.rows(r.id);
    for (std::size_t i = 0; i < figures.size(); ++i) sums[i].add(rows, r[figures[i]]);
  });
  out += "\nWhat matters most: Sobol's first-order shares of the variance, in percent\n";
  TextTable table({{"varied", Align::left}, {"angle spread"}, {"clamp bow"}, {"utilisation"}, {"mass"}});
  std::vector<std::vector<double>> shares;
  for (const FirstOrderShares& s : sums) shares.push_back(s.shares(space.sampled()));
  for (std::size_t k = 0; k < names.size(); ++k) {
    std::vector<TextTable::Cell> cells{short_name(printable(names[k]), 44)};
    for (const auto& share : shares) cells.emplace_back(fixed(share[k] * 100, 0));
    table.row(std::move(cells));
  }
  out += table.render(style);
}

} // namespace

void write_sweep_csv(const VariantStore& store, const std::filesystem::path& file) {
  StreamedFile out(file);
  std::vector<std::string> row = store.identity().keys;
  row.insert(row.end(), {"status", "pass"});
  for (const Figure f : csv_figures) row.push_back(column_of(f));
  row.emplace_back("message");
  out.write(csv_row(row));
  store.each([&](const VariantResult& r) {
    row = r.inputs;
    row.emplace_back(r.failed ? "failed" : "ok");
    row.emplace_back(r.pass ? "true" : "false");
    for (const Figure f : csv_figures) row.push_back(csv_number(r[f]));
    row.push_back(r.message);
    out.write(csv_row(row));
  });
  out.commit();
}

Trade trade_of(const VariantStore& store) {
  Trade t;
  t.passing = store.count("pass = 1") > 0;
  if (store.count("status = 'ok' AND cost IS NOT NULL") > 0) t.price = Figure::cost;
  if (store.count("status = 'ok' AND angle_spread_deg IS NOT NULL") == 0) t.quality = Figure::clamp_bow;
  return t;
}

std::vector<VariantResult> trade_off_front(const VariantStore& store, const Trade& trade) {
  std::vector<VariantResult> front;
  // By increasing price: a variant better than all before it is on the front.
  store.each(
      [&](const VariantResult& r) {
        if (front.empty() || r[trade.quality] < front.back()[trade.quality]) front.push_back(r);
      },
      "WHERE " + condition(trade) + " ORDER BY " + column_of(trade.price) + ", " + column_of(trade.quality) + ", id");
  return front;
}

std::string sweep_summary(const VariantStore& store, const SweepSpace& space, const std::vector<std::string>& names,
                          const Style& style) {
  const std::uint64_t all = store.count(), failed = store.count("status = 'failed'"), pass = store.count("pass = 1");
  std::string out = style.bold(std::to_string(all) + " of " + std::to_string(store.identity().variants) +
                               " variants: " + std::to_string(pass) + " pass, " + std::to_string(all - pass - failed) +
                               " exceed a limit, " + std::to_string(failed) + " failed") +
                    "\n";
  store.each(
      [&](const VariantResult& r) {
        out += "first failure: variant " + std::to_string(r.id + 1) + ": " + printable(r.message) + "\n";
      },
      "WHERE status = 'failed' ORDER BY id LIMIT 1");
  tell_best(store, "cheapest that passes", "cost", out);
  tell_best(store, "lightest that passes", "mass_kg", out);
  tell_front(store, style, out);
  if (all > failed) tell_shares(store, space, names, style, out);
  return out;
}

Plot front_plot(const VariantStore& store, const std::string& title) {
  const Trade trade = trade_of(store);
  Plot plot;
  plot.title = title;
  plot.x_label = words_for(trade.price);
  plot.y_label = words_for(trade.quality);
  constexpr auto points = PlotSeries::Kind::points;
  PlotSeries over{"exceeds a limit", {}, {}, points};
  PlotSeries pass{"passes", {}, {}, points};
  const std::uint64_t every = store.count("status = 'ok'") / most_dots + 1;
  std::uint64_t n = 0;
  store.each(
      [&](const VariantResult& r) {
        if (n++ % every != 0) return;
        PlotSeries& s = r.pass ? pass : over;
        s.x.push_back(r[trade.price]);
        s.y.push_back(r[trade.quality]);
      },
      "WHERE status = 'ok' ORDER BY id");
  PlotSeries front{"trade-off front", {}, {}, PlotSeries::Kind::line};
  for (const VariantResult& r : trade_off_front(store, trade)) {
    front.x.push_back(r[trade.price]);
    front.y.push_back(r[trade.quality]);
  }
  plot.description = words_for(trade.price) + " and " + words_for(trade.quality) + " of " +
                     std::to_string(over.x.size() + pass.x.size()) + " variants; " + std::to_string(front.x.size()) +
                     " are on the trade-off front";
  for (PlotSeries* s : {&over, &pass, &front})
    if (!s->x.empty()) plot.series.push_back(std::move(*s));
  return plot;
}

std::string front_svg(const VariantStore& store, const std::string& title) {
  return plot_svg(front_plot(store, title));
}

} // namespace bedbow
