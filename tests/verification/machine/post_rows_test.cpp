// Where posts keep a uniformly loaded clamp bar straightest, against the closed-form solution of a beam on rigid
// supports and a minimisation of its own.
#include "io/case/case_reader.h"
#include "solver/linear/dense.h"
#include "solver/study/post_layout.h"

#include "tests/verification/support/record.h"
#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace bedbow::verification {
namespace {

// A slender bar, so that shear adds nothing that counts: (h/L)^2 = 4e-6.
constexpr double clamp_length = 2.0, clamp_E = 205e9, clamp_I = 0.05 * 0.004 * 0.004 * 0.004 / 12, clamp_load = 100;

const char* const clamp_bar = R"(
[material.steel]
E = "205 GPa"
nu = 0.29
[clamp]
length = "2000 mm"
material = "steel"
[[clamp.bar]]
name = "spine"
shape = "rectangle"
model = "beam"
width = "50 mm"
height = "4 mm"
at = ["25 mm", "2 mm"]
[[post]]
joins = ["ground", "clamp.spine"]
at = ["100 mm", "25 mm", "2 mm"]
diameter = "100 mm"
free_length = "1 mm"
[[tie]]
joins = ["clamp.spine", "ground"]
x = "1000 mm"
holds = ["x", "rx", "rz"]
[[load]]
on = "clamp.spine"
from = ["0 mm", "25 mm", "2 mm"]
to = ["2000 mm", "25 mm", "2 mm"]
per_length = ["0 N/mm", "0 N/mm", "0.1 N/mm"]
[solve]
element_size = "5 mm"
)";

/// Greatest less least deflection of an Euler-Bernoulli beam of unit length under unit load on rigid supports, EI = 1:
/// w = x^4/24 + c0 + c1 x - sum R <x - a>^3/6, w(a) = 0, force and moment in equilibrium.
double peak_to_valley(const std::vector<double>& a) {
  const auto n = static_cast<Eigen::Index>(a.size());
  Eigen::MatrixXd M = Eigen::MatrixXd::Zero(n + 2, n + 2);
  Eigen::VectorXd rhs = Eigen::VectorXd::Zero(n + 2);
  const auto cube = [](double v) { return v > 0 ? v * v * v / 6 : 0; };
  for (Eigen::Index i = 0; i < n; ++i) {
    for (Eigen::Index j = 0; j < n; ++j) M(i, j) = -cube(a[i] - a[j]);
    M(i, n) = 1;
    M(i, n + 1) = a[i];
    rhs[i] = -std::pow(a[i], 4) / 24;
    M(n, i) = 1;
    M(n + 1, i) = a[i];
  }
  rhs[n] = 1;
  rhs[n + 1] = 0.5;
  const Eigen::VectorXd s = solve_dense(M, rhs);
  double low = INFINITY, high = -INFINITY;
  for (int k = 0; k <= 4000; ++k) {
    const double x = k / 4000.0;
    double w = std::pow(x, 4) / 24 + s[n] + s[n + 1] * x;
    for (Eigen::Index j = 0; j < n; ++j) w -= s[j] * cube(x - a[j]);
    low = std::min(low, w);
    high = std::max(high, w);
  }
  return high - low;
}

/// Mirrored supports at distances d from the middle.
std::vector<double> both_halves(int count, const std::vector<double>& d) {
  std::vector<double> a;
  for (const double v : d) a.insert(a.end(), {0.5 - v, 0.5 + v});
  if (count % 2) a.push_back(0.5);
  std::ranges::sort(a);
  return a;
}

/// The least peak-to-valley by an even grid that closes in on its best point: no derivative, no library.
double least_peak_to_valley(int count, std::vector<double>& best) {
  const std::size_t k = static_cast<std::size_t>(count / 2);
  std::vector<double> middle(k), half(k, 0.25 / static_cast<double>(k));
  for (std::size_t i = 0; i < k; ++i) middle[i] = (static_cast<double>(i) + 0.5) / static_cast<double>(k) * 0.48;
  double least = INFINITY;
  constexpr int side = 7;
  for (int round = 0; round < 26; ++round) {
    std::vector<double> centre = middle;
    for (int p = 0; p < (k == 1 ? side : side * side); ++p) {
      std::vector<double> d = centre;
      int rest = p;
      for (std::size_t i = 0; i < k; ++i, rest /= side) d[i] += half[i] * (2.0 * (rest % side) / (side - 1) - 1);
      if (*std::ranges::min_element(d) < 0.01 || *std::ranges::max_element(d) > 0.49) continue;
      const double pv = peak_to_valley(both_halves(count, d));
      if (pv < least) {
        least = pv;
        middle = d;
      }
    }
    for (double& h : half) h *= 0.72;
  }
  best = both_halves(count, middle);
  return least;
}

PostLayout place(int count) {
  const Registries registries = builtin_registries();
  static const Case c = read_case_text(clamp_bar, registries);
  PostTask task;
  task.count = count;
  task.goal = PostGoal::straightness;
  task.from = 0.02;
  task.to = 1.98;
  return place_posts(c.machine, registries, task);
}

constexpr double unit_of_sag =
    clamp_load * clamp_length * clamp_length * clamp_length * clamp_length / (clamp_E * clamp_I); // [m]

// The bar's stations lie 5 mm apart, which blurs where the greatest deflection is seen by less than 1e-4 of it; the
// optimum is where two deflections are equal, so it moves by as little.
TEST(PostRows, TwoPostsUnderAUniformLoad) {
  // theinfolist.com/html/ALL/s/B/Bessel_Points.html
  const std::string source =
      "least sag of a uniformly loaded beam on two supports: middle and ends level (derived); 0.5536 L in Wikipedia, "
      "Bessel points";
  const PostLayout two = place(2);
  ASSERT_EQ(two.x.size(), 2U);
  record("", source, "best spacing of two posts over the bar's length", (two.x[1] - two.x[0]) / clamp_length, 0.553702,
         2e-4);
  record("", source, "straightness then, over q L^4/EI", two.clamp_straightness / unit_of_sag, 2.7040e-4, 2e-3);
}

// Shear adds 12 (h/span)^2 of a clamped span's deflection, here up to 0.12 percent; the stations blur as much.
TEST(PostRows, MorePostsAgainstAMinimisationOfTheClosedForm) {
  const std::string source = "beam of Euler and Bernoulli on rigid supports in closed form, minimised by an even grid "
                             "that closes in on its best point (derived)";
  for (const int count : {3, 4, 5}) {
    std::vector<double> best;
    const double least = least_peak_to_valley(count, best);
    const PostLayout found = place(count);
    const std::string posts = std::to_string(count) + " posts: ";
    record("", source, posts + "straightness over q L^4/EI", found.clamp_straightness / unit_of_sag, least, 5e-3);
    ASSERT_EQ(found.x.size(), best.size());
    for (std::size_t i = 0; i < best.size() / 2; ++i)
      record("", source, posts + "place of post " + std::to_string(i + 1) + " over L", found.x[i] / clamp_length,
             best[i], 2e-3 / best[i]);
  }
}

} // namespace
} // namespace bedbow::verification
