// Sensitivity, fit, shims and truss rod on bars whose deflection is known in closed form.
#include "io/case/knob.h"
#include "solver/study/crown.h"
#include "solver/study/fit.h"
#include "solver/study/sensitivity.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/sources.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace bedbow::verification {

namespace {

std::string on_ends() {
  return support("left", 0, "\"x\", \"y\", \"z\", \"rx\"") + support("right", 1000, "\"y\", \"z\"");
}

/// Change of the bed's bow for the told step of one key [mm].
Sensitivity moved_by(const std::string& text, const std::string& key) {
  const Registries registries = builtin_registries();
  const CaseSource source = source_of_text(text, "case.toml");
  const auto knobs = knobs_of(source);
  const auto knob = std::ranges::find(knobs, key, &Knob::name);
  if (knob == knobs.end()) throw std::runtime_error("no quantity " + key);
  const double told = knob->length ? 1e-4 : 0.01 * knob->si;
  const Watched base = watched_of(solved(text).steps.front());
  return sensitivity(key, base, told, told, [&](double offset) {
    return std::optional(watched_of(
        analyse(understand(turned(source, *knob, knob->si + offset), registries).machine, registries).steps.front()));
  });
}

/// What five dials along z read over two supports of these stiffnesses.
FitModel two_springs(const Machine& m) {
  return [&m](const Eigen::VectorXd& k) {
    Machine moved = m;
    for (Eigen::Index i = 0; i < 2; ++i) moved.supports[static_cast<std::size_t>(i)].stiffness = k[i];
    const Findings f = analyse(moved, builtin_registries());
    Eigen::VectorXd w(5);
    for (std::size_t i = 0; i < 5; ++i) w[static_cast<Eigen::Index>(i)] = f.steps.front().dials[i].movement.z();
    return w;
  };
}

} // namespace

// A2: w = PL^3/48EI + PL/(4 kappa G A) = 0.2755732 (60/h)^3 + 0.00303571 (60/h) mm, likewise with the width, E and P.
TEST(RoarkBeamSensitivity, HeightWidthAndForce) {
  const std::string text = sample_bar(on_ends() + force_at(500, -1000));
  const double bending = 0.2755732, shear = 0.00303571;
  record("A2", roark_beam_table, "bow for 0.1 mm of height", moved_by(text, "bed.bar.bar.height").change[0] * 1e3,
         (-3 * bending - shear) * 0.1 / 60, 1e-4, "mm");
  record("A2", roark_beam_table, "bow for 0.1 mm of width", moved_by(text, "bed.bar.bar.width").change[0] * 1e3,
         (-bending - shear) * 0.1 / 20, 1e-4, "mm");
  record("A2", roark_beam_table, "bow for 1 % of the force", moved_by(text, "load.1.force[3]").change[0] * 1e3,
         -(bending + shear) * -0.01, 1e-4, "mm");
}

// Two springs under a bar: ends sink by R/k, the bar bends by P b x (L^2 - b^2 - x^2)/(6 E I L) left of the force. The
// readings are made from that with 0.5 um of noise; the fit works on the program's model.
TEST(RoarkBeamFit, FindsTheSpringsUnderABar) {
  const double L = 1000, P = 1000, a = 600, b = L - a, k1 = 800, k2 = 1500;
  const Machine m = machine_of(slender_bar(on_ends() + force_at(a, -P) + dial_at("0", 0) + dial_at("1", 250) +
                                           dial_at("2", 500) + dial_at("3", 750) + dial_at("4", 1000)));
  const auto bends = [&](double x) {
    if (x > a) return P * a * (L - x) * (L * L - a * a - (L - x) * (L - x)) / (6 * sample_EI * L);
    return P * b * x * (L * L - b * b - x * x) / (6 * sample_EI * L);
  };
  std::mt19937 random(3);
  std::normal_distribution<double> noise(0, 5e-7);
  Eigen::VectorXd readings(5);
  for (int i = 0; i < 5; ++i) {
    const double x = 250 * i;
    readings[i] = -1e-3 * (P * b / L / k1 * (1 - x / L) + P * a / L / k2 * (x / L) + bends(x)) + noise(random);
  }
  const FitResult r = fit({{"left", 3e6}, {"right", 3e5}}, readings, two_springs(m), 5e-7);
  ASSERT_TRUE(r.converged);
  // Three standard errors, as the fit itself tells them; noise of 0.5 um on 0.5 mm is 1 in 1000.
  record("", roark_beam_table, "left spring from readings with noise", r.values[0].value / 1e3, k1,
         3 * r.values[0].error / (k1 * 1e3), "N/mm");
  record("", roark_beam_table, "right spring from readings with noise", r.values[1].value / 1e3, k2,
         3 * r.values[1].error / (k2 * 1e3), "N/mm");
  // Error of R/k: noise / sqrt(sum of squares of the lever (1 - x/L) and its like), 2 x 2 normal equations in closed
  // form.
  const double A = 1.875, B = 0.625;                          // sum (1 - x/L)^2 and sum (1 - x/L) x/L over five dials
  const double error = 5e-4 * std::sqrt(A / (A * A - B * B)); // of the left end's sink [mm]
  record("", "normal equations of a straight line through five dials", "standard error of the left spring",
         r.values[0].error / 1e3, k1 * k1 / (P * b / L) * error, 0.01, "N/mm");
  EXPECT_TRUE(r.alike.empty());
}

// The case's readings were made by hand, from springs of 2 and 3 kN/mm: ends sink by W b / (L k), plus Roark's bend of
// a bar between supports, rounded to hundredths of a millimetre as a dial shows.
TEST(RoarkBeamFit, FindsTheTrestlesOfTheCase) {
  const Machine m = machine_of(project_file("cases/trestle-fit/case.toml"));
  Eigen::VectorXd readings(5);
  for (std::size_t i = 0; i < 5; ++i) readings[static_cast<Eigen::Index>(i)] = *m.dials.at(i).reading;
  // Rounding to 0.01 mm and errors of a few micrometres leave about 5 um at a dial.
  const FitResult r = fit({{"left", 5e6}, {"right", 5e6}}, readings, two_springs(m), 5e-6);
  ASSERT_TRUE(r.converged);
  record("", "made readings, springs of 2 and 3 kN/mm", "left trestle, within three standard errors",
         r.values[0].value / 1e3, 2000, 3 * r.values[0].error / 2e6, "N/mm");
  record("", "made readings, springs of 2 and 3 kN/mm", "right trestle, within three standard errors",
         r.values[1].value / 1e3, 3000, 3 * r.values[1].error / 3e6, "N/mm");
}

// A strip on the apron's edge turns the flange there by its height over the flange's depth (small angles). The angle is
// even where each place makes up for what it lacked: height = depth x (greatest angle less the angle there).
TEST(CrownByHand, HeightIsAngleTimesDepth) {
  const Machine m = machine_of(project_file("cases/hive-lid/case.toml"));
  CrownTask task;
  task.step = 1;
  const BendLine line = solved(m).steps.at(1).bend_line;
  task.places = line.x; // a place at every station: nothing is left between them
  const CrownResult r = find_crown(m, builtin_registries(), task);
  const double most = std::ranges::max(line.angle_deviation);
  for (const std::size_t quarter : {1U, 2U, 3U}) {
    const std::size_t i = quarter * (line.x.size() - 1) / 4;
    record("", "small angles: height over depth of the flange",
           "height of the shim at station " + std::to_string(i) + " of " + std::to_string(line.x.size()),
           r.places.at(i).height * 1e3, m.sheet->flange * (most - line.angle_deviation.at(i)) * 1e3, 1e-3, "mm");
  }
}

} // namespace bedbow::verification
