#include "solver/conformance/conformance.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace bedbow {

bool Conformance::pass() const {
  return !checks.empty() && std::ranges::all_of(checks, &ProofCheck::pass);
}

void Conformance::at_most(std::string what, double value, double allowed, std::string note) {
  checks.push_back({std::move(what), value, allowed, value <= allowed, std::move(note)});
}

void Conformance::at_least(std::string what, double value, double allowed, std::string note) {
  checks.push_back({std::move(what), value, allowed, value >= allowed, std::move(note)});
}

void Conformance::failed(std::string what, std::string note) {
  checks.push_back({std::move(what), 0, 0, false, std::move(note)});
}

namespace {

/// Proves an entry of that name, if the registry has one. An exception is a failed check.
template <class Entry, class Prover>
void check_in(const Registry<Entry>& registry, const std::string& name, Prover prover, std::vector<Conformance>& out) {
  const Entry* entry = registry.find(name);
  if (!entry) return;
  Conformance proof;
  try {
    proof = prover(*entry);
  } catch (const std::exception& e) {
    proof.failed("answers", e.what());
  }
  proof.kind = registry.kind();
  proof.name = entry->name;
  proof.origin = entry->origin;
  out.push_back(std::move(proof));
}

} // namespace

std::vector<Conformance> check_conformance(const std::string& name, const Registries& registries) {
  std::vector<Conformance> out;
  check_in(registries.shapes, name, check_shape, out);
  check_in(registries.moment_laws, name, check_law, out);
  check_in(registries.elements, name, check_element, out);
  check_in(registries.linear_solvers, name, check_solver, out);
  if (out.empty())
    throw std::invalid_argument(
        "unknown entry \"" + name + "\"; available: section shapes: " + registries.shapes.names() +
        "; moment laws: " + registries.moment_laws.names() + "; elements: " + registries.elements.names() +
        "; linear solvers: " + registries.linear_solvers.names());
  return out;
}

} // namespace bedbow
