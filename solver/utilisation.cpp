#include "mesh/fastener.h"
#include "solver/results.h"

#include <cmath>
#include <cstdio>
#include <numbers>

namespace bedbow {

namespace {

/// What a stud or screw bears by its grade: stress area (of the metric coarse thread of a plain diameter, where there
/// is one, since a nut has to go on) and grade. Nothing where either is unknown.
struct Strength {
  double area = 0;
  Grade grade;
};

std::optional<Strength> strength_of(const std::string& thread, double diameter, const std::string& grade_name) {
  const auto grade = find_grade(grade_name, diameter);
  if (!grade) return std::nullopt;
  std::string name = thread;
  if (name.empty()) {
    char text[24];
    std::snprintf(text, sizeof text, "M%.6g", diameter * 1e3);
    name = text;
  }
  const auto found = find_thread(name);
  // Without a known thread three quarters of the plain area is what a thread leaves; common practice, no source.
  const double area = found ? stress_area(*found) : 0.75 * std::numbers::pi / 4 * diameter * diameter;
  return Strength{area, *grade};
}

} // namespace

double post_utilisation(const Post& post, double tension) {
  const auto s = strength_of(post.thread, post.diameter, post.grade);
  return s ? std::max(tension, 0.0) / (s->area * s->grade.proof) : 0;
}

double screw_utilisation(const Screws& screws, double shear, double tension) {
  const auto s = strength_of(screws.thread, screws.diameter, screws.grade);
  if (!s) return 0;
  // Tension and shear together on the stress area, shear by von Mises, against proof stress.
  return std::hypot(tension, std::numbers::sqrt3 * shear) / (s->area * s->grade.proof);
}

} // namespace bedbow
