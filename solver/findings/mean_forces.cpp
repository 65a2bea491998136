#include "solver/findings/mean_forces.h"

#include "solver/model/recovery.h"

#include <algorithm>

namespace bedbow {

namespace {

Eigen::Matrix<double, 6, 1> as_vector(const SectionForces& f) {
  return {f.N, f.Vy, f.Vz, f.T, f.My, f.Mz};
}

} // namespace

MeanForces::MeanForces(const Model& model, const StepSolution& step, const BarLayout& layout,
                       std::span<const SectionForces> first)
    : model_(model)
    , step_(step)
    , layout_(layout)
    , first_(first) {
  before_.reserve(first.size() + 1);
  before_.emplace_back(Sum::Zero());
  for (std::size_t i = 0; i < first.size(); ++i)
    before_.emplace_back(before_[i] + integral(i, layout.stations[i + 1] - layout.stations[i]));
}

MeanForces::Sum MeanForces::integral(std::size_t element, double distance) const {
  const int i = layout_.first_element + static_cast<int>(element);
  const BeamLineLoad& load = step_.loads.beams[i];
  const auto inside = [&](double d) {
    return as_vector(forces_further(model_.data.beams[model_.data.of_beam[i]], load, first_[element], d));
  };
  const Sum middle = inside(distance / 2);
  if (load.force.isZero(0)) return distance * middle; // linear
  return distance / 6 * (as_vector(first_[element]) + 4 * middle + inside(distance));
}

MeanForces::Sum MeanForces::integral_to(double x, std::size_t& element) const {
  const std::vector<double>& stations = layout_.stations;
  while (element + 1 < first_.size() && stations[element + 1] < x) ++element;
  while (element > 0 && stations[element] > x) --element;
  return before_[element] + integral(element, x - stations[element]);
}

SectionForces MeanForces::at(std::size_t station, double window) {
  const double x = layout_.stations[station];
  const double from = std::max(x - window / 2, layout_.stations.front());
  const double to = std::min(x + window / 2, layout_.stations.back());
  const Sum mean = (integral_to(to, to_) - integral_to(from, from_)) / (to - from);
  return {mean[0], mean[1], mean[2], mean[3], mean[4], mean[5]};
}

} // namespace bedbow
