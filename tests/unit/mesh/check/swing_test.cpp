// What apron and flange meet as they swing up, and at what angle: by trigonometry on the corner that is met.
#include "mesh/check/swing.h"
#include "mesh/piece/shapes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace bedbow {
namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr double t = 1.5e-3, r = 2e-3;

Registry<ShapeEntry> shapes() {
  Registry<ShapeEntry> out("section shape");
  builtin_shapes(out);
  return out;
}

/// A flat from y0 to y1 and z0 to z1 [mm].
Bar flat(const std::string& name, double y0, double y1, double z0, double z1) {
  Bar bar;
  bar.name = name;
  bar.shape.width = (y1 - y0) * 1e-3;
  bar.shape.height = (z1 - z0) * 1e-3;
  bar.at = Eigen::Vector2d(y0 + y1, z0 + z1) * 0.5e-3;
  bar.length = 1;
  return bar;
}

/// Bed, clamp whose square front stands at y = 3.5 mm, apron.
Machine folder(double flange = 25e-3) {
  Machine m;
  m.sheet = Sheet{};
  m.sheet->thickness = t;
  m.sheet->inside_radius = r;
  m.sheet->width = 0.6;
  m.sheet->centre = 0.5;
  m.sheet->flange = flange;
  m.sheet->angle = 90 * degree;
  for (const BodyKind kind : all_bodies) m.body(kind).kind = kind;
  m.body(BodyKind::bed).bars = {flat("top", 0, 120, -20, 0)};
  m.body(BodyKind::clamp).bars = {flat("plate", 3.5, 123.5, 1.5, 21.5)};
  m.body(BodyKind::apron).bars = {flat("face", -81, -1, -20, 0)};
  m.nose.bar = 0;
  m.nose.setback = 3.5e-3;
  m.nose.land = 15e-3;
  return m;
}

SwingBody named(const std::vector<SwingBody>& all, const std::string& name) {
  const auto found = std::ranges::find(all, name, &SwingBody::name);
  EXPECT_NE(found, all.end()) << name;
  return found == all.end() ? SwingBody{} : *found;
}

std::optional<SwingMeeting> meeting(const Machine& m, const std::string& mover, const std::string& obstacle,
                                    double angle) {
  return first_meeting(m, named(swinging_bodies(m, shapes()), mover), named(standing_bodies(m, shapes()), obstacle),
                       angle);
}

// The folder with a clearance everywhere swings freely.
TEST(Swing, NothingMeetsInAMachineThatFolds) {
  const Machine m = folder();
  for (const SwingBody& mover : swinging_bodies(m, shapes()))
    for (const SwingBody& obstacle : standing_bodies(m, shapes()))
      EXPECT_FALSE(first_meeting(m, mover, obstacle, 92 * degree)) << mover.name << ' ' << obstacle.name;
}

// The shipped folders with set-back 0: the flange would have stood in the clamp, from its first degrees on.
TEST(Swing, AFlangeDoesNotPassAClampAtTheBendLine) {
  Machine m = folder();
  m.body(BodyKind::clamp).bars = {flat("plate", 0, 120, 1.5, 21.5)};
  const auto met = meeting(m, "the flange", "clamp.plate", 90 * degree);
  ASSERT_TRUE(met);
  EXPECT_LT(met->angle, 20 * degree);
  const auto shift = clearing_shift(m, named(swinging_bodies(m, shapes()), "the flange"),
                                    named(standing_bodies(m, shapes()), "clamp.plate"), 90 * degree);
  ASSERT_TRUE(shift);
  EXPECT_NEAR(*shift, t + r, 1e-9);
}

// A front without relief stops the flange where its inner face, y sin + z cos = t, comes to the top corner.
TEST(Swing, ASquareFrontLimitsTheAngle) {
  const Machine m = folder();
  const auto met = meeting(m, "the flange", "clamp.plate", 120 * degree);
  ASSERT_TRUE(met);
  const Eigen::Vector2d corner(3.5e-3, 21.5e-3);
  const double angle =
      180 * degree - std::asin((t - swing_clearance) / corner.norm()) - std::atan2(corner.y(), corner.x());
  EXPECT_NEAR(met->angle, angle, 1e-5);
  EXPECT_NEAR((met->at.tail<2>() - corner).norm(), 0, 1e-6);
  EXPECT_NEAR(met->from, 0.2, 1e-12);
  EXPECT_NEAR(met->to, 0.8, 1e-12);
}

TEST(Swing, TheGreatestBendIsThatOfTheNearestFront) {
  Machine m = folder();
  const auto limit = bend_limit(m, shapes());
  ASSERT_TRUE(limit);
  EXPECT_EQ(limit->by, "clamp.plate");
  EXPECT_NEAR(limit->angle, meeting(m, "the flange", "clamp.plate", 120 * degree)->angle, 2e-6);
  m.body(BodyKind::clamp).bars = {flat("plate", 30, 150, 1.5, 21.5)};
  EXPECT_FALSE(bend_limit(m, shapes())) << "a flange of 25 mm never reaches so far back";
}

// A rounded edge lets the nose come forward to the flange; a sharp one there would stand in the bend.
TEST(Swing, ARoundedNosePassesTheBendWhereASharpOneDoesNot) {
  Machine m = folder();
  m.body(BodyKind::clamp).bars = {flat("plate", 1.5, 121.5, 1.5, 21.5)};
  m.nose.setback = 1.5e-3;
  EXPECT_TRUE(meeting(m, "the flange", "clamp.plate", 90 * degree));
  m.nose.radius = 2e-3;
  EXPECT_FALSE(meeting(m, "the flange", "clamp.plate", 90 * degree));
}

// A face of 81 mm meets the upper front corner of a bar above, (10, 70) mm, when it points there.
TEST(Swing, AnApronMeetsABarAtTheAngleOfItsCorner) {
  Machine m = folder();
  m.body(BodyKind::clamp).bars.push_back(flat("rib", 10, 30, 40, 70));
  const auto met = meeting(m, "apron.face", "clamp.rib", 150 * degree);
  ASSERT_TRUE(met);
  const double corner = std::hypot(10, 70) * 1e-3;
  EXPECT_NEAR(met->angle, 180 * degree - std::atan2(70, 10) + std::asin(swing_clearance / corner), 1e-5);
  m.body(BodyKind::clamp).bars.back().length = 0.3;
  m.body(BodyKind::apron).bars.back().start = 0.4; // beside each other along x
  EXPECT_FALSE(meeting(m, "apron.face", "clamp.rib", 150 * degree));
}

// An apron's rib under the bed is in the bed before it has begun to swing.
TEST(Swing, AnApronInTheBedMeetsAtNoughtDegrees) {
  Machine m = folder();
  m.body(BodyKind::apron).bars.push_back(flat("rib", -30, 10, -15, -5));
  const auto met = meeting(m, "apron.rib", "bed.top", 92 * degree);
  ASSERT_TRUE(met);
  EXPECT_EQ(met->angle, 0);
}

// ISO 4032, ISO 7089 (from memory): M20 is 30 mm across flats, nut 18 mm high, washer 3 mm; pitch 2.5 mm.
TEST(Swing, ANutStandsOnTheBarThatItPullsDown) {
  Machine m = folder();
  Post post;
  post.name = "left";
  post.joins = {Ref{Ref::Kind::bar, BodyKind::bed, 0}, Ref{Ref::Kind::bar, BodyKind::clamp, 0}};
  post.at = {0.04, 0.07, left_out};
  post.diameter = 20e-3;
  post.thread = "M20";
  m.posts = {post};
  const SwingBody nut = named(standing_bodies(m, shapes()), "the nut of post left");
  EXPECT_NEAR(nut.from, 0.04 - 15e-3 * 2 / std::numbers::sqrt3, 1e-6);
  EXPECT_NEAR(nut.outline[0].y(), 21.5e-3, 1e-12);
  EXPECT_NEAR(nut.outline[2].y(), 21.5e-3 + 3e-3 + 18e-3 + 5e-3, 1e-6);
}

// A clamp drawn for 1.5 mm is raised when 2 mm goes in; its bars do not stand in the sheet.
TEST(Swing, TheClampLiesOnAThickerSheet) {
  Machine m = folder();
  m.sheet->thickness = 2e-3;
  EXPECT_NEAR(named(standing_bodies(m, shapes()), "clamp.plate").outline[0].y(), 2e-3, 1e-12);
}

TEST(Swing, AnglesAddUp) {
  Machine m = folder();
  EXPECT_NEAR(swing_angles(m, {0.7 * degree}).bend, 90.7 * degree, 1e-12);
  EXPECT_NEAR(swing_angles(m, {0.7 * degree}).apron, 92.7 * degree, 1e-12);
  // Flange and grip spring back by 2 deg more: the bend itself goes no further.
  EXPECT_NEAR(swing_angles(m, {0.7 * degree, 1.5 * degree, 0.5 * degree}).bend, 90.7 * degree, 1e-12);
  EXPECT_NEAR(swing_angles(m, {0.7 * degree, 1.5 * degree, 0.5 * degree}).flange, 92.7 * degree, 1e-12);
  EXPECT_NEAR(swing_angles(m, {0.7 * degree, 1.5 * degree, 0.5 * degree}).apron, 94.7 * degree, 1e-12);
  m.solve.angles = {0, 120 * degree};
  EXPECT_NEAR(swing_angles(m, {0.7 * degree}).bend, 120 * degree, 1e-12);
}

// Bend and flange together are as long as the sheet that is in them: along the middle line.
TEST(Swing, TheFlangesOutlineHoldsTheSheet) {
  for (const double angle : {10.0, 45.0, 90.0, 120.0}) {
    const Polygon outline = flange_outline(*folder().sheet, angle * degree);
    double area = 0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Eigen::Vector2d &a = outline[i], &b = outline[(i + 1) % outline.size()];
      area += (a.x() * b.y() - a.y() * b.x()) / 2;
    }
    const double tangent = (t + r) * std::tan(angle * degree / 2);
    EXPECT_NEAR(std::abs(area), t * (25e-3 - tangent + (r + t / 2) * angle * degree), 1e-3 * t * 25e-3) << angle;
  }
}

} // namespace
} // namespace bedbow
