#include "mesh/check/validate_parts.h"
#include "mesh/machine/setback.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Thicker stock is plate [m]. Common practice, no source: flat stock from about 6 mm is sold as plate.
constexpr double thickest_sheet = 0.006;

const Bar* edge_bar(const Machine& m, BodyKind kind) {
  const Body& body = m.body(kind);
  return body.edge_bar >= 0 ? &body.bars[static_cast<std::size_t>(body.edge_bar)] : nullptr;
}

/// The sheet must lie wholly on the edge bar of a body.
void validate_extent(Validator& v, BodyKind kind) {
  const Sheet& s = *v.machine.sheet;
  const Bar* bar = edge_bar(v.machine, kind);
  if (!bar) return;
  if (s.left() < bar->start - same_length || s.right() > bar->end() + same_length)
    v.error(s.pos, "sheet",
            "the sheet is off the " + to_string(kind) + ": it extends from x = " + in_mm(s.left()) + " to " +
                in_mm(s.right()) + ", the bar " + to_string(kind) + "." + bar->name + " from " + in_mm(bar->start) +
                " to " + in_mm(bar->end()) + "; change width or centre");
}

void validate_bend(Validator& v) {
  const Sheet& s = *v.machine.sheet;
  if (s.angle > steepest_bend)
    v.error(s.pos, "sheet.angle", "a folder cannot bend beyond 175 deg; 90 deg is a right angle");
  const double bend = s.thickness + s.inside_radius; // extent of the bend itself from its mould line at 90 deg
  if (s.flange < bend - same_length)
    v.error(s.pos, "sheet.flange",
            "the flange of " + in_mm(s.flange) + " is shorter than the bend, thickness and inside radius, of " +
                in_mm(bend) + ": the apron has nothing straight to push on");
  if (s.thickness > thickest_sheet)
    v.warning(s.pos, "sheet.thickness",
              in_mm(s.thickness) + " is plate, not sheet: beyond " + in_mm(thickest_sheet) +
                  " it is not bent by hand in a folder (common practice, no source), and the moment law assumes a "
                  "sheet that is "
                  "thin compared with flange and grip");
  if (s.inside_radius > 100 * s.thickness)
    v.warning(s.pos, "sheet.inside_radius",
              "with a radius above a hundred thicknesses a sheet springs back more than it bends");
}

void validate_neighbours(Validator& v, const Fingers& f, std::size_t i) {
  const double gap = f.starts[i] - (f.starts[i - 1] + f.widths[i - 1]);
  const std::string pair = "fingers " + std::to_string(i) + " and " + std::to_string(i + 1);
  constexpr double wide = 0.002;
  if (gap < -same_length) v.warning(f.pos, "clamp.fingers", pair + " overlap by " + in_mm(-gap));
  const bool under_sheet =
      v.machine.sheet && f.starts[i] > v.machine.sheet->left() && f.starts[i] - gap < v.machine.sheet->right();
  if (gap > wide && under_sheet)
    v.warning(f.pos, "clamp.fingers", "between " + pair + " a gap of " + in_mm(gap) + " leaves the sheet unheld");
}

void validate_fingers(Validator& v) {
  const Fingers& f = *v.machine.fingers;
  if (f.widths.empty()) return;
  for (std::size_t i = 1; i < f.widths.size(); ++i) validate_neighbours(v, f, i);
  const double left = f.starts.front(), right = f.starts.back() + f.widths.back();
  if (const Bar* bar = edge_bar(v.machine, BodyKind::clamp);
      bar && (left < bar->start - same_length || right > bar->end() + same_length))
    v.error(f.pos, "clamp.fingers",
            "the fingers extend from x = " + in_mm(left) + " to " + in_mm(right) + ", the bar clamp." + bar->name +
                " that carries them from " + in_mm(bar->start) + " to " + in_mm(bar->end()));
  if (!v.machine.sheet) return;
  const Sheet& s = *v.machine.sheet;
  if (right <= s.left() || left >= s.right())
    v.error(f.pos, "clamp.fingers", "no finger is over the sheet");
  else if (left > s.left() + same_length || right < s.right() - same_length)
    v.warning(f.pos, "clamp.fingers", "the sheet extends beyond the fingers, where nothing holds it");
}

} // namespace

void validate_sheet(Validator& v) {
  if (v.machine.fingers) validate_fingers(v);
  if (!v.machine.sheet) return;
  for (BodyKind kind : all_bodies)
    if (!(kind == BodyKind::clamp && v.machine.fingers)) validate_extent(v, kind);
  validate_bend(v);
}

} // namespace bedbow
