#include "io/draw/bend_line_plots.h"

#include "io/text/step_label.h"
#include "mesh/piece/si.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace bedbow {

namespace {

using si::degree;

std::vector<double> over(std::vector<double> values, double unit) {
  for (double& v : values) v /= unit;
  return values;
}

/// Displacement of a body's bend-line edge, along which its bow is measured.
const std::vector<double>& edge_of(const BendLine& line, BodyKind body) {
  switch (body) {
  case BodyKind::clamp:
    return line.nose_z;
  case BodyKind::bed:
    return line.bed_z;
  case BodyKind::apron:
    break;
  }
  return line.apron_n;
}

/// The limit of a bow, which has no sign, on the side to which the plot bows most.
double limit_beside(const Plot& p, double limit) {
  double most = 0;
  for (const PlotSeries& s : p.series)
    for (const double v : s.y)
      if (std::abs(v) > std::abs(most)) most = v;
  return most < 0 ? -limit : limit;
}

bool has_values(const PlotSeries& s) {
  return std::any_of(s.y.begin(), s.y.end(), [](double v) { return std::isfinite(v); });
}

class Plotter {
public:
  Plotter(const Findings& f, const Limits& limits, const OutputUnits& units)
      : f_(f)
      , limits_(limits)
      , u_(units) {}

  [[nodiscard]] Plot worst_bow() const {
    const StepResult& step = f_.steps[f_.worst_step.value_or(f_.steps.size() - 1)];
    Plot p =
        plot("bow", "Bow of each body, step " + step_label(step.name), "bow from the chord [" + u_.length.name + "]");
    for (const BodyKind body : {BodyKind::clamp, BodyKind::bed, BodyKind::apron})
      add(p, to_string(body), step, bow(step, body));
    if (limits_.bow) p.limits.push_back({"limit", limit_beside(p, *limits_.bow / u_.length.size)});
    return p;
  }

  [[nodiscard]] Plot bow_by_step(BodyKind body) const {
    Plot p = plot("bow_" + to_string(body), "Bow of the " + to_string(body) + " in each step",
                  "bow from the chord [" + u_.length.name + "]");
    by_step(p, [&](const StepResult& s) { return bow(s, body); });
    return p;
  }

  [[nodiscard]] Plot clamp_force() const {
    return pressed("clamp_pressure", "How hard the nose presses on the sheet", "clamp force", &BendLine::clamp_force);
  }

  [[nodiscard]] Plot clamp_reserve() const {
    return pressed("clamp_reserve", "Clamping reserve: nose force beyond that of the sheet's own lever",
                   "clamping reserve", &BendLine::clamp_reserve);
  }

  [[nodiscard]] Plot angle() const {
    Plot p = plot("angle_deviation", "Deviation of the bend angle from its mean", "deviation from the mean [deg]");
    by_step(p, [&](const StepResult& s) {
      std::vector<double> out = s.bend_line.angle_deviation;
      for (double& v : out) v = (v - s.bow.angle_mean) / degree;
      return out;
    });
    return p;
  }

private:
  [[nodiscard]] Plot pressed(const std::string& file, const std::string& title, const std::string& what,
                             std::vector<double> BendLine::*values) const {
    const OutputUnit unit = force_per_length(u_);
    Plot p = plot(file, title, what + " [" + unit.name + "]");
    by_step(p, [&](const StepResult& s) { return over(s.bend_line.*values, unit.size); });
    return p;
  }

  [[nodiscard]] Plot plot(const std::string& file, const std::string& title, const std::string& y) const {
    Plot p{title, "x along the bend line [" + u_.length.name + "]", y};
    p.file = file;
    return p;
  }

  void add(Plot& p, const std::string& name, const StepResult& step, std::vector<double> y) const {
    PlotSeries s{name, over(step.bend_line.x, u_.length.size), std::move(y)};
    if (has_values(s)) p.series.push_back(std::move(s));
  }

  void by_step(Plot& p, const std::function<std::vector<double>(const StepResult&)>& values) const {
    for (const StepResult& s : f_.steps) add(p, step_label(s.name), s, values(s));
  }

  [[nodiscard]] std::vector<double> bow(const StepResult& s, BodyKind body) const {
    return over(from_chord(s.bend_line.x, edge_of(s.bend_line, body)), u_.length.size);
  }

  const Findings& f_;
  const Limits& limits_;
  const OutputUnits& u_;
};

} // namespace

std::vector<double> from_chord(const std::vector<double>& x, const std::vector<double>& w) {
  std::vector<double> out(w);
  if (x.size() < 2 || w.size() != x.size()) return out;
  const double slope = (w.back() - w.front()) / (x.back() - x.front());
  for (std::size_t i = 0; i < x.size(); ++i) out[i] = w[i] - w.front() - slope * (x[i] - x.front());
  return out;
}

std::vector<Plot> bend_line_plots(const Findings& f, const Limits& limits, const OutputUnits& units) {
  if (std::all_of(f.steps.begin(), f.steps.end(), [](const StepResult& s) { return s.bend_line.x.empty(); })) return {};
  const Plotter p(f, limits, units);
  std::vector<Plot> all{p.worst_bow()};
  for (const BodyKind body : {BodyKind::clamp, BodyKind::bed, BodyKind::apron}) all.push_back(p.bow_by_step(body));
  all.push_back(p.clamp_force());
  all.push_back(p.clamp_reserve());
  all.push_back(p.angle());
  std::erase_if(all, [](const Plot& plot) { return plot.series.empty(); });
  return all;
}

} // namespace bedbow
