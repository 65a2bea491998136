#include "solver/study/first_order.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

FirstOrderShares::FirstOrderShares(const std::vector<std::size_t>& counts) {
  for (const std::size_t n : counts) of_.emplace_back(n);
}

void FirstOrderShares::add(const std::vector<std::size_t>& rows, double y) {
  if (!std::isfinite(y)) return;
  // Welford's update: no cancellation however far the mean is from zero.
  const double off = y - mean_;
  mean_ += off / static_cast<double>(++n_);
  squares_ += off * (y - mean_);
  for (std::size_t k = 0; k < of_.size(); ++k) {
    Sum& s = of_[k][rows[k]];
    s.mean += (y - s.mean) / static_cast<double>(++s.n);
  }
}

std::vector<double> FirstOrderShares::shares(bool sampled) const {
  std::vector<double> out(of_.size(), 0.0);
  const double scale = std::abs(mean_) * 1e-12;
  if (n_ < 2 || squares_ <= static_cast<double>(n_) * scale * scale) return out;
  for (std::size_t k = 0; k < of_.size(); ++k) {
    double between = 0;
    std::uint64_t groups = 0;
    for (const Sum& s : of_[k]) {
      between += static_cast<double>(s.n) * (s.mean - mean_) * (s.mean - mean_);
      groups += s.n > 0;
    }
    if (sampled && n_ > groups) {
      const double chance = (squares_ - between) / static_cast<double>(n_ - groups);
      between -= static_cast<double>(groups - 1) * chance;
    }
    out[k] = std::clamp(between / squares_, 0.0, 1.0);
  }
  return out;
}

} // namespace bedbow
