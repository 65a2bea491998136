/// \file
/// Computes the missing variants of a sweep on all cores and stores them as they arrive.
#pragma once

#include "io/sweep/variant.h"
#include "io/sweep/variant_store.h"

#include <atomic>
#include <functional>

namespace bedbow {

struct SweepProgress {
  std::uint64_t done = 0, total = 0; ///< of this shard, including earlier ones
  std::uint64_t failed = 0;          ///< of those computed now
  double rate = 0;                   ///< variants per second of this run
  double seconds_left = 0;           ///< NaN before anything is known
  std::optional<VariantResult> best; ///< cheapest (else lightest) that passes so far
};

struct SweepRun {
  Shard shard;
  int threads = 0;                                    ///< 0: all of the machine's
  const std::atomic<bool>* stop = nullptr;            ///< when it becomes true, variants in progress are completed
  std::function<void(const SweepProgress&)> progress; ///< called after each transaction, in the calling thread
};

/// Workers take variants in order and hand them over; the calling thread writes new results every quarter of a
/// second, in one transaction. So results do not depend on the number of threads, nor memory on that of variants.
/// \return whether everything has been computed. Throws FileError when the store does; earlier additions are kept.
bool run_sweep(const VariantMaker& maker, VariantStore& store, const SweepRun& run);

/// Whether `a` is preferred: it costs less, or where one has no cost, weighs less.
bool is_better(const VariantResult& a, const VariantResult& b);

} // namespace bedbow
