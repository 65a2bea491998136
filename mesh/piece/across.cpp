#include "mesh/piece/across.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <string>

namespace bedbow {

namespace {

/// Of Abramowitz & Stegun 1964, table 25.4, n = 6, moved to [0, 1]; exact to degree 11.
constexpr double far = 0.932469514203152, mid = 0.661209386466265, near_middle = 0.238619186083197;
constexpr double weight_far = 0.171324492379170, weight_mid = 0.360761573048139, weight_near = 0.467913934572691;
constexpr std::array<std::array<double, 2>, 6> points{{{(1 - far) / 2, weight_far / 2},
                                                       {(1 - mid) / 2, weight_mid / 2},
                                                       {(1 - near_middle) / 2, weight_near / 2},
                                                       {(1 + near_middle) / 2, weight_near / 2},
                                                       {(1 + mid) / 2, weight_mid / 2},
                                                       {(1 + far) / 2, weight_far / 2}}};

/// Legendre's polynomial with its first two derivatives, by Bonnet's recursion.
Eigen::Vector3d legendre(int degree, double x) {
  Eigen::Vector3d before(1, 0, 0), now(x, 1, 0);
  if (degree == 0) return before;
  for (int n = 1; n < degree; ++n) {
    const double a = (2. * n + 1) / (n + 1), b = static_cast<double>(n) / (n + 1);
    const Eigen::Vector3d next(a * x * now[0] - b * before[0], a * (now[0] + x * now[1]) - b * before[1],
                               a * (2 * now[1] + x * now[2]) - b * before[2]);
    before = now;
    now = next;
  }
  return now;
}

double power_of(double base, int exponent) { // std::pow takes longer than the rest of a place on a flat
  double out = 1;
  for (int i = 0; i < exponent; ++i) out *= base;
  return out;
}

/// Places across are told apart down to this part of half the width: far above the rounding of an inch.
constexpr double rounding = 1e-9;

/// A function that is this near to the others' span adds nothing but rounding.
constexpr double nothing_new = 1e-7;

} // namespace

std::span<const std::array<double, 2>, 6> gauss6() {
  return points;
}

Eigen::Vector3d AcrossFunctions::Generator::at(double xi) const {
  if (side == 0) return legendre(power, xi);
  double d = side * (xi - place);
  const bool at_place = std::abs(d) < rounding;
  if (at_place) d = 0;
  if (d < 0) return Eigen::Vector3d::Zero();
  // At the place itself a jump counts half, so that both sides have the same share.
  const double half = at_place ? 0.5 : 1;
  return {power_of(d, power), side * power * (power == 1 ? half : power_of(d, power - 1)),
          power < 2 ? 0. : power * (power - 1) * (power == 2 ? half : power_of(d, power - 2))};
}

AcrossFunctions::AcrossFunctions(double width, const AcrossLines& lines, int degree)
    : width_(width) {
  if (!(width > 0) || degree < 2 || degree > greatest_degree)
    throw std::invalid_argument("functions across a flat need a width and a degree from 2 to " +
                                std::to_string(greatest_degree));
  const auto scaled = [&](double c) {
    const double xi = 2 * c / width;
    if (!(std::abs(xi) < 1)) throw std::invalid_argument("a line across a flat lies beyond its edge");
    return xi;
  };
  breaks_ = {-1, 1};
  for (const std::vector<double>* list : {&lines.feet, &lines.points})
    for (double c : *list) breaks_.push_back(scaled(c));
  std::ranges::sort(breaks_);
  generators_ = {{0, 0, 0}, {0, 1, 0}};
  if (lines.feet.empty()) {
    for (int q = 2; q <= degree; ++q) generators_.push_back({0, q, 0});
    shear_.push_back({0, 1, 0});
  }
  for (std::size_t i = 0; i < lines.feet.size(); ++i) {
    const double xi = scaled(lines.feet[i]);
    for (int q = 2; q <= degree; ++q) {
      generators_.push_back({1, q, xi});
      if (i == 0) generators_.push_back({-1, q, xi});
    }
    shear_.push_back({1, 1, xi});
    if (i == 0) shear_.push_back({-1, 1, xi});
  }
  // Beyond a line on the left of the foot counts what lies further left, so that the foot itself stays at rest.
  const double foot = lines.feet.empty() ? -1 : scaled(lines.feet.front());
  for (double c : lines.points) {
    const double xi = scaled(c);
    const int side = xi < foot ? -1 : 1;
    generators_.push_back({side, 3, xi});
    shear_.push_back({side, 1, xi});
  }
  orthonormalise();
}

void AcrossFunctions::orthonormalise() {
  // Values at the Gauss points of all pieces and, last, at both edges.
  std::vector<double> at, weight;
  for (std::size_t i = 0; i + 1 < breaks_.size(); ++i)
    for (const auto& [t, w] : gauss6()) {
      at.push_back(breaks_[i] + t * (breaks_[i + 1] - breaks_[i]));
      weight.push_back(w * (breaks_[i + 1] - breaks_[i]) / 2);
    }
  const auto inner = static_cast<Eigen::Index>(at.size());
  const auto all = static_cast<Eigen::Index>(generators_.size());
  Eigen::MatrixXd value(all, inner), edge(all, 2);
  for (Eigen::Index g = 0; g < all; ++g) {
    const Generator& generator = generators_[static_cast<std::size_t>(g)];
    for (Eigen::Index i = 0; i < inner; ++i) value(g, i) = generator.at(at[static_cast<std::size_t>(i)])[0];
    edge.row(g) << generator.at(-1)[0], generator.at(1)[0];
  }
  const Eigen::Map<const Eigen::VectorXd> w(weight.data(), inner);
  Eigen::MatrixXd rows = Eigen::MatrixXd::Identity(2, all); // the rigid ones as they are
  for (Eigen::Index g = 2; g < all; ++g) {
    Eigen::RowVectorXd f = Eigen::RowVectorXd::Unit(all, g);
    f[1] -= (edge(g, 1) - edge(g, 0)) / 2;
    f[0] -= (f * value).dot(w);
    const double size = std::sqrt((f * value).cwiseAbs2().dot(w));
    for (int pass = 0; pass < 2; ++pass) // once more for what rounding left
      for (Eigen::Index k = 2; k < rows.rows(); ++k)
        f -= (f * value).cwiseProduct(rows.row(k) * value).dot(w) * rows.row(k);
    const double rest = std::sqrt((f * value).cwiseAbs2().dot(w));
    if (rest <= nothing_new * size) continue;
    rows.conservativeResize(rows.rows() + 1, Eigen::NoChange);
    rows.row(rows.rows() - 1) = f / rest;
  }
  coefficients_ = rows;
}

AcrossValues AcrossFunctions::at(double c) const {
  const double xi = 2 * c / width_, per = 2 / width_;
  Eigen::Matrix<double, Eigen::Dynamic, 3, 0, 24, 3> g(static_cast<Eigen::Index>(generators_.size()), 3);
  for (std::size_t i = 0; i < generators_.size(); ++i)
    g.row(static_cast<Eigen::Index>(i)) = generators_[i].at(xi).transpose();
  AcrossValues out;
  out.phi = coefficients_ * g.col(0);
  out.slope = per * (coefficients_ * g.col(1));
  out.curvature = per * per * (coefficients_ * g.col(2));
  out.shear.resize(shearing());
  out.shear_slope.resize(shearing());
  for (std::size_t j = 0; j < shear_.size(); ++j) {
    const Eigen::Vector3d v = shear_[j].at(xi);
    out.shear[static_cast<Eigen::Index>(j)] = v[0];
    out.shear_slope[static_cast<Eigen::Index>(j)] = per * v[1];
  }
  return out;
}

std::vector<double> AcrossFunctions::pieces() const {
  std::vector<double> out;
  for (double xi : breaks_) out.push_back(xi * width_ / 2);
  return out;
}

} // namespace bedbow
