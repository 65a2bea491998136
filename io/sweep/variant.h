/// \file
/// One variant of a case: its inputs applied, read, analysed, and its headline results.
#pragma once

#include "io/case/case_reader.h"
#include "io/sweep/variant_store.h"
#include "mesh/check/buildable.h"
#include "solver/study/summary_metrics.h"
#include "solver/study/sweep_space.h"

namespace bedbow {

class SubstructureCache;

/// Everything that variants share. Tables not needed to read a variant ([sweep], [fit]) are removed from the source.
class VariantMaker {
public:
  /// Throws std::invalid_argument where the case has nothing to vary.
  VariantMaker(const Case& base, const Registries& registries);
  [[nodiscard]] const SweepSpace& space() const { return space_; }
  [[nodiscard]] const std::vector<std::string>& keys() const { return keys_; }
  /// Computes one. Any error becomes its message; only lack of memory is thrown.
  /// \param parts of earlier variants, one cache a thread; null: each by itself. The result is the same to the bit.
  [[nodiscard]] VariantResult make(std::uint64_t id, SubstructureCache* parts = nullptr) const;
  /// The case of one, as `make` analyses it. Throws CaseError where its values are invalid.
  [[nodiscard]] Case understood(std::uint64_t id) const;

private:
  [[nodiscard]] std::vector<std::pair<std::string, CaseNode>> values(std::uint64_t id) const;
  void analyse_into(std::uint64_t id, SubstructureCache* parts, VariantResult& out) const;

  const Registries& registries_;
  std::vector<Fault> drawn_; ///< of the case itself
  CaseSource source_;
  std::vector<SweepVary> vary_;
  std::vector<std::string> keys_;
  SweepSpace space_;
};

/// A value as its case gives it: a string without quotes, everything else as in TOML.
std::string as_given(const CaseNode& value);

/// SummaryMetrics and cost in units of result files.
void fill_figures(const SummaryMetrics& headline, double cost, VariantResult& out);

} // namespace bedbow
