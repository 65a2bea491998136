// The tabulated single-span and continuous beams, from the text of a case to what its dials and supports show.
#include "tests/verification/support/record.h"
#include "tests/verification/support/sources.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

// engineersedge.com/calculators/beam_three_supports_uniform_load_16062.htm, where
// w(x) = q (l^3 x - 3 l x^3 + 2 x^4)/(48 E I).
const std::string two_spans = "two equal spans, Lindeburg, Civil Engineering Reference Manual, in engineersedge.com";
// piping-designer.com/disciplines/civil/structural/2403-three-span-continuous-beam-equal-spans-uniformly-distributed-load;
// the deflection's digits from w(x) = q (l^3 x/40 - l x^3/15 + x^4/24)/(E I).
const std::string three_spans = "three equal spans, piping-designer.com, structural 2403";

constexpr double printed = 1e-6; // the references have seven digits
constexpr double span = 1000, line_load = -10, point_load = -1000;
const std::string pinned_end = "\"x\", \"y\", \"z\", \"rx\"", roller_end = "\"y\", \"z\"";
const std::string clamped_end = "\"x\", \"y\", \"z\", \"rx\", \"ry\", \"rz\"",
                  guided_end = "\"y\", \"z\", \"rx\", \"ry\", \"rz\"";

double down(const std::string& text, const std::string& name) {
  return -dial(solved(text), name).z();
}

TEST(RoarkThroughTheProgram, SimplySupported) {
  const std::string on = support("left", 0, pinned_end) + support("right", span, roller_end) + dial_at("mid", span / 2);
  record("A1", roark_beam_table, "w mid, uniform load", down(sample_bar(on + uniform_load(span, line_load)), "mid"),
         1.722332 + 0.0151786, printed, "mm");
  record("A2", roark_beam_table, "w mid, mid force", down(sample_bar(on + force_at(span / 2, point_load)), "mid"),
         0.2755732 + 0.00303571, printed, "mm");
}

TEST(RoarkThroughTheProgram, ClampedAtBothEnds) {
  const std::string on =
      support("left", 0, clamped_end) + support("right", span, guided_end) + dial_at("mid", span / 2);
  record("A3", roark_beam_table, "w mid, uniform load", down(sample_bar(on + uniform_load(span, line_load)), "mid"),
         0.3444665 + 0.0151786, printed, "mm");
  record("A4", roark_beam_table, "w mid, mid force", down(sample_bar(on + force_at(span / 2, point_load)), "mid"),
         0.0688933 + 0.00303571, printed, "mm");
}

TEST(RoarkThroughTheProgram, Cantilever) {
  const std::string on = support("root", 0, clamped_end) + dial_at("tip", span);
  record("A5", cantilever_tables, "w tip, tip force", down(sample_bar(on + force_at(span, point_load)), "tip"),
         4.409171 + 0.0121429, printed, "mm");
  record("A6", "that of A5 summed over the length: q l^4/(8 E I) + q l^2/(2 kappa G A)", "w tip, uniform load",
         down(sample_bar(on + uniform_load(span, line_load)), "tip"), 16.534392 + 0.0607143, printed, "mm");
}

TEST(RoarkThroughTheProgram, ClampedAndPinned) {
  const std::string on =
      support("left", 0, clamped_end) + support("right", span, roller_end) + dial_at("worst", span * (1 - 0.4215));
  record("A7", "half of " + two_spans, "w at 0.4215 L from the pin",
         down(slender_bar(on + uniform_load(span, line_load)), "worst"), 0.716420, 3e-6,
         "mm"); // the reference's 184.634 has six digits
}

// The part of the deflection that only shear explains, of the same bar with and without shear flexibility.
TEST(RoarkThroughTheProgram, ShearPartAfterCowper) {
  const std::string on = support("root", 0, clamped_end) + dial_at("tip", span) + force_at(span, point_load);
  const double shear = down(sample_bar(on), "tip") - down(slender_bar(on), "tip");
  record("A8", "Cowper, J. Appl. Mech. 33 (1966) 335-340", "kappa of the rectangle at nu = 0.3",
         -point_load * span / (210000 / 2.6 * 1200 * shear), 0.8496732, 1e-6);
}

TEST(ContinuousBeams, TwoEqualSpans) {
  const double l = 1000, whole = 2 * l;
  const Findings f = solved(slender_bar(support("end", 0, pinned_end) + support("middle", l, roller_end) +
                                            support("other", whole, roller_end) + dial_at("worst", 0.4215 * l) +
                                            uniform_load(whole, line_load),
                                        whole));
  const auto& s = joints_of(f.steps.front(), JointKind::support);
  record("A9", two_spans, "end reaction over q l", joint(s, "end").force.z() / (-line_load * l), 0.375, 1e-9);
  record("A9", two_spans, "other end's reaction over q l", joint(s, "other").force.z() / (-line_load * l), 0.375, 1e-9);
  record("A9", two_spans, "middle reaction over q l", joint(s, "middle").force.z() / (-line_load * l), 1.25, 1e-9);
  // My is positive where the upper face is pulled: here over the middle support.
  const double M = forces_at(field(f, "bed.bar"), l / 1e3).My * 1e3;
  record("A9", two_spans, "moment over the middle support over q l^2", std::abs(M) / (-line_load * l * l), 0.125, 1e-9);
  record("A9", two_spans, "w at 0.4215 l over q l^4/EI",
         -dial(f, "worst").z() * sample_EI / (-line_load * std::pow(l, 4)), 1 / 184.634, 3e-6); // six digits
}

TEST(ContinuousBeams, ThreeEqualSpans) {
  const double l = 1000, whole = 3 * l;
  const Findings f =
      solved(slender_bar(support("a", 0, pinned_end) + support("b", l, roller_end) + support("c", 2 * l, roller_end) +
                             support("d", whole, roller_end) + dial_at("worst", 0.446 * l) +
                             uniform_load(whole, line_load) + "[solve]\nelement_size = \"20 mm\"\n",
                         whole));
  const auto& s = joints_of(f.steps.front(), JointKind::support);
  const std::pair<const char*, double> reactions[] = {{"a", 0.4}, {"b", 1.1}, {"c", 1.1}, {"d", 0.4}};
  for (const auto& [name, share] : reactions)
    record("A10", three_spans, std::string("reaction ") + name + " over q l",
           joint(s, name).force.z() / (-line_load * l), share, 1e-9);
  const BarField& bar = field(f, "bed.bar");
  const double over = forces_at(bar, l / 1e3).My, between = forces_at(bar, 0.4 * l / 1e3).My;
  record("A10", three_spans, "moment over an inner support over q l^2", std::abs(over) * 1e3 / (-line_load * l * l),
         0.1, 1e-9);
  record("A10", three_spans, "moment at 0.4 l over q l^2", std::abs(between) * 1e3 / (-line_load * l * l), 0.08, 1e-9);
  EXPECT_LT(over * between, 0);
  record("A10", three_spans, "w at 0.446 l over q l^4/EI",
         -dial(f, "worst").z() * sample_EI / (-line_load * std::pow(l, 4)), 0.0068842, 1e-5); // five digits
}

} // namespace
} // namespace bedbow::verification
