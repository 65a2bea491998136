/// \file
/// Which bars to buy: the cheapest, or the lightest, machine that passes, built from stock.
#pragma once

#include "mesh/check/buildable.h"
#include "mesh/machine/stock.h"
#include "mesh/piece/choice.h"
#include "solver/registry/registries.h"
#include "solver/study/summary_metrics.h"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bedbow {

enum class StockGoal { cheapest, lightest };
inline constexpr std::array stock_goals{Choice{"cheapest", StockGoal::cheapest},
                                        Choice{"lightest", StockGoal::lightest}};

struct StockTask {
  std::vector<Ref> bars; ///< to be chosen, of kind `bar`
  StockGoal goal = StockGoal::cheapest;
  long most_tries = 50000; ///< machines analysed at most
  int threads = 0;         ///< 0: all of the machine's
};

/// Stock chosen for one bar.
struct StockPick {
  Ref bar;
  std::size_t item = 0; ///< of the stock
  Shape shape;          ///< as used in the bar: a flat bar may stand or lie
};

struct StockChoice {
  bool found = false;
  bool complete = true; ///< every machine that is better by the goal was tried or ruled out
  std::vector<StockPick> picks;
  SummaryMetrics headline;
  double cost = 0;             ///< of all bars and members [currency of the stock]; NaN where a price is missing
  long tries = 0;              ///< machines analysed
  std::vector<Reason> reasons; ///< why even the heaviest bars do not pass
  std::string trouble;         ///< why they could not be solved
  std::vector<Fault> faults;   ///< why they can't be built
  long unbuildable = 0;        ///< machines passed over because they can't be built, or not well
};

/// The machine with bars of these sizes. A bar with a `stack`, or one that touches a bar of its body and is joined to
/// it, follows its neighbour; any other keeps the corner nearest to the bend line (the bed its front top edge, the
/// clamp its lower face).
Machine with_stock(const Machine& machine, std::span<const StockItem> stock, std::span<const StockPick> picks,
                   const Registry<ShapeEntry>& shapes);

/// Tries machines from the cheapest (lightest) upwards until one passes, so that the first is the best. Stock that
/// does not pass for a bar even when all other bars are the heaviest is excluded beforehand: this assumes that heavier
/// bars elsewhere never make a machine worse. A machine with any Fault is ruled out and not solved. The same for
/// any number of threads.
/// Throws std::invalid_argument where there is nothing to choose from.
StockChoice choose_stock(const Machine& machine, std::span<const StockItem> stock, const Registries& registries,
                         const StockTask& task);

/// Assigns pieces to bars of the sold length, the longest first, each to the first bar with room.
/// \param pieces lengths [m]. \param bar length of one bar [m]. \param kerf lost by a cut [m].
/// \return by bar: indices of its pieces. Throws std::invalid_argument where a piece is longer than a bar.
std::vector<std::vector<std::size_t>> cut_plan(std::span<const double> pieces, double bar, double kerf);

} // namespace bedbow
