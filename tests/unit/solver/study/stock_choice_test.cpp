// `stock` once recommended machines that could not be built: a web under the top that ended before it, cams and posts
// off both bars, a flange beside the face. Now a machine with a fault is ruled out, and the choice is held to an
// exhaustive search of small racks: every combination, built, looked at and solved by itself.
#include "io/case/case_reader.h"
#include "mesh/machine/bar_box.h"
#include "mesh/machine/contacts.h"
#include "solver/analysis.h"
#include "solver/sheet/sheet_law.h"
#include "solver/study/cost.h"
#include "solver/study/stock_choice.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

namespace {

const Registries& registries() {
  static const Registries r = builtin_registries();
  return r;
}

Case rack_case() {
  Case c = read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid-stock/case.toml", registries());
  c.machine.solve.element_size = 0.06;
  return c;
}

std::vector<StockItem> items(const Case& c, std::initializer_list<const char*> names) {
  std::vector<StockItem> out;
  for (const char* name : names)
    for (const StockItem& item : c.stock)
      if (item.name == name) out.push_back(item);
  return out;
}

Ref bar_named(const Machine& m, BodyKind body, const std::string& name) {
  for (std::size_t i = 0; i < m.body(body).bars.size(); ++i)
    if (m.body(body).bars[i].name == name) return {Ref::Kind::bar, body, static_cast<int>(i)};
  throw std::invalid_argument("no bar " + name);
}

/// What one combination costs; NaN where it has a fault or does not pass.
double worth(const Machine& machine, const std::vector<StockItem>& stock, const std::vector<StockPick>& picks,
             StockGoal goal) {
  const Machine built = with_stock(machine, stock, picks, registries().shapes);
  if (!buildable(built, registries().shapes, known_springback(built, registries().moment_laws)).empty()) return NAN;
  AnalysisOptions options;
  options.fields = false;
  const Findings f = analyse(built, registries(), options);
  if (f.status != Status::ok || !headline(f).pass) return NAN;
  double out = 0;
  for (const StockPick& p : picks) {
    const StockItem& item = stock[p.item];
    const double length = machine.bar(p.bar).length;
    out += goal == StockGoal::cheapest
               ? *item.price_per_metre * length
               : item.shape.width * item.shape.height * item.material.density * length; // flat bars
  }
  return out;
}

struct Exhausted {
  double best = NAN;
  int passing = 0, all = 0;
};

/// Every item for every bar, lying and on edge.
void exhaust(const Machine& m, const std::vector<StockItem>& stock, const StockTask& task,
             std::vector<StockPick>& picks, Exhausted& out) {
  if (picks.size() == task.bars.size()) {
    const double here = worth(m, stock, picks, task.goal);
    ++out.all;
    if (std::isnan(here)) return;
    ++out.passing;
    out.best = std::fmin(out.best, here);
    return;
  }
  for (std::size_t i = 0; i < stock.size(); ++i)
    for (const bool on_edge : {false, true}) {
      Shape shape = stock[i].shape;
      if (on_edge) std::swap(shape.width, shape.height);
      picks.push_back({task.bars[picks.size()], i, shape});
      exhaust(m, stock, task, picks, out);
      picks.pop_back();
    }
}

void expect_as_exhausted(const Machine& m, const std::vector<StockItem>& stock, const std::vector<Ref>& bars) {
  for (const StockGoal goal : {StockGoal::cheapest, StockGoal::lightest}) {
    StockTask task;
    task.bars = bars;
    task.goal = goal;
    Exhausted all;
    std::vector<StockPick> picks;
    exhaust(m, stock, task, picks, all);
    ASSERT_GT(all.passing, 0);
    ASSERT_LT(all.passing, all.all); // a rack on which everything passes proves nothing
    const StockChoice choice = choose_stock(m, stock, registries(), task);
    ASSERT_TRUE(choice.found);
    EXPECT_NEAR(worth(m, stock, choice.picks, goal), all.best, 1e-9 * all.best);
  }
}

TEST(StockChoice, AsAnExhaustiveSearchOfTheClamp) {
  const Case c = rack_case();
  expect_as_exhausted(c.machine, items(c, {"flat 120 x 20", "flat 100 x 20", "flat 60 x 12"}),
                      {bar_named(c.machine, BodyKind::clamp, "plate"), bar_named(c.machine, BodyKind::clamp, "rib")});
}

TEST(StockChoice, AsAnExhaustiveSearchOfTheBed) {
  const Case c = rack_case();
  expect_as_exhausted(c.machine, items(c, {"flat 120 x 20", "flat 80 x 20", "flat 80 x 16"}),
                      {bar_named(c.machine, BodyKind::bed, "top"), bar_named(c.machine, BodyKind::bed, "web")});
}

TEST(StockChoice, AsAnExhaustiveSearchOfRibsAndFace) {
  const Case c = rack_case();
  expect_as_exhausted(c.machine, items(c, {"flat 80 x 20", "flat 60 x 12"}),
                      {bar_named(c.machine, BodyKind::apron, "face"), bar_named(c.machine, BodyKind::apron, "rib"),
                       bar_named(c.machine, BodyKind::clamp, "rib")});
}

// Drawn by places alone, the web of a machine once stayed where it was when the top above it became thinner.
TEST(StockChoice, WhatTouchesFollows) {
  Case c = rack_case();
  Machine m = c.machine;
  for (Body& body : m.bodies)
    for (Bar& bar : body.bars) bar.stack.reset(); // `at` says the same
  const auto stock = items(c, {"flat 80 x 16", "flat 60 x 12"});
  const Ref top = bar_named(m, BodyKind::bed, "top"), web = bar_named(m, BodyKind::bed, "web");
  const Machine built = with_stock(m, stock, std::vector<StockPick>{{top, 0, stock[0].shape}}, registries().shapes);
  const auto upper = bar_box(built.bar(top), registries().shapes), lower = bar_box(built.bar(web), registries().shapes);
  EXPECT_NEAR(upper->lower.y(), -0.016, 1e-12);
  EXPECT_NEAR(lower->upper.y(), -0.016, 1e-12);
  EXPECT_NEAR(lower->lower.y(), -0.136, 1e-12); // its own 120 mm
}

TEST(StockChoice, WhatOnlyLooksJoinedStays) {
  Case c = rack_case();
  Machine m = c.machine;
  for (Bar& bar : m.body(BodyKind::bed).bars) bar.stack.reset();
  m.screws.erase(m.screws.begin()); // of top and web
  stack_what_touches(m, registries().shapes);
  EXPECT_FALSE(m.bar(bar_named(m, BodyKind::bed, "web")).stack);
}

// Nothing on the rack carries the cams: the answer says so instead of solving it.
TEST(StockChoice, SaysWhyNothingCanBeBuilt) {
  const Case c = rack_case();
  StockTask task;
  task.bars = {bar_named(c.machine, BodyKind::bed, "top")};
  const StockChoice choice = choose_stock(c.machine, items(c, {"flat 80 x 20"}), registries(), task);
  EXPECT_FALSE(choice.found);
  EXPECT_EQ(choice.tries, 0);
  ASSERT_FALSE(choice.faults.empty());
  EXPECT_EQ(choice.faults.front().other, "bed.top");
}

} // namespace

} // namespace bedbow
