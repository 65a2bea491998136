#include "mesh/check/swing.h"

#include "mesh/machine/setback.h"
#include "mesh/piece/si.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

constexpr double step = 0.25 * si::degree;

Polygon outline_at(const Machine& machine, const SwingBody& mover, double angle) {
  return mover.kind == SwingBody::Kind::flange ? flange_outline(*machine.sheet, angle) : swung(mover.outline, angle);
}

Reach mover_reach(const Machine& machine, const SwingBody& mover) {
  if (mover.kind != SwingBody::Kind::flange) return bedbow::reach_of(mover.outline);
  return {0, std::hypot(machine.sheet->flange, machine.sheet->thickness)};
}

/// Where they penetrate each other; depth 0 where it is no more than the clearance.
Overlap overlap_at(const Machine& machine, const SwingBody& mover, const SwingBody& obstacle, double angle,
                   double clearance) {
  const Polygon outline = outline_at(machine, mover, angle);
  if (outline.empty() || box_overlap(outline, obstacle.outline) <= clearance) return {};
  return overlap_of(outline, obstacle.outline);
}

} // namespace

SwingAngles swing_angles(const Machine& m, const Springback& springback) {
  if (!m.sheet) return {};
  const double bend = std::min(std::max(greatest_angle(m), m.sheet->angle + springback.arc), steepest_bend);
  const double flange = std::min(bend + springback.elastic(), steepest_bend);
  return {bend, flange, flange + deflection_allowance};
}

Polygon flange_outline(const Sheet& s, double angle) {
  const double outer = s.inside_radius + s.thickness;
  const double tangent = outer * std::tan(angle / 2);
  if (!(tangent <= s.flange)) return {};
  const Eigen::Vector2d centre(tangent, outer);
  constexpr double piece = 2 * si::degree;
  const int pieces = std::max(1, static_cast<int>(std::ceil(angle / piece)));
  const auto on_arc = [&](double radius, int i) -> Eigen::Vector2d {
    const double a = angle * i / pieces;
    return centre - radius * Eigen::Vector2d(std::sin(a), std::cos(a));
  };
  Polygon out;
  for (int i = 0; i <= pieces; ++i) out.push_back(on_arc(outer, i));
  const Eigen::Vector2d end = s.flange * Eigen::Vector2d(-std::cos(angle), std::sin(angle));
  out.push_back(end);
  out.emplace_back(end + s.thickness * Eigen::Vector2d(std::sin(angle), std::cos(angle)));
  for (int i = pieces; i >= 0; --i) out.push_back(on_arc(s.inside_radius, i));
  return out;
}

std::optional<SwingMeeting> first_meeting(const Machine& machine, const SwingBody& mover, const SwingBody& obstacle,
                                          double angle, double clearance) {
  const double from = std::max(mover.from, obstacle.from), to = std::min(mover.to, obstacle.to);
  if (!(to - from > swing_clearance) || !std::isfinite(angle)) return std::nullopt;
  const Reach of_mover = mover_reach(machine, mover), of_obstacle = bedbow::reach_of(obstacle.outline);
  if (of_mover.least >= of_obstacle.greatest || of_obstacle.least >= of_mover.greatest) return std::nullopt;
  const int steps = std::max(1, static_cast<int>(std::ceil(angle / step)));
  const auto met = [&](double a) { return overlap_at(machine, mover, obstacle, a, clearance).depth > clearance; };
  for (int i = 0; i <= steps; ++i) {
    double hit = angle * i / steps;
    if (!met(hit)) continue;
    double clear = i == 0 ? hit : angle * (i - 1) / steps;
    while (hit - clear > 1e-6) (met((clear + hit) / 2) ? hit : clear) = (clear + hit) / 2;
    const Eigen::Vector2d at = overlap_at(machine, mover, obstacle, hit, clearance).at;
    return SwingMeeting{hit, {(from + to) / 2, at.x(), at.y()}, from, to};
  }
  return std::nullopt;
}

std::vector<SwingClash> swing_clashes(const Machine& m, const Registry<ShapeEntry>& shapes,
                                      const Springback& springback) {
  std::vector<SwingClash> out;
  if (!m.sheet || m.solve.dimension == 2 || !std::isfinite(m.sheet->angle)) return out;
  const SwingAngles angles = swing_angles(m, springback);
  const auto standing = standing_bodies(m, shapes);
  for (const SwingBody& mover : swinging_bodies(m, shapes)) {
    const double angle = mover.kind == SwingBody::Kind::flange ? angles.flange : angles.apron;
    for (const SwingBody& obstacle : standing)
      if (const auto met = first_meeting(m, mover, obstacle, angle)) out.push_back({mover, obstacle, *met, angle});
  }
  return out;
}

std::optional<BendLimit> bend_limit(const Machine& machine, const Registry<ShapeEntry>& shapes) {
  std::optional<BendLimit> least;
  const auto standing = standing_bodies(machine, shapes);
  for (const SwingBody& mover : swinging_bodies(machine, shapes)) {
    if (mover.kind != SwingBody::Kind::flange) continue;
    for (const SwingBody& obstacle : standing)
      if (const auto met = first_meeting(machine, mover, obstacle, least ? least->angle : steepest_bend);
          met && (!least || met->angle < least->angle))
        least = BendLimit{met->angle, obstacle.name};
  }
  return least;
}

std::optional<double> clearing_shift(const Machine& machine, const SwingBody& mover, const SwingBody& obstacle,
                                     double angle) {
  constexpr double touching = 1e-6;
  const auto passes = [&](double shift) {
    SwingBody moved = obstacle;
    for (Eigen::Vector2d& p : moved.outline) p.x() += shift;
    return !first_meeting(machine, mover, moved, angle, touching);
  };
  constexpr double tenth = 1e-4;
  int low = 0, high = 2000; // tenths of a millimetre
  if (!passes(high * tenth)) return std::nullopt;
  while (high - low > 1) (passes((low + high) / 2 * tenth) ? high : low) = (low + high) / 2;
  return high * tenth;
}

} // namespace bedbow
