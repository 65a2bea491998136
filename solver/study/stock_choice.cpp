#include "solver/study/stock_choice.h"

#include "mesh/machine/bar_box.h"
#include "mesh/machine/contacts.h"
#include "mesh/machine/stack.h"
#include "solver/analysis.h"
#include "solver/sheet/sheet_law.h"
#include "solver/study/cost.h"
#include "solver/study/worker_pool.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <queue>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr std::size_t batch = 32; // machines tried at a time; the first of them that passes counts

struct Candidate {
  StockPick pick;
  double price = 0, mass = 0; ///< of this bar
};

struct Outcome {
  bool pass = false;
  SummaryMetrics headline;
  std::string trouble;
  std::vector<Fault> faults; ///< not solved where there are any
  [[nodiscard]] bool solved() const { return faults.empty(); }
};

/// Whether a fault follows from the size of one bar alone: the flange, or a post or cam at a place of its own, is off
/// it. Then no choice of other bars makes it buildable. (A row of screws may stand where two bars meet.)
bool is_of_one_bar(const Fault& f) {
  const bool placed = f.key.starts_with("post.") || f.key.starts_with("cam.");
  return f.kind == FaultKind::flange_off_face || (f.kind == FaultKind::off_bar && placed);
}

Outcome judge_picks(const Machine& machine, std::span<const StockItem> stock, const Registries& registries,
                    std::span<const StockPick> picks) {
  Outcome out;
  try {
    const Machine built = with_stock(machine, stock, picks, registries.shapes);
    out.faults = buildable(built, registries.shapes, known_springback(built, registries.moment_laws));
    if (!out.faults.empty()) return out;
    AnalysisOptions options;
    options.fields = false;
    const Findings f = analyse(built, registries, options);
    if (f.status != Status::ok) return {false, {}, f.trouble, {}};
    out.headline = headline(f);
    out.pass = out.headline.pass;
  } catch (const std::invalid_argument& e) { // inconsistent sizes
    out.trouble = e.what();
  }
  return out;
}

/// All ways to make one bar from stock, from the cheapest (lightest) upwards.
std::vector<Candidate> candidates_for(const Machine& machine, const Ref& ref, std::span<const StockItem> stock,
                                      const Registry<ShapeEntry>& shapes, StockGoal goal) {
  std::vector<Candidate> out;
  const Bar& bar = machine.bar(ref);
  for (std::size_t i = 0; i < stock.size(); ++i) {
    Candidate c;
    c.price = price_per_metre(stock[i], shapes) * bar.length;
    c.mass = section_area(stock[i].shape, shapes) * stock[i].material.density * bar.length;
    if (goal == StockGoal::cheapest && !std::isfinite(c.price)) continue;
    c.pick = {ref, i, stock[i].shape};
    out.push_back(c);
    const bool two_ways = c.pick.shape.kind == "rectangle" || c.pick.shape.kind == "tube";
    if (two_ways && c.pick.shape.width != c.pick.shape.height) {
      std::swap(c.pick.shape.width, c.pick.shape.height);
      out.push_back(c);
    }
  }
  const auto key = [&](const Candidate& c) { return goal == StockGoal::cheapest ? c.price : c.mass; };
  std::ranges::stable_sort(out, {}, key);
  if (out.empty()) throw std::invalid_argument("no [[stock]] with a price for bar " + machine.name_of(ref));
  return out;
}

/// BarSearch over one list of candidates per bar.
class BarSearch {
public:
  BarSearch(const Machine& machine, std::span<const StockItem> stock, const Registries& registries,
            const StockTask& task)
      : machine_(machine)
      , stock_(stock)
      , registries_(registries)
      , task_(task) {
    for (const Ref& bar : task.bars) rows_.push_back(candidates_for(machine, bar, stock, registries.shapes, task.goal));
  }

  StockChoice run() {
    rule_out();
    for (const auto& row : rows_)
      if (row.empty()) return std::move(out_);
    climb();
    return std::move(out_);
  }

private:
  using Index = std::vector<std::size_t>;
  struct State {
    double value = 0;
    Index at;
    std::size_t last = 0; ///< first position that may still increase: each combination occurs once
    bool operator>(const State& o) const { return value != o.value ? value > o.value : at > o.at; }
  };

  [[nodiscard]] double value(const Index& at) const {
    double sum = 0;
    for (std::size_t k = 0; k < at.size(); ++k) {
      const Candidate& c = rows_[k][at[k]];
      sum += task_.goal == StockGoal::cheapest ? c.price : c.mass;
    }
    return sum;
  }
  [[nodiscard]] std::vector<StockPick> picks(const Index& at) const {
    std::vector<StockPick> p;
    for (std::size_t k = 0; k < at.size(); ++k) p.push_back(rows_[k][at[k]].pick);
    return p;
  }

  /// The heaviest for a bar; of its two orientations, that of the case's bar: a plate on edge is heavy, but not a
  /// plate.
  [[nodiscard]] std::size_t heaviest(std::size_t k) const {
    const std::vector<Candidate>& row = rows_[k];
    const Shape& own = machine_.bar(task_.bars[k]).shape;
    const auto stands = [](const Shape& shape) { return shape.height > shape.width; };
    std::size_t best = 0;
    for (std::size_t i = 1; i < row.size(); ++i) {
      const auto key = [&](std::size_t j) { return std::pair(row[j].mass, stands(row[j].pick.shape) == stands(own)); };
      if (key(i) > key(best)) best = i;
    }
    return best;
  }

  /// Drops candidates of a bar that do not pass even with the heaviest bars elsewhere. One that can't be built with
  /// those may still be built with others, unless the fault is its own.
  void rule_out() {
    Index strong;
    for (std::size_t k = 0; k < rows_.size(); ++k) strong.push_back(heaviest(k));
    std::vector<std::pair<std::size_t, std::size_t>> tries;
    for (std::size_t k = 0; k < rows_.size(); ++k)
      for (std::size_t i = 0; i < rows_[k].size(); ++i) tries.emplace_back(k, i);
    std::vector<char> good(tries.size()), solved(tries.size());
    for_each_index(tries.size(), task_.threads, [&](std::uint64_t t) {
      Index at = strong;
      at[tries[t].first] = tries[t].second;
      const Outcome outcome = judge_picks(machine_, stock_, registries_, picks(at));
      const auto own = [&](const Fault& f) { return is_of_one_bar(f) && concerns(f, task_.bars[tries[t].first]); };
      good[t] = outcome.pass || (!outcome.solved() && std::ranges::none_of(outcome.faults, own));
      solved[t] = outcome.solved();
    });
    out_.tries += std::ranges::count(solved, 1);
    explain(judge_picks(machine_, stock_, registries_, picks(strong)));
    std::vector<std::vector<Candidate>> kept(rows_.size());
    for (std::size_t t = 0; t < tries.size(); ++t)
      if (good[t]) kept[tries[t].first].push_back(rows_[tries[t].first][tries[t].second]);
    rows_ = std::move(kept);
  }

  [[nodiscard]] bool concerns(const Fault& f, const Ref& bar) const {
    const std::string name = machine_.name_of(bar);
    return f.part == name || f.other == name;
  }

  void explain(const Outcome& heaviest) {
    out_.reasons = heaviest.headline.reasons;
    out_.trouble = heaviest.trouble;
    out_.faults = heaviest.faults;
  }

  /// Combinations by increasing value, from a heap: the best first.
  void climb() {
    std::priority_queue<State, std::vector<State>, std::greater<>> heap;
    const Index first(rows_.size(), 0);
    heap.push({value(first), first, 0});
    while (!heap.empty()) {
      if (out_.tries >= task_.most_tries) {
        out_.complete = false;
        return;
      }
      std::vector<State> now;
      while (!heap.empty() && now.size() < batch) {
        now.push_back(heap.top());
        heap.pop();
        push_next(now.back(), heap);
      }
      std::vector<Outcome> outcomes(now.size());
      for_each_index(now.size(), task_.threads, [&](std::uint64_t i) {
        outcomes[i] = judge_picks(machine_, stock_, registries_, picks(now[i].at));
      });
      const auto solved = std::ranges::count_if(outcomes, &Outcome::solved);
      out_.tries += solved;
      out_.unbuildable += static_cast<long>(now.size()) - solved;
      for (std::size_t i = 0; i < now.size(); ++i)
        if (outcomes[i].pass) return settle(now[i].at, outcomes[i]);
    }
  }

  void push_next(const State& s, auto& heap) const {
    for (std::size_t k = s.last; k < s.at.size(); ++k) {
      if (s.at[k] + 1 >= rows_[k].size()) continue;
      State next{0, s.at, k};
      ++next.at[k];
      next.value = value(next.at);
      heap.push(std::move(next));
    }
  }

  void settle(const Index& at, const Outcome& outcome) {
    out_.found = true;
    out_.picks = picks(at);
    out_.headline = outcome.headline;
    out_.cost =
        material_cost(with_stock(machine_, stock_, out_.picks, registries_.shapes), stock_, registries_.shapes).total;
  }

  const Machine& machine_;
  std::span<const StockItem> stock_;
  const Registries& registries_;
  const StockTask& task_;
  std::vector<std::vector<Candidate>> rows_;
  StockChoice out_;
};

int material_index(Machine& m, const Material& material) {
  const auto it = std::ranges::find(m.materials, material.name, &Material::name);
  if (it != m.materials.end()) return static_cast<int>(it - m.materials.begin());
  m.materials.push_back(material);
  return static_cast<int>(m.materials.size()) - 1;
}

/// Moves a bar so that the corner of its box nearest to the bend line stays.
void keep_corner(Bar& bar, const Shape& shape, const Registry<ShapeEntry>& shapes) {
  const auto before = bar_box(bar, shapes);
  bar.shape = shape;
  const auto own = shape_box(shape, shapes);
  if (!before || !own) throw std::invalid_argument("bar " + bar.name + " has a shape of unknown size");
  for (int k = 0; k < 2; ++k) {
    const bool lower = std::abs(before->lower[k]) <= std::abs(before->upper[k]);
    bar.at[k] = lower ? before->lower[k] - own->lower[k] : before->upper[k] - own->upper[k];
  }
}

} // namespace

Machine with_stock(const Machine& machine, std::span<const StockItem> stock, std::span<const StockPick> picks,
                   const Registry<ShapeEntry>& shapes) {
  Machine out = machine;
  stack_what_touches(out, shapes);
  for (const StockPick& p : picks) {
    Bar& bar = out.body(p.bar.body).bars.at(static_cast<std::size_t>(p.bar.index));
    if (bar.stack)
      bar.shape = p.shape;
    else
      keep_corner(bar, p.shape, shapes);
    bar.material = material_index(out, stock[p.item].material);
  }
  for (const Problem& problem : apply_stacks(out, shapes))
    throw std::invalid_argument(problem.key + ": " + problem.text);
  return out;
}

StockChoice choose_stock(const Machine& machine, std::span<const StockItem> stock, const Registries& registries,
                         const StockTask& task) {
  if (task.bars.empty()) throw std::invalid_argument("no bars to choose");
  return BarSearch(machine, stock, registries, task).run();
}

std::vector<std::vector<std::size_t>> cut_plan(std::span<const double> pieces, double bar, double kerf) {
  std::vector<std::size_t> order(pieces.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, std::greater<>(), [&](std::size_t i) { return pieces[i]; });
  std::vector<std::vector<std::size_t>> bars;
  std::vector<double> room;
  constexpr double hair = 1e-9;
  for (const std::size_t i : order) {
    if (pieces[i] > bar + hair)
      throw std::invalid_argument("a piece is longer than the bar from which it is to be cut");
    std::size_t b = 0;
    while (b < bars.size() && room[b] + hair < pieces[i]) ++b;
    if (b == bars.size()) {
      bars.emplace_back();
      room.push_back(bar);
    }
    bars[b].push_back(i);
    room[b] -= pieces[i] + kerf;
  }
  return bars;
}

} // namespace bedbow
