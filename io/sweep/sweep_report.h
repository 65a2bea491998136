/// \file
/// Results of a sweep: one CSV row per variant, the summary, the trade-off front and its picture.
#pragma once

#include "io/draw/plot.h"
#include "io/sweep/variant_store.h"
#include "io/text/style.h"
#include "solver/study/sweep_space.h"

#include <filesystem>
#include <string>
#include <vector>

namespace bedbow {

/// Writes all variants in order, completely or not at all, a row at a time. Throws FileError.
void write_sweep_csv(const VariantStore& store, const std::filesystem::path& file);

/// The two quantities of the front: cost where variants have one, else mass, against angle spread, else clamp bow.
struct Trade {
  Figure price = Figure::mass, quality = Figure::angle_spread;
  bool passing = true; ///< among those that pass; among all that could be solved where none does
};
Trade trade_of(const VariantStore& store);

/// Variants that no other beats in both, from the cheapest to the best.
std::vector<VariantResult> trade_off_front(const VariantStore& store, const Trade& trade);

/// Counts, cheapest and lightest that pass, front, and Sobol's first-order shares, for a terminal of 100 columns.
/// \param space the sweep's, to find the rows of a variant. \param names of the varied quantities.
std::string sweep_summary(const VariantStore& store, const SweepSpace& space, const std::vector<std::string>& names,
                          const Style& style);

/// The front among all variants.
Plot front_plot(const VariantStore& store, const std::string& title);

/// The same as SVG.
std::string front_svg(const VariantStore& store, const std::string& title);

} // namespace bedbow
