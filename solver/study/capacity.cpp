#include "solver/study/capacity.h"

#include "solver/findings/limited.h"
#include "solver/study/summary_metrics.h"
#include "solver/study/worker_pool.h"

#include <cmath>
#include <limits>
#include <memory>
#include <mutex>
#include <stdexcept>

namespace bedbow {

namespace {

/// How near a sheet comes to the limits: the greatest ratio of value to limit, and its quantity.
struct Strain {
  double ratio = 0;
  std::string what;
  void look(double value, const std::optional<double>& limit, const std::string& name) {
    if (!limit || !clearly_greater(value / *limit, ratio)) return;
    ratio = value / *limit;
    what = name;
  }
};

Strain strain_of(const Findings& f, const Limits& limits) {
  if (f.status != Status::ok) return {std::numeric_limits<double>::infinity(), f.trouble};
  const SummaryMetrics h = headline(f);
  Strain s;
  for (const Limited& l : limited_values()) s.look(greatest(l, f.steps).value, limits.*l.limit, l.name);
  const bool joint = h.utilisation_at.find(' ') != std::string::npos;
  s.look(h.utilisation, limit_or_usual(limits, &Limits::utilisation), (joint ? "" : "stress in ") + h.utilisation_at);
  for (const StepResult& step : f.steps)
    for (const Reason& r : step.displaced) s.look(r.value, r.limit, r.check + " of the " + r.part);
  return s;
}

/// "bow, angle, ..."
std::string keys_of_step_limits() {
  std::string out;
  for (const LimitKind& kind : limit_kinds)
    if (kind.of_steps) out.append(out.empty() ? "" : ", ").append(kind.key);
  return out;
}

/// ThicknessSearch on the grid of steps between thinnest and thickest. Loads are roughly proportional to the square of
/// the thickness, so the next guess comes from ratio and thickness squared; bisection where that does not shrink the
/// bracket.
class ThicknessSearch {
public:
  ThicknessSearch(PreparedMachine& machine, const Limits& limits, const CapacityTask& task)
      : machine_(machine)
      , limits_(limits)
      , task_(task)
      , first_(static_cast<long>(std::ceil(task.thinnest / task.step - 1e-9)))
      , last_(static_cast<long>(std::floor(task.thickest / task.step + 1e-9))) {}

  /// Stresses take as long as everything else and seldom govern: they are checked where displacements already permit a
  /// sheet.
  Capacity of(const SheetPlace& place, int material) {
    SlipBounds b{first_ - 1, last_ + 1, 0, {}};
    close_in(place, material, PreparedMachine::Look::movements, b);
    if (b.good >= first_) {
      const Strain s = strain(place, material, b.good, PreparedMachine::Look::stresses);
      if (s.ratio > 1) {
        b = {first_ - 1, b.good, 0, s};
        close_in(place, material, PreparedMachine::Look::stresses, b);
      }
    }
    Capacity out{place, material, std::numeric_limits<double>::quiet_NaN(), b.worst.what};
    if (b.good >= first_) out.thickness = static_cast<double>(b.good) * task_.step;
    if (b.bad > last_) out.limited_by = "nothing up to the greatest thickness searched";
    return out;
  }

private:
  struct SlipBounds {
    long good, bad; ///< steps: within limits, beyond them
    double good_ratio;
    Strain worst; ///< at bad
  };

  Strain strain(const SheetPlace& place, int material, long step, PreparedMachine::Look look) {
    const double thickness = static_cast<double>(step) * task_.step;
    return strain_of(machine_.solve(place, material, thickness, look), limits_);
  }

  void close_in(const SheetPlace& place, int material, PreparedMachine::Look look, SlipBounds& b) {
    for (int steps = 0; b.bad - b.good > 1; ++steps) {
      const long next = guess(b, steps);
      const Strain s = strain(place, material, next, look);
      if (s.ratio <= 1) {
        b.good = next;
        b.good_ratio = s.ratio;
      } else {
        b.bad = next;
        b.worst = s;
      }
    }
  }

  /// The step at which the ratio should be 1, by a parabola through the ends of the bracket; inside it.
  [[nodiscard]] long guess(const SlipBounds& b, int steps) const {
    const long middle = b.good + (b.bad - b.good) / 2;
    const bool lower = b.good >= first_, upper = b.bad <= last_ && std::isfinite(b.worst.ratio);
    double at = static_cast<double>(middle);
    const auto square = [](long v) { return static_cast<double>(v) * static_cast<double>(v); };
    if (lower && upper && b.worst.ratio > b.good_ratio)
      at = std::sqrt(square(b.good) +
                     (square(b.bad) - square(b.good)) * (1 - b.good_ratio) / (b.worst.ratio - b.good_ratio));
    else if (upper && !lower)
      at = static_cast<double>(b.bad) / std::sqrt(b.worst.ratio);
    else if (lower && !upper && b.good_ratio > 0)
      at = static_cast<double>(b.good) / std::sqrt(b.good_ratio);
    const long next = steps % 3 == 2 ? middle : std::lround(at); // the bracket shrinks whatever the shape of the limit
    return std::clamp(next, b.good + 1, b.bad - 1);
  }

  PreparedMachine& machine_;
  const Limits& limits_;
  const CapacityTask& task_;
  long first_, last_;
};

/// Prepared machines, one per working thread.
class Pool {
public:
  Pool(const Machine& machine, const Registries& registries, const CapacityTask& task)
      : machine_(machine)
      , registries_(registries)
      , task_(task) {}
  std::unique_ptr<PreparedMachine> take() {
    {
      const std::scoped_lock lock(guard_);
      if (!free_.empty()) {
        auto out = std::move(free_.back());
        free_.pop_back();
        return out;
      }
    }
    return std::make_unique<PreparedMachine>(machine_, registries_, task_.places);
  }
  void give(std::unique_ptr<PreparedMachine> machine) {
    const std::scoped_lock lock(guard_);
    free_.push_back(std::move(machine));
  }
  [[nodiscard]] long load_cases() const {
    long sum = 0;
    for (const auto& m : free_) sum += m->load_cases();
    return sum;
  }

private:
  const Machine& machine_;
  const Registries& registries_;
  const CapacityTask& task_;
  std::mutex guard_;
  std::vector<std::unique_ptr<PreparedMachine>> free_;
};

} // namespace

std::pair<double, double> bench_of(const Machine& m) {
  double from = -INFINITY, to = INFINITY;
  for (const Body& body : m.bodies) {
    if (!body.present()) continue;
    from = std::max(from, body.start);
    to = std::min(to, body.start + body.length);
  }
  return {from, to};
}

CapacityTable find_capacity(const Machine& machine, const Registries& registries, const CapacityTask& task) {
  const Limits& limits = machine.limits;
  if (!any_limit_of_steps(limits))
    throw std::invalid_argument("[limits] gives none of " + keys_of_step_limits() + ": no sheet would be too thick");
  CapacityTable out;
  out.rows.resize(task.places.size() * task.materials.size());
  Pool pool(machine, registries, task);
  for_each_index(out.rows.size(), task.threads, [&](std::uint64_t i) {
    auto prepared = pool.take();
    const SheetPlace& place = task.places[i % task.places.size()];
    out.rows[i] = ThicknessSearch(*prepared, limits, task).of(place, task.materials[i / task.places.size()]);
    pool.give(std::move(prepared));
  });
  out.load_cases = pool.load_cases();
  return out;
}

} // namespace bedbow
