#include "solver/findings/nose_hold.h"

#include "mesh/build/stations.h"
#include "mesh/piece/si.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <limits>
#include <map>
#include <utility>

namespace bedbow {

namespace {

constexpr std::size_t most_listed = 3; // ranges that a warning lists one by one

/// The pads at one place along the nose: one, or several over the depth of the land.
struct PadSpan {
  double x = 0, length = 0;                                 ///< [m]
  double force = 0;                                         ///< compression positive [N]
  double opening = std::numeric_limits<double>::infinity(); ///< least over the depth of the land [m]
  double from = 0, to = 0;                                  ///< its tributary length [m]
};

/// Tributary lengths up to halfway between neighbouring spots of one piece of the nose; at its ends by the given
/// length.
void lay_stretches(std::vector<PadSpan>& piece) {
  for (std::size_t i = 0; i < piece.size(); ++i) {
    PadSpan& s = piece[i];
    const bool first = i == 0, last = i + 1 == piece.size();
    s.from = first ? s.x - s.length / 2 : (piece[i - 1].x + s.x) / 2;
    s.to = last ? s.from + s.length : (s.x + piece[i + 1].x) / 2;
    if (first && !last) s.from = s.to - s.length;
  }
}

/// The pads within the sheet, spot by spot: the whole nose as one piece, or each finger by itself.
std::vector<PadSpan> held_spots(const Model& m, const StepSolution& step) {
  const Sheet& sheet = *m.machine.sheet;
  std::map<int, std::map<double, PadSpan>> pieces; // by finger, by x
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const Joint& j = m.mesh.joints[step.rows[r].joint];
    const double x = j.a.at.x();
    if (j.kind != JointKind::pad || x < sheet.left() - same_place || x > sheet.right() + same_place) continue;
    const auto row = static_cast<Eigen::Index>(r);
    PadSpan& s = pieces[j.part][x];
    s.x = x;
    s.length = j.tributary;
    s.force -= step.force[row];
    // An active row is closed, whatever its own compliance.
    s.opening = std::min(s.opening, step.force[row] < 0 ? 0 : std::max(0.0, step.elongation[row] - step.rows[r].gap));
  }
  std::vector<PadSpan> out;
  for (auto& [finger, spots] : pieces) {
    std::vector<PadSpan> piece;
    for (auto& [x, spot] : spots) piece.push_back(spot);
    lay_stretches(piece);
    out.insert(out.end(), piece.begin(), piece.end());
  }
  return out;
}

/// The nose over one tributary length of the bend line.
struct Over {
  double held = 0;                                          ///< length of nose over it [m]
  double force = 0;                                         ///< of its pads, by their share within it [N]
  double opening = std::numeric_limits<double>::infinity(); ///< least of its pads, so that one active pad closes it [m]
};

Over over_stretch(double from, double to, const std::vector<PadSpan>& spots) {
  Over out;
  for (const PadSpan& s : spots) {
    const double common = std::min(to, s.to) - std::max(from, s.from);
    if (common <= same_place) continue;
    out.held += common;
    out.force += s.force * common / (s.to - s.from);
    out.opening = std::min(out.opening, s.opening);
  }
  return out;
}

/// Ranges of neighbouring stations whose pads carry no force, as first and last x [m].
std::vector<std::pair<double, double>> bare_stretches(const BendLine& line) {
  std::vector<std::pair<double, double>> out;
  bool open = false;
  for (std::size_t i = 0; i < line.x.size(); ++i) {
    const bool bare = line.clamp_reserve[i] <= 0; // not where it is NaN
    if (bare && open)
      out.back().second = line.x[i];
    else if (bare)
      out.emplace_back(line.x[i], line.x[i]);
    open = bare;
  }
  return out;
}

template <class... T> std::string formatted(const char* format, T... values) {
  std::array<char, 512> text{};
  std::snprintf(text.data(), text.size(), format, values...);
  return text.data();
}

/// "between x = 150 and 262.5 mm, at x = 450 mm and between ..."
std::string words(const std::vector<std::pair<double, double>>& stretches) {
  if (stretches.size() > most_listed)
    return formatted("in %zu ranges between x = %.4g and %.4g mm", stretches.size(), stretches.front().first * 1e3,
                     stretches.back().second * 1e3);
  std::string out;
  for (std::size_t i = 0; i < stretches.size(); ++i) {
    const auto [from, to] = stretches[i];
    if (i > 0) out += i + 1 < stretches.size() ? ", " : " and ";
    out += to > from ? formatted("between x = %.4g and %.4g mm", from * 1e3, to * 1e3)
                     : formatted("at x = %.4g mm", from * 1e3);
  }
  return out;
}

} // namespace

double nose_opening_limit(const Machine& machine) {
  return machine.limits.nose_opening.value_or(usual_nose_opening * machine.sheet->thickness);
}

void fill_nose(const Model& m, const StepSolution& step, BendLine& line) {
  const std::size_t n = line.x.size();
  line.clamp_force.assign(n, nan);
  line.clamp_reserve.assign(n, nan);
  line.nose_opening.assign(n, nan);
  line.lifted.assign(n, false);
  const std::vector<PadSpan> spots = held_spots(m, step);
  const double limit = nose_opening_limit(m.machine);
  for (std::size_t i = 0; i < n; ++i) {
    const double from = i == 0 ? line.x[i] : (line.x[i - 1] + line.x[i]) / 2;
    const double to = i + 1 == n ? line.x[i] : (line.x[i] + line.x[i + 1]) / 2;
    const Over nose = over_stretch(from, to, spots);
    if (nose.held == 0) continue;
    line.clamp_reserve[i] = nose.force / (to - from);
    // The sheet's lever loads the nose whether a pad carries or not.
    line.clamp_force[i] = line.clamp_reserve[i] + step.sheet_lift * nose.held / (to - from);
    line.nose_opening[i] = nose.opening;
    line.lifted[i] = nose.opening > limit;
  }
}

NoseHold nose_hold(const BendLine& line) {
  NoseHold out;
  for (std::size_t i = 0; i < line.x.size(); ++i) {
    if (std::isnan(line.clamp_reserve[i])) continue;
    ++out.held;
    if (line.lifted[i]) ++out.lifted;
    if (clearly_greater(line.nose_opening[i], out.opening)) {
      out.opening = line.nose_opening[i];
      out.opening_x = line.x[i];
    }
    if (line.clamp_reserve[i] > 0) continue;
    const double force = line.clamp_force[i];
    out.least = out.without_reserve == 0 ? force : std::min(out.least, force);
    out.greatest = out.without_reserve == 0 ? force : std::max(out.greatest, force);
    ++out.without_reserve;
  }
  return out;
}

std::string nose_opening_assumption(const Machine& machine) {
  const bool held = machine.sheet && machine.body(BodyKind::bed).present() && machine.body(BodyKind::clamp).present();
  if (!held || machine.limits.nose_opening) return "";
  return formatted("the nose is considered off the sheet where it opens by more than %.4g %% of the sheet's thickness, "
                   "%.3f mm ([limits] nose_opening; common practice, no source)",
                   usual_nose_opening * 100, nose_opening_limit(machine) * 1e3);
}

namespace {

/// The bend step with the worst clamping of the sheet: the one with the greatest opening if the nose is off the sheet
/// anywhere, else the one with the fewest stations that keep a reserve. Null where nothing is bent.
const StepResult* worst_held(const std::vector<StepResult>& steps, NoseHold& hold) {
  const StepResult* worst = nullptr;
  for (const StepResult& s : steps) {
    if (!judges_bend(s)) continue;
    const NoseHold here = nose_hold(s.bend_line);
    const bool off = here.lifted > 0 || hold.lifted > 0;
    const bool wider = here.without_reserve > hold.without_reserve;
    const bool same = here.without_reserve == hold.without_reserve;
    if (off ? !clearly_greater(here.opening, hold.opening)
            : !wider && !(same && clearly_greater(here.opening, hold.opening)))
      continue;
    worst = &s;
    hold = here;
  }
  return worst;
}

} // namespace

std::string hold_warning(const Machine& machine, const std::vector<StepResult>& steps) {
  NoseHold hold;
  const StepResult* worst = worst_held(steps, hold);
  if (!worst || hold.without_reserve == 0) return "";
  const double limit = nose_opening_limit(machine);
  if (hold.lifted > 0) {
    if (machine.limits.nose_opening) return "";
    return formatted(
        "the nose is off the sheet in step %s: it opens by up to %.3f mm, at x = %.4g mm; beyond %.3f mm (%.4g %% of "
        "the sheet's thickness) it does not hold the sheet. Shims under the nose ([clamp.crown]), a post "
        "nearer to that place, more preload or a stiffer clamp close it; with [limits] nose_opening it "
        "becomes part of the verdict",
        worst->name.c_str(), hold.opening * 1e3, hold.opening_x * 1e3, limit * 1e3, usual_nose_opening * 100);
  }
  return formatted("no clamping reserve in step %s %s: the preload is used up, the sheet is held there only by its own "
                   "lever (%.1f N/mm); the nose is open by up to %.3f mm, limit %.3f mm; more preload or a "
                   "stiffer clamp gives reserve",
                   worst->name.c_str(), words(bare_stretches(worst->bend_line)).c_str(), hold.least * 1e-3,
                   hold.opening * 1e3, limit * 1e3);
}

} // namespace bedbow
