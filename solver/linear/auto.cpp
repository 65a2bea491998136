#include "solver/linear/auto.h"

#include "solver/linear/band.h"
#include "solver/linear/graph.h"
#include "solver/linear/multifrontal.h"

#include <numeric>

namespace bedbow {

namespace {

// Order of the unknowns for the envelope solver (empty: as numbered), and its work in multiply-adds.
struct BandPlan {
  std::vector<int> order;
  double work = 0;
};

BandPlan plan_band(const SymmetricMatrix& lower, const FactorHints& hints) {
  const linear::Quotient q = linear::quotient(lower);
  std::vector<int> natural(q.graph.size());
  std::iota(natural.begin(), natural.end(), 0);
  BandPlan plan{{}, linear::envelope_work(q, natural)};
  if (hints.banded_order) return plan;
  const std::vector<int> narrow = linear::reverse_cuthill_mckee(q.graph);
  const double work = linear::envelope_work(q, narrow);
  if (work < plan.work) plan = {linear::expand(narrow, q.first), work};
  return plan;
}

FactorOutcome factor_band(const SymmetricMatrix& lower, const FactorHints& hints, const BandPlan& plan) {
  auto f = std::make_unique<BandLdlt>(lower, plan.order);
  if (auto broken = f->factor(lower, hints.positive)) return {nullptr, broken->unknown, std::move(broken->mechanism)};
  return {std::move(f), -1, {}};
}

} // namespace

FactorOutcome band_factor(const SymmetricMatrix& lower, const FactorHints& hints) {
  return factor_band(lower, hints, plan_band(lower, hints));
}

FactorOutcome auto_factor(const SymmetricMatrix& lower, const FactorHints& hints) {
  constexpr double small = 5e7; // multiply-adds: about five milliseconds
  const BandPlan plan = plan_band(lower, hints);
  return plan.work <= small ? factor_band(lower, hints, plan) : multifrontal_factor(lower, hints);
}

} // namespace bedbow
