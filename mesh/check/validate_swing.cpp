// Set-back of the nose, and obstacles in the way of apron and flange. Derivation: docs/theory/sheet.md.
#include "mesh/check/swing.h"
#include "mesh/check/validate_parts.h"
#include "mesh/machine/setback.h"
#include "mesh/piece/si.h"

#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

std::string in_deg(double angle) {
  char text[40];
  std::snprintf(text, sizeof text, "%.1f deg", si::in_degrees(angle));
  return text;
}

std::string in_tenths(double length) {
  char text[40];
  std::snprintf(text, sizeof text, "%.1f mm", length * 1000);
  return text;
}

/// Rounded up to a hundredth of a millimetre, so that the recommended value is sufficient [m].
double rounded_up(double length) {
  return std::ceil(length * 1e5 - 1e-6) / 1e5;
}

void validate_setback(Validator& v, const Springback& springback) {
  const Machine& m = v.machine;
  const double least = required_setback(m, springback.arc);
  if (!(m.nose.setback < least - 1e-6)) return;
  const double swung = m.sheet->angle + springback.arc;
  const std::string bend = greatest_angle(m) >= swung ? in_deg(greatest_angle(m))
                                                      : in_deg(swung) + " (" + in_deg(m.sheet->angle) + " and " +
                                                            in_deg(springback.arc) + " springback)";
  const std::string edge = m.nose.radius > 0 ? "an edge rounded to " + in_mm(m.nose.radius) : "a sharp edge";
  v.error(m.nose.pos, "clamp.nose.setback",
          "a nose edge at y = " + in_mm(m.nose.setback) + " is in the flange's way: bent to " + bend + " over " +
              in_mm(m.sheet->inside_radius) + ", a sheet of " + in_mm(m.sheet->thickness) + " needs at least " +
              in_mm(rounded_up(least)) + " behind the bend line for " + edge + "; give setback = \"" +
              in_mm(rounded_up(least)) + "\", and move the clamp's bars back with it");
}

/// The swing of the mover as a sum of its contributions, for messages.
std::string whole_swing(const Machine& m, const SwingAngles& angles, const SwingBody& mover,
                        const Springback& springback) {
  const bool flange = mover.kind == SwingBody::Kind::flange;
  const bool listed = angles.bend > m.sheet->angle + springback.arc;
  const double elastic = angles.flange - angles.bend;
  return in_deg(flange ? angles.flange : angles.apron) + " (" +
         (listed ? in_deg(angles.bend) + " in [solve] angles"
                 : in_deg(m.sheet->angle) + " wanted, " + in_deg(springback.arc) + " springback") +
         (elastic > 0 ? ", " + in_deg(elastic) + " that flange and grip spring back" : "") +
         (flange ? "" : ", " + in_deg(deflection_allowance) + " for deflection of the machine") + ")";
}

/// Possible remedies.
std::string way_out(const Machine& m, const SwingBody& mover, const SwingBody& obstacle, const SwingMeeting& meeting,
                    double angle, const Springback& springback) {
  if (obstacle.kind == SwingBody::Kind::bed)
    return "; check `at` and the sizes of both: the apron hangs in front of the bend line, below its face";
  const auto shift = clearing_shift(m, mover, obstacle, angle);
  std::string out;
  if (mover.kind == SwingBody::Kind::flange) {
    const double most = meeting.angle - springback.sum();
    if (most > 0) out += ". As drawn it bends to " + in_deg(most) + " at most";
  }
  out += shift ? "; " + in_tenths(*shift) + " further back it would clear" : "";
  out += out.empty() ? "; " : ", or ";
  return out + (mover.kind == SwingBody::Kind::flange ? "slope its front, or use a shorter flange"
                                                      : "use a smaller bar for one of the two");
}

/// An error where the bend itself collides, a warning where only a deflecting apron would swing so far, or a flange
/// that bends elastically.
void report_clash(Validator& v, const SwingClash& clash, const SwingAngles& angles, const Springback& springback) {
  const Machine& m = v.machine;
  const SwingMeeting& met = clash.meeting;
  const SwingBody& obstacle = clash.obstacle;
  std::string text = clash.mover.name + " meets " + obstacle.name + " at " + in_deg(met.angle) + " of " +
                     whole_swing(m, angles, clash.mover, springback) + ", at y = " + in_tenths(met.at.y()) +
                     ", z = " + in_tenths(met.at.z()) + " from x = " + in_tenths(met.from) + " to " +
                     in_tenths(met.to) + way_out(m, clash.mover, obstacle, met, clash.angle, springback);
  if (met.angle > angles.bend)
    v.warning(obstacle.pos, obstacle.name, std::move(text));
  else
    v.error(obstacle.pos, obstacle.name, std::move(text));
}

} // namespace

void validate_swing(Validator& v, const Springback& springback) {
  const Machine& m = v.machine;
  if (!m.sheet || !std::isfinite(m.sheet->angle)) return;
  if (m.nose.bar >= 0) validate_setback(v, springback);
  if (m.solve.dimension == 2) return; // in the x-z plane bars have no depth that could meet anything
  const SwingAngles angles = swing_angles(m, springback);
  for (const SwingClash& clash : swing_clashes(m, v.shapes, springback)) report_clash(v, clash, angles, springback);
}

} // namespace bedbow
