#include "solver/study/crown.h"

#include "mesh/piece/fastener.h"
#include "solver/findings/bend_line.h"
#include "solver/linear/dense.h"

#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr double shim_nudge = 5e-6; // perturbation of a place to find its effect [m]
constexpr int most_rounds = 8;
constexpr int most_shims = 4;

/// The deviation to be removed: the line less its chord, or the angle less its mean, at the bend stations.
struct Line {
  Eigen::VectorXd miss; ///< empty where the machine could not be solved
  CrownState state{std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::quiet_NaN()};
  std::string trouble{};
  [[nodiscard]] bool better_than(double other) const { return miss.size() > 0 && miss.norm() < other; }
};

Eigen::VectorXd map_of(const std::vector<double>& v) {
  return Eigen::Map<const Eigen::VectorXd>(v.data(), static_cast<Eigen::Index>(v.size()));
}

class Crowner {
public:
  Crowner(const Machine& machine, const Registries& registries, const CrownTask& task)
      : machine_(machine)
      , registries_(registries)
      , task_(task) {}

  [[nodiscard]] Line line_of(const Machine& m) {
    ++solves;
    AnalysisOptions options;
    options.fields = false;
    const Findings f = analyse(m, registries_, options);
    if (f.status != Status::ok) {
      Line failed;
      failed.trouble = f.trouble;
      return failed;
    }
    if (task_.step >= f.steps.size()) throw std::invalid_argument("no such step");
    const StepResult& s = f.steps[task_.step];
    name = s.name;
    const BendLine& b = s.bend_line;
    const auto& edge = task_.on == BodyKind::bed ? b.bed_z : task_.on == BodyKind::clamp ? b.nose_z : b.apron_n;
    Line out;
    out.state = {bow_from_chord(b.x, edge), s.bow.angle_spread}; // of the edge with its shims
    if (task_.aim == CrownAim::even) {
      out.miss = map_of(b.angle_deviation) * m.sheet->flange;
      out.miss.array() -= out.miss.mean();
    } else {
      out.miss = map_of(edge);
      const Eigen::VectorXd x = map_of(b.x);
      const Eigen::Index last = x.size() - 1;
      const double slope = (out.miss[last] - out.miss[0]) / (x[last] - x[0]);
      out.miss.array() -= out.miss[0] + slope * (x.array() - x[0]);
    }
    if (!out.miss.allFinite()) throw std::invalid_argument("the line is undefined in this step: a body is missing");
    return out;
  }

  /// The machine as it is. Throws std::runtime_error where it can't be solved.
  [[nodiscard]] Line start() {
    Line out = line_of(machine_);
    if (out.miss.size() == 0) throw std::runtime_error(out.trouble);
    return out;
  }

  [[nodiscard]] Line with(const Eigen::VectorXd& heights) {
    Machine m = machine_;
    Crown& crown = m.body(task_.on).crown;
    if (!crown.x.empty()) throw std::invalid_argument(to_string(task_.on) + " already has a crown: remove it first");
    crown.x = task_.places;
    crown.height.assign(heights.begin(), heights.end());
    return line_of(m);
  }

  int solves = 0;
  std::string name;

private:
  const Machine& machine_;
  const Registries& registries_;
  const CrownTask& task_;
};

void check(const Machine& m, const CrownTask& task) {
  if (!m.sheet) throw std::invalid_argument("there is no bend line without [sheet]");
  if (!m.body(task.on).present()) throw std::invalid_argument("the case has no " + to_string(task.on));
  if (task.places.size() < 2) throw std::invalid_argument("shims need at least two places");
  if (std::ranges::adjacent_find(task.places, std::ranges::greater_equal()) != task.places.end())
    throw std::invalid_argument("the places must increase from left to right");
}

/// Heights by Gauss-Newton with step halving; the uniform lift, which has no effect, is removed.
Eigen::VectorXd descend(Crowner& crowner, Eigen::Index n, Line& best) {
  Eigen::VectorXd h = Eigen::VectorXd::Zero(n);
  for (int round = 0; round < most_rounds; ++round) {
    Eigen::MatrixXd J(best.miss.size(), n);
    for (Eigen::Index k = 0; k < n; ++k) {
      Eigen::VectorXd moved = h;
      moved[k] += shim_nudge;
      const Line line = crowner.with(moved);
      if (line.miss.size() > 0)
        J.col(k) = (line.miss - best.miss) / shim_nudge;
      else
        J.col(k).setZero(); // a place that can't be evaluated is ignored
    }
    constexpr double no_say = 1e-6; // below that a place is ignored
    Eigen::VectorXd step = -least_squares(J, best.miss, no_say);
    bool better = false;
    for (int halving = 0; halving < 5 && !better; ++halving, step /= 2) {
      Eigen::VectorXd next = h + step;
      next.array() -= next.minCoeff();
      Line line = crowner.with(next);
      better = line.better_than(0.999 * best.miss.norm());
      if (better) {
        h = next;
        best = std::move(line);
      }
    }
    if (!better) break;
  }
  return h;
}

void add_sums(const std::vector<double>& stock, std::size_t from, std::vector<double>& pieces, double height,
              std::vector<double>& best, double& miss) {
  double sum = 0;
  for (const double p : pieces) sum += p;
  const double off = std::abs(height - sum);
  if (off < miss - 1e-9 || (off < miss + 1e-9 && pieces.size() < best.size())) {
    miss = off;
    best = pieces;
  }
  if (pieces.size() == most_shims) return;
  for (std::size_t i = from; i < stock.size(); ++i) {
    pieces.push_back(stock[i]);
    add_sums(stock, i, pieces, height, best, miss);
    pieces.pop_back();
  }
}

} // namespace

std::vector<double> nearest_shims(double height, const std::vector<double>& stock) {
  std::vector<double> sorted = stock;
  std::ranges::sort(sorted, std::ranges::greater());
  std::vector<double> best, pieces;
  double miss = std::numeric_limits<double>::infinity();
  add_sums(sorted, 0, pieces, height, best, miss);
  return best;
}

CrownResult find_crown(const Machine& machine, const Registries& registries, const CrownTask& task) {
  check(machine, task);
  for (const double s : task.stock)
    if (!(s > 0)) throw std::invalid_argument("shim stock must have a thickness greater than 0");
  Crowner crowner(machine, registries, task);
  const auto n = static_cast<Eigen::Index>(task.places.size());
  Line line = crowner.start();
  CrownResult out;
  out.step = crowner.name;
  out.before = line.state;
  const Eigen::VectorXd h = descend(crowner, n, line);
  out.exact = line.state;
  Eigen::VectorXd shims = h;
  for (Eigen::Index k = 0; k < n; ++k) {
    ShimPlace p{task.places[static_cast<std::size_t>(k)], h[k], h[k], {}};
    if (!task.stock.empty()) {
      p.pieces = nearest_shims(h[k], task.stock);
      p.shim = 0;
      for (const double piece : p.pieces) p.shim += piece;
    }
    shims[k] = p.shim;
    out.places.push_back(std::move(p));
  }
  out.rounded = crowner.with(shims).state;
  out.solves = crowner.solves;
  return out;
}

RodResult find_rod(const Machine& machine, const Registries& registries, const CrownTask& task, double offset) {
  check(machine, task);
  Crowner crowner(machine, registries, task);
  const Body& body = machine.body(task.on);
  const Bar& bar = body.bars.at(static_cast<std::size_t>(body.edge_bar));
  const auto pulled = [&](double tension) {
    Machine m = machine;
    for (const bool left : {true, false}) {
      Load load;
      load.on = {Ref::Kind::bar, task.on, body.edge_bar};
      load.from = load.to = {left ? bar.start : bar.end(), bar.at.x(), bar.at.y() + offset};
      load.force = {left ? tension : -tension, 0, 0}; // the rod pulls its anchors together
      m.loads.push_back(load);
    }
    return crowner.line_of(m);
  };
  RodResult out;
  Line line = crowner.start();
  out.before = line.state;
  constexpr double probe = 100; // [N]
  for (int round = 0; round < most_rounds; ++round) {
    const Line probed = pulled(out.tension + probe);
    if (probed.miss.size() == 0) break;
    const Eigen::VectorXd slope = (probed.miss - line.miss) / probe;
    const double step = slope.squaredNorm() > 0 ? -slope.dot(line.miss) / slope.squaredNorm() : 0;
    Line next = pulled(out.tension + step);
    if (!next.better_than(line.miss.norm())) break;
    out.tension += step;
    line = std::move(next);
  }
  out.after = line.state;
  for (const char* name : {"M6", "M8", "M10", "M12", "M16", "M20", "M24"}) {
    const Thread thread = *find_thread(name);
    if (proof_load(thread, *find_grade("8.8", thread.d)) < 2 * std::abs(out.tension)) continue;
    out.thread = name;
    break;
  }
  return out;
}

} // namespace bedbow
