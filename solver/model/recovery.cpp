#include "solver/model/recovery.h"

#include "mesh/build/places.h"
#include "mesh/build/strips.h"
#include "mesh/machine/frame.h"
#include "mesh/piece/hermite.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <optional>
#include <utility>

namespace bedbow {

namespace {

/// out[0..2] = axes * in[0..2], written out: Eigen would make a function call for each of many thousand uses.
void turn(const Eigen::Matrix3d& axes, const double* in, double* out) {
  for (int i = 0; i < 3; ++i) out[i] = axes(i, 0) * in[0] + axes(i, 1) * in[1] + axes(i, 2) * in[2];
}

} // namespace

Vector6d turned(const Eigen::Matrix3d& axes, const Vector6d& motion) {
  Vector6d out;
  turn(axes, motion.data(), out.data());
  turn(axes, motion.data() + 3, out.data() + 3);
  return out;
}

Vector6d frame_motion(const std::vector<Vector6d>& motion, const Place& place) {
  Vector6d out = Vector6d::Zero();
  for (const PlaceTerm& t : place.terms) out += t.movement * motion[t.node];
  return out;
}

Vector6d place_motion(const StepSolution& step, const Place& place) {
  const Vector6d out = frame_motion(step.motion, place);
  return place.frame == Frame::apron ? turned(apron_turn(step.angle), out) : out;
}

namespace {

Vector12d ends_of(const Model& m, const StepSolution& step, int element) {
  const BeamElement& e = m.mesh.beams[element];
  Vector12d u;
  if (m.data.plain[element]) {
    u << step.motion[e.nodes[0]], step.motion[e.nodes[1]];
    return u;
  }
  for (int k = 0; k < 4; ++k) turn(e.axes, step.motion[e.nodes[k / 2]].data() + 3 * (k % 2), u.data() + 3 * k);
  const BeamReleases releases = releases_of(e);
  if (!releases.any) return u;
  return beam_release_recover(beam_local_stiffness(m.mesh, m.data, element),
                              beam_local_load(m.mesh, m.data, element, step.loads.beams[element]), releases.dofs, u);
}

} // namespace

std::vector<Vector12d> end_displacements(const Model& m, const StepSolution& step) {
  std::vector<Vector12d> out(m.mesh.beams.size());
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = ends_of(m, step, static_cast<int>(i));
  return out;
}

BeamField element_field(const Model& m, const StepSolution& step, int element) {
  return {m.data.beams[m.data.of_beam[element]], m.data.lateral[m.data.of_lateral[element]],
          m.mesh.beams[element].length, step.ends[element], step.loads.beams[element]};
}

SectionForces element_forces(const Model& m, const StepSolution& step, int element, double s) {
  const int strip = m.data.strip_of(element);
  if (!m.data.own.beam(element) && strip < 0) return element_field(m, step, element).forces(s);
  const BeamData& d = m.data.beams[m.data.of_beam[element]];
  const double length = m.mesh.beams[element].length;
  const BeamLineLoad& load = step.loads.beams[element];
  Vector12d held = beam_local_stiffness(m.mesh, m.data, element) * step.ends[element] -
                   beam_local_load(m.mesh, m.data, element, load);
  if (strip >= 0)
    held += m.data.bending[m.data.of_bending[strip]].topRows<12>() *
            strip_unknowns(m.mesh, m.mesh.strips[strip], step.motion);
  return forces_by_equilibrium(held.head<6>(), load, d, length, s);
}

// V' = -q, N' = -qx, Mz' = -Vy - mz, My' = Vz - my (theory/beams.md); torque about the shear centre.
SectionForces forces_further(const BeamData& data, const BeamLineLoad& load, const SectionForces& known, double d) {
  const Eigen::Vector2d& centre = data.section.shear_centre;
  const Eigen::Vector3d& q = load.force;
  const double torque = load.moment.x() + centre.y() * q.y() - centre.x() * q.z();
  SectionForces f;
  f.N = known.N - q.x() * d;
  f.Vy = known.Vy - q.y() * d;
  f.Vz = known.Vz - q.z() * d;
  f.T = known.T - torque * d;
  f.My = known.My + (known.Vz - load.moment.y()) * d - q.z() * d * d / 2;
  f.Mz = known.Mz - (known.Vy + load.moment.z()) * d + q.y() * d * d / 2;
  return f;
}

namespace {

/// The element of a bar at x, limited to the bar, and where in it, from 0 to 1.
std::pair<std::size_t, double> element_at(const std::vector<double>& stations, double x) {
  x = std::clamp(x, stations.front(), stations.back());
  const auto it = std::ranges::upper_bound(stations, x);
  const auto i = std::min<std::size_t>(static_cast<std::size_t>(it - stations.begin()), stations.size() - 1) - 1;
  return {i, (x - stations[i]) / (stations[i + 1] - stations[i])};
}

/// What a strip's functions across make of its amplitudes at one c, by station.
struct StripLine {
  double w = 0, w_x = 0;       ///< bending's movement along the normal and its slope along the bar
  double turn = 0, turn_x = 0; ///< its slope across, and how that changes along the bar
  double shear = 0;            ///< movement by shear deformation
};

/// Displacements of a line along a strip; axes of the frame.
class StripReader {
public:
  StripReader(const Model& m, const StepSolution& step, const BarLayout& l, double y, double z)
      : m_(m)
      , step_(step)
      , layout_(l)
      , axes_(FlatAxes{l.standing}.matrix()) {
    const Bar& bar = m.machine.bar(l.owner);
    const AcrossFunctions& functions = m.mesh.across[m.mesh.strips[l.first_strip].across];
    const double half = functions.width() / 2;
    const Eigen::Vector3d place = axes_ * Eigen::Vector3d(0, y - bar.at.x(), z - bar.at.y());
    c_ = std::clamp(place.y(), -half, half);
    arm_ = axes_.transpose() * Eigen::Vector3d(0, place.y() - c_, place.z());
    const AcrossValues across = functions.at(c_);
    const StripDofs dofs{l.standing, functions.width()};
    lines_.reserve(l.nodes.size());
    for (std::size_t i = 0; i < l.nodes.size(); ++i) lines_.push_back(line_of(i, across, dofs));
  }
  [[nodiscard]] Vector6d at(std::size_t i, double s) const {
    const double L = layout_.stations[i + 1] - layout_.stations[i];
    const Hermite h(s, L);
    const StripLine &a = lines_[i], &b = lines_[i + 1];
    const Eigen::Vector4d w(a.w, a.w_x, b.w, b.w_x), w_c(a.turn, a.turn_x, b.turn, b.turn_x);
    const Vector6d p = own(i), q = own(i + 1);
    // In the bar's plane each node carries its share by an exact arm, as in places.
    const double turn = (1 - s) * p[5] + s * q[5];
    Vector6d flat;
    flat << (1 - s) * p[0] + s * q[0] - c_ * turn, (1 - s) * (p[1] + p[5] * s * L) + s * (q[1] - q[5] * (1 - s) * L),
        h.value.dot(w) + (1 - s) * a.shear + s * b.shear, h.value.dot(w_c), -h.slope.dot(w), turn;
    Vector6d out = turned(axes_.transpose(), flat);
    out.head<3>() += Eigen::Vector3d(out.tail<3>()).cross(arm_);
    return out;
  }

private:
  /// Displacements of a station's node in the flat's axes.
  [[nodiscard]] Vector6d own(std::size_t station) const { return turned(axes_, step_.motion[layout_.nodes[station]]); }
  [[nodiscard]] StripLine line_of(std::size_t station, const AcrossValues& across, const StripDofs& dofs) const {
    const std::size_t element = std::min(station, layout_.nodes.size() - 2);
    const StripElement& strip = m_.mesh.strips[static_cast<std::size_t>(layout_.first_strip) + element];
    const int first = strip.first[station - element];
    const auto amplitude = [&](int number) { return step_.motion[first + number / 6][number % 6]; };
    const Vector6d& node = step_.motion[layout_.nodes[station]];
    StripLine out;
    const auto add = [&](int k, double value, double gradient) {
      out.w += across.phi[k] * value;
      out.w_x += across.phi[k] * gradient;
      out.turn += across.slope[k] * value;
      out.turn_x += across.slope[k] * gradient;
    };
    add(0, dofs.movement().factor * node[dofs.movement().dof], dofs.slope().factor * node[dofs.slope().dof]);
    add(1, dofs.rotation().factor * node[dofs.rotation().dof], amplitude(StripDofs::twist));
    const int bending = static_cast<int>(across.phi.size());
    for (int k = 2; k < bending; ++k) add(k, amplitude(StripDofs::value(k)), amplitude(StripDofs::gradient(k)));
    for (int j = 0; j < across.shear.size(); ++j)
      out.shear += across.shear[j] * amplitude(StripDofs::shear(bending, j));
    return out;
  }

  const Model& m_;
  const StepSolution& step_;
  const BarLayout& layout_;
  Eigen::Matrix3d axes_; // along, across, normal
  double c_ = 0;
  Eigen::Vector3d arm_;
  std::vector<StripLine> lines_;
};

} // namespace

std::vector<Vector6d> section_motions(const Model& m, const StepSolution& step, const Ref& ref,
                                      std::span<const double> at, double y, double z) {
  const BarLayout& l = layout_of(m.mesh, ref);
  const Bar& bar = m.machine.bar(ref);
  const std::vector<double>& stations = l.stations;
  std::vector<Vector6d> out;
  out.reserve(at.size());
  if (l.first_strip >= 0) {
    const StripReader line(m, step, l, y, z);
    for (const double x : at) {
      const auto [i, s] = element_at(stations, x);
      out.push_back(line.at(i, s));
    }
    return out;
  }
  if (!l.across.empty()) {
    for (const double x : at) {
      const double on = std::clamp(x, stations.front(), stations.back());
      out.push_back(frame_motion(step.motion, place_on_bar(m.machine, m.mesh, ref, {on, y, z})));
    }
    return out;
  }
  const Eigen::Vector3d arm(0, y - bar.at.x(), z - bar.at.y());
  const auto add = [&](const Vector6d& motion) {
    out.push_back(motion);
    out.back().head<3>() += Eigen::Vector3d(motion.tail<3>()).cross(arm);
  };
  std::optional<BeamField> field;
  std::size_t known = stations.size(); // element that `field` is of
  for (const double x : at) {
    const auto [i, s] = element_at(stations, x);
    if (s == 0 || s == 1) {
      add(step.motion[l.nodes[s == 0 ? i : i + 1]]);
      continue;
    }
    const int element = l.first_element + static_cast<int>(i);
    if (i != known) field.emplace(element_field(m, step, element));
    known = i;
    const Vector6d local = field->motion(s);
    add(m.data.plain[element] ? local : turned(m.mesh.beams[element].axes.transpose(), local));
  }
  return out;
}

Vector6d section_motion(const Model& m, const StepSolution& step, const Ref& ref, double x, double y, double z) {
  return section_motions(m, step, ref, {&x, 1}, y, z).front();
}

std::array<double, 6> screw_springs(const StepSolution& step, const Joint& j) {
  // Both sides turn together: the frame's axes are sufficient.
  const Vector6d elongation = frame_motion(step.motion, j.b) - frame_motion(step.motion, j.a);
  std::array<double, 6> f{};
  for (int k = 0; k < 6; ++k) f[k] = j.stiffness[k] * elongation[k];
  return f;
}

} // namespace bedbow
