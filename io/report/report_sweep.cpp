#include "io/report/report_sweep.h"

#include "io/report/report_machine.h"
#include "io/report/report_solve.h"
#include "io/sweep/sweep_report.h"
#include "io/units/output_units.h"

#include <algorithm>

namespace bedbow {

namespace {

constexpr std::size_t most_rows = 60; ///< greatest number shown of the front

std::string answer(const VariantStore& store, const std::vector<VariantResult>& front, const Trade& trade) {
  const std::uint64_t pass = store.count("pass = 1");
  std::string out = std::to_string(pass) + " of " + std::to_string(store.count()) + " variants keep the limits";
  if (front.empty() || !trade.passing) return out + ".";
  const VariantResult& least = front.front();
  out += "; the one with the least " + words_for(trade.price) + " is variant " + std::to_string(least.id + 1) + ":";
  const std::vector<std::string>& keys = store.identity().keys;
  for (std::size_t i = 0; i < keys.size(); ++i) out += (i > 0 ? ", " : " ") + keys[i] + " = " + least.inputs[i];
  return out + ".";
}

TextTable front_table(const VariantStore& store, const std::vector<VariantResult>& front, const Trade& trade) {
  std::vector<TextTable::Column> columns{{"variant"}, {words_for(trade.price)}, {words_for(trade.quality)}};
  for (const std::string& key : store.identity().keys) columns.push_back({key, Align::left});
  TextTable table(std::move(columns));
  const std::size_t every = (front.size() + most_rows - 1) / most_rows;
  for (std::size_t i = 0; i < front.size(); ++i) {
    if (i % every != 0 && i + 1 != front.size()) continue;
    const VariantResult& r = front[i];
    std::vector<TextTable::Cell> cells{std::to_string(r.id + 1), fixed(r[trade.price], 2), fixed(r[trade.quality], 4)};
    for (const std::string& input : r.inputs) cells.emplace_back(input);
    table.row(std::move(cells));
  }
  return table;
}

} // namespace

std::optional<std::uint64_t> variant_to_show(const VariantStore& store) {
  const auto front = trade_off_front(store, trade_of(store));
  return front.empty() ? std::nullopt : std::optional(front.front().id);
}

Report sweep_page(const VariantStore& store, const std::string& title, const std::string& summary,
                  const ShownVariant* shown) {
  const Trade trade = trade_of(store);
  const auto front = trade_off_front(store, trade);
  Report r{title + ": variants"};
  r.answer = answer(store, front, trade);
  r.pass = store.count("pass = 1") > 0;
  r.stamp = {store.identity().version, store.identity().case_hash, {}};
  ReportSection trades{"Cost of a better machine"};
  trades.plots.push_back(front_plot(store, "All variants (one dot each)"));
  if (!front.empty())
    trades.tables.push_back(
        {"Variants that no other beats in both", front_table(store, front, trade),
         front.size() > most_rows ? "Some of " + std::to_string(front.size()) + " are not shown." : ""});
  r.sections.push_back(std::move(trades));
  if (!summary.empty()) {
    r.sections.push_back({"Summary"});
    r.sections.back().listing = summary;
    r.sections.back().folded = false;
  }
  r.before_machine = r.sections.size();
  if (!shown || shown->findings.status != Status::ok) return r;
  r.units = shown->value.output;
  add_solve_checks(r, shown->value, shown->findings);
  r.machine_heading = "Variant " + std::to_string(shown->id + 1) + ", the one with the least " + words_for(trade.price);
  r.checks_heading = "Limits of variant " + std::to_string(shown->id + 1);
  r.warnings = shown->findings.warnings;
  r.assumptions = shown->findings.assumptions;
  r.assumptions.insert(r.assumptions.end(), shown->value.assumptions.begin(), shown->value.assumptions.end());
  add_machine(r, shown->value.machine, shown->findings);
  return r;
}

} // namespace bedbow
