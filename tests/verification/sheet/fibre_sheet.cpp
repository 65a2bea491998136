#include "tests/verification/sheet/fibre_sheet.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace bedbow::verification {

namespace {

constexpr int fibres = 400;  // over half of the thickness
constexpr int sections = 80; // along flange or grip

/// Half of a section: the other half mirrors it.
class FibreSection {
public:
  explicit FibreSection(const FibreSheet& sheet)
      : sheet_(sheet) {}

  double loaded_stress(double strain) const {
    const double elastic = sheet_.modulus * strain;
    return strain > 0 ? std::min(elastic, sheet_.flow(strain)) : 0;
  }

  /// Stress of a fibre that was strained by `from` and is now at `to` < from: elastic, down to yield in compression at
  /// the stress reached (isotropic hardening).
  double unloaded_stress(double from, double to) const {
    const double reached = loaded_stress(from);
    return std::max(reached - sheet_.modulus * (from - to), -std::max(reached, sheet_.flow(from)));
  }

  template <class Stress> double moment(Stress stress) const {
    double sum = 0;
    const double dz = sheet_.thickness / 2 / fibres;
    for (int i = 0; i < fibres; ++i) {
      const double z = (i + 0.5) * dz;
      sum += 2 * stress(z) * z * dz;
    }
    return sum;
  }

  double loaded_moment(double curvature) const {
    return moment([&](double z) { return loaded_stress(curvature * z); });
  }

  /// Curvature that a moment makes, at most `most`.
  double curvature_under(double wanted, double most) const {
    return root(0, most, [&](double k) { return loaded_moment(k) - wanted; });
  }

  /// Curvature that stays of `loaded` once the moment is gone.
  double curvature_left(double loaded) const {
    return root(-loaded, loaded,
                [&](double k) { return moment([&](double z) { return unloaded_stress(loaded * z, k * z); }); });
  }

private:
  /// Zero of a rising function.
  template <class F> static double root(double low, double high, F f) {
    for (int i = 0; i < 60; ++i) {
      const double middle = (low + high) / 2;
      (f(middle) < 0 ? low : high) = middle;
    }
    return (low + high) / 2;
  }

  const FibreSheet& sheet_;
};

} // namespace

FibreSpringback fibre_springback(const FibreSheet& s) {
  const FibreSection section(s);
  const double bent = 1 / s.radius;
  FibreSpringback out;
  out.moment = section.loaded_moment(bent);
  // The bend keeps its length.
  const double length = s.angle / section.curvature_left(bent);
  out.arc = length * bent - s.angle;
  // Turn of the chord from the bend to the far end against the tangent at the bend: a section's curvature counts by its
  // distance from the far end. The moment falls to nothing there.
  for (int i = 0; i < sections; ++i) {
    const double at = (i + 0.5) / sections; // of the length
    const double loaded = section.curvature_under(out.moment * (1 - at), bent);
    const double left = section.curvature_left(loaded);
    const double back = (loaded - left) * (1 - at) / sections;
    out.flange += s.flange * back;
    out.grip += s.grip * back;
    out.set += s.flange * left * (1 - at) / sections;
  }
  return out;
}

} // namespace bedbow::verification
