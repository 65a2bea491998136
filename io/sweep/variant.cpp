#include "io/sweep/variant.h"

#include "io/case/fault_text.h"
#include "io/files/errors.h"
#include "io/results/reason_text.h"
#include "io/units/quantities_out.h"
#include "solver/analysis.h"
#include "solver/sheet/sheet_law.h"
#include "solver/study/cost.h"

#include <chrono>
#include <limits>

namespace bedbow {

namespace {

std::vector<std::size_t> counts_of(const std::vector<SweepVary>& vary) {
  std::vector<std::size_t> out;
  for (const SweepVary& v : vary) out.push_back(v.rows.size());
  return out;
}

std::vector<Fault> faults_of(const Machine& machine, const Registries& registries) {
  return buildable(machine, registries.shapes, known_springback(machine, registries.moment_laws));
}

std::string first_error(const CaseError& error) {
  for (const Problem& p : error.problems())
    if (p.severity == Severity::error) return (p.key.empty() ? "" : p.key + ": ") + p.text;
  return error.what();
}

} // namespace

std::string as_given(const CaseNode& value) {
  return value.type == CaseNode::Type::list || value.type == CaseNode::Type::table ||
                 value.type == CaseNode::Type::boolean
             ? shown(value)
             : value.text;
}

void fill_figures(const SummaryMetrics& h, double cost, VariantResult& out) {
  out[Figure::bed_bow] = to_mm(h.bow[static_cast<std::size_t>(BodyKind::bed)]);
  out[Figure::clamp_bow] = to_mm(h.bow[static_cast<std::size_t>(BodyKind::clamp)]);
  out[Figure::apron_bow] = to_mm(h.bow[static_cast<std::size_t>(BodyKind::apron)]);
  out[Figure::clamp_straightness] = to_mm(h.straightness[static_cast<std::size_t>(BodyKind::clamp)]);
  out[Figure::angle_mean] = to_deg(h.angle_mean);
  out[Figure::angle_spread] = to_deg(h.angle_spread);
  out[Figure::utilisation] = h.utilisation;
  out[Figure::buckling_factor] = h.buckling;
  out[Figure::mass] = h.mass;
  out[Figure::cost] = cost;
  out.utilisation_at = h.utilisation_at;
  out.pass = h.pass;
  out.message = reasons_line(h.reasons, {});
}

VariantMaker::VariantMaker(const Case& base, const Registries& registries)
    : registries_(registries)
    , drawn_(faults_of(base.machine, registries))
    , source_(base.source)
    , vary_(base.sweep.vary)
    , space_(counts_of(vary_), base.sweep.sample, base.sweep.seed) {
  std::erase_if(source_.root.entries, [](const CaseEntry& e) { return e.key == "sweep" || e.key == "fit"; });
  for (const SweepVary& v : vary_) keys_.insert(keys_.end(), v.keys.begin(), v.keys.end());
}

VariantResult VariantMaker::make(std::uint64_t id, SubstructureCache* parts) const {
  const auto start = std::chrono::steady_clock::now();
  VariantResult out;
  out.id = id;
  out.figures.fill(std::numeric_limits<double>::quiet_NaN());
  try {
    analyse_into(id, parts, out);
  } catch (const CaseError& e) {
    out.failed = true;
    out.message = first_error(e);
  } catch (const std::bad_alloc&) {
    throw;
  } catch (const std::exception& e) {
    out.failed = true;
    out.message = e.what();
  }
  out.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  return out;
}

std::vector<std::pair<std::string, CaseNode>> VariantMaker::values(std::uint64_t id) const {
  std::vector<std::pair<std::string, CaseNode>> out;
  const std::vector<std::size_t> rows = space_.rows(id);
  for (std::size_t k = 0; k < vary_.size(); ++k)
    for (std::size_t i = 0; i < vary_[k].keys.size(); ++i)
      out.emplace_back(vary_[k].keys[i], vary_[k].rows[rows[k]][i]);
  return out;
}

Case VariantMaker::understood(std::uint64_t id) const {
  return understand(with_values(source_, values(id)), registries_);
}

void VariantMaker::analyse_into(std::uint64_t id, SubstructureCache* parts, VariantResult& out) const {
  for (const auto& [key, value] : values(id)) out.inputs.push_back(as_given(value));
  const Case variant = understood(id);
  AnalysisOptions options;
  options.fields = false;
  options.parts = parts;
  const Findings f = analyse(variant.machine, registries_, options);
  if (f.status != Status::ok) {
    out.failed = true;
    out.message = f.trouble;
    return;
  }
  fill_figures(headline(f), material_cost(variant.machine, variant.stock, registries_.shapes).total, out);
  std::vector<Fault> faults = new_faults(faults_of(variant.machine, registries_), drawn_);
  std::erase_if(faults, &Fault::tight); // it can be made; its figures hold
  if (faults.empty()) return;
  out.pass = false;
  out.message = "can't be built: " + faults_line(faults, {}) + (out.message.empty() ? "" : "; ") + out.message;
}

} // namespace bedbow
