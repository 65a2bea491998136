#include "solver/study/post_layout.h"

#include "solver/analysis.h"
#include "solver/findings/nose_hold.h"
#include "solver/sheet/sheet_law.h"
#include "solver/study/summary_metrics.h"
#include "solver/study/worker_pool.h"

#include <nlopt.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <memory>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr double unsolved = 1e3;    // metres or radians: worse than any solved value, but finite
constexpr double outside = 1;       // likewise for layouts that exceed limits: worse than any that keeps them
constexpr double fine_step = 2e-5;  // termination of the search [m]
constexpr int scanned = 13;         // even spacings evaluated first
constexpr std::size_t improved = 3; // number of them that are improved
constexpr std::size_t strewn = 2;   // further starting points

/// The unknowns of the search and the places that they represent. Unknowns are offsets in any order; sorted, with the
/// least distance added between each two, they become places that keep it.
class Places {
public:
  Places(const PostTask& task, double least)
      : task_(task)
      , least_(least)
      , middle_((task.from + task.to) / 2) {
    const double half = (task.to - task.from) / 2;
    const int n = task.count;
    unknowns_ = task.free ? n : n / 2;
    first_ = task.free ? 0 : (n % 2 ? least : least / 2);
    room_ = (task.free ? 2 * half : half) - first_ - std::max(unknowns_ - 1, 0) * least;
    if (room_ < 0) {
      char text[160];
      std::snprintf(text, sizeof text,
                    "%d posts do not fit between %.1f and %.1f mm: the least distance is two diameters "
                    "(%.1f mm)",
                    n, task.from * 1e3, task.to * 1e3, least * 1e3);
      throw std::invalid_argument(text);
    }
  }
  [[nodiscard]] int unknowns() const { return unknowns_; }
  [[nodiscard]] double room() const { return room_; }

  [[nodiscard]] std::vector<double> of(std::span<const double> offsets) const {
    std::vector<double> u(offsets.begin(), offsets.end());
    std::ranges::sort(u);
    for (std::size_t i = 0; i < u.size(); ++i) u[i] += first_ + static_cast<double>(i) * least_;
    std::vector<double> x;
    if (task_.free) {
      for (const double v : u) x.push_back(task_.from + v);
      return x;
    }
    for (auto v = u.rbegin(); v != u.rend(); ++v) x.push_back(middle_ - *v);
    if (task_.count % 2) x.push_back(middle_);
    for (const double v : u) x.push_back(middle_ + v);
    return x;
  }

  /// Offsets of evenly spaced posts.
  [[nodiscard]] std::vector<double> even(double spacing) const {
    std::vector<double> u;
    for (int i = 0; i < unknowns_; ++i) {
      const double at = task_.free ? middle_ - task_.from + (i - (task_.count - 1) / 2.0) * spacing
                                   : (task_.count % 2 ? i + 1 : i + 0.5) * spacing;
      u.push_back(std::clamp(at - first_ - i * least_, 0.0, room_));
    }
    return u;
  }

private:
  const PostTask& task_;
  double least_, middle_;
  int unknowns_ = 0;
  double first_ = 0, room_ = 0;
};

/// One search from one start.
class PlaceSearch {
public:
  PlaceSearch(const Machine& machine, const Registries& registries, const PostTask& task, const Places& places)
      : machine_(machine)
      , registries_(registries)
      , task_(task)
      , places_(places) {}

  PostLayout from(std::vector<double> u) {
    best_ = judge_posts(machine_, registries_, places_.of(u));
    if (u.empty()) return best_; // a single post in the middle
    const auto n = static_cast<unsigned>(u.size());
    const std::unique_ptr<nlopt_opt_s, void (*)(nlopt_opt)> opt(nlopt_create(NLOPT_LN_SBPLX, n), nlopt_destroy);
    nlopt_set_lower_bounds1(opt.get(), 0);
    nlopt_set_upper_bounds1(opt.get(), places_.room());
    nlopt_set_min_objective(opt.get(), &PlaceSearch::evaluate, this);
    nlopt_set_initial_step1(opt.get(), places_.room() / 12);
    nlopt_set_xtol_abs1(opt.get(), fine_step);
    nlopt_set_maxeval(opt.get(), 60 + 60 * static_cast<int>(n));
    double least = 0;
    nlopt_optimize(opt.get(), u.data(), &least); // however it ends, best_ is the best found
    return best_;
  }

private:
  static double evaluate(unsigned n, const double* u, double*, void* self) {
    auto& s = *static_cast<PlaceSearch*>(self);
    PostLayout here = judge_posts(s.machine_, s.registries_, s.places_.of({u, n}));
    const double rank = here.rank(s.task_.goal);
    if (rank < s.best_.rank(s.task_.goal)) s.best_ = std::move(here);
    return rank;
  }

  const Machine& machine_;
  const Registries& registries_;
  const PostTask& task_;
  const Places& places_;
  PostLayout best_;
};

/// Relative excess of the most exceeded limit. \return 0 where all are kept.
double excess_of(const std::vector<Reason>& reasons) {
  double out = 0;
  for (const Reason& r : reasons) out = std::max(out, r.over() - 1);
  return out;
}

double least_distance(const Machine& machine) {
  if (machine.posts.empty()) throw std::invalid_argument("the case has no [[post]] to copy");
  return 2 * machine.posts.front().diameter;
}

/// Well-separated starting points (fractional parts of multiples of roots, a Weyl sequence).
std::vector<double> strewn_start(const Places& places, std::size_t k) {
  std::vector<double> u;
  for (int i = 0; i < places.unknowns(); ++i) {
    const double v = std::sqrt(2.0 + i * 3.0) * (static_cast<double>(k) + 1.37);
    u.push_back((v - std::floor(v)) * places.room());
  }
  return u;
}

/// Faults of posts without their names, which a layout changes.
std::vector<Fault> any_post(std::vector<Fault> faults) {
  for (Fault& f : faults)
    if (f.key.starts_with("post.")) f.part = "a post";
  return faults;
}

} // namespace

double PostLayout::value(PostGoal goal) const {
  if (!solved) return unsolved;
  const double v = goal == PostGoal::spread ? angle_spread : goal == PostGoal::bow ? clamp_bow : clamp_straightness;
  return std::isfinite(v) ? v : unsolved;
}

double PostLayout::rank(PostGoal goal) const {
  const double v = value(goal);
  return pass || !solved ? v : std::min(outside * (1 + excess), unsolved / 2);
}

Machine with_posts(const Machine& machine, std::span<const double> x) {
  least_distance(machine); // throws without a post
  Machine out = machine;
  const Post first = machine.posts.front();
  out.posts.clear();
  for (const double at : x) {
    Post p = first;
    p.name = "post " + std::to_string(out.posts.size() + 1);
    p.at.x() = at;
    out.posts.push_back(std::move(p));
  }
  return out;
}

PostLayout judge_posts(const Machine& machine, const Registries& registries, std::span<const double> x) {
  PostLayout out;
  out.x.assign(x.begin(), x.end());
  const Machine here = with_posts(machine, x);
  const Springback springback = known_springback(machine, registries.moment_laws);
  // Posts move along x only: what they had before they moved, and what they can't help, is for `check` to say.
  out.faults = new_faults(any_post(buildable(here, registries.shapes, springback)),
                          any_post(buildable(machine, registries.shapes, springback)));
  if (!out.faults.empty()) return out;
  AnalysisOptions options;
  options.fields = false;
  const Findings f = analyse(here, registries, options);
  if (f.status != Status::ok) {
    out.trouble = f.trouble;
    return out;
  }
  const SummaryMetrics h = headline(f);
  out.solved = true;
  out.angle_spread = h.angle_spread;
  out.clamp_bow = h.bow[static_cast<std::size_t>(BodyKind::clamp)];
  out.clamp_straightness = h.straightness[static_cast<std::size_t>(BodyKind::clamp)];
  out.post_force = h.post_force;
  out.utilisation = h.utilisation;
  out.utilisation_at = h.utilisation_at;
  out.pass = h.pass;
  out.reasons = h.reasons;
  out.excess = excess_of(h.reasons);
  return out;
}

std::pair<double, double> room_for_posts(const Machine& machine) {
  least_distance(machine); // throws without a post
  const Post& post = machine.posts.front();
  double from = -INFINITY, to = INFINITY;
  for (const Ref& r : post.joins) {
    if (r.kind != Ref::Kind::bar) continue;
    from = std::max(from, machine.bar(r).start);
    to = std::min(to, machine.bar(r).end());
  }
  const double edge = least_edge_of_hole(post);
  return {from + edge, to - edge};
}

std::vector<double> even_posts(const PostTask& task, double spacing) {
  std::vector<double> x;
  for (int i = 0; i < task.count; ++i) x.push_back((task.from + task.to) / 2 + (i - (task.count - 1) / 2.0) * spacing);
  return x;
}

std::vector<double> spacings_within(const Machine& machine, const PostTask& task, int steps) {
  const double least = least_distance(machine);
  const Places fits(task, least); // throws where they do not fit
  const double most = task.count > 1 ? (task.to - task.from) / (task.count - 1) : 0;
  std::vector<double> out;
  for (int i = 0; i < steps; ++i) out.push_back(least + (most - least) * i / (steps - 1));
  return out;
}

PostLayout place_posts(const Machine& machine, const Registries& registries, const PostTask& task) {
  const Places places(task, least_distance(machine));
  const std::vector<double> spacings = spacings_within(machine, task, scanned);
  std::vector<std::pair<double, std::size_t>> ranking(spacings.size());
  for_each_index(spacings.size(), task.threads, [&](std::uint64_t i) {
    const PostLayout even = judge_posts(machine, registries, places.of(places.even(spacings[i])));
    ranking[i] = {even.rank(task.goal), i};
  });
  std::ranges::sort(ranking);
  std::vector<std::vector<double>> starts;
  for (std::size_t i = 0; i < improved; ++i) starts.push_back(places.even(spacings[ranking[i].second]));
  if (places.unknowns() > 1)
    for (std::size_t i = 0; i < strewn; ++i) starts.push_back(strewn_start(places, i));
  std::vector<PostLayout> found(starts.size());
  for_each_index(starts.size(), task.threads,
                 [&](std::uint64_t i) { found[i] = PlaceSearch(machine, registries, task, places).from(starts[i]); });
  // The first of equal values, so that no result depends on the order of threads.
  return *std::ranges::min_element(found, {}, [&](const PostLayout& l) { return l.rank(task.goal); });
}

} // namespace bedbow
