/// \file
/// Results of an analysis, in SI units: values for the brake, and fields to draw. Writers turn them into files and
/// tables; nothing is computed afterwards.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/piece/section.h"
#include "mesh/piece/si.h"
#include "solver/element/beam.h"
#include "solver/model/status.h"
#include "solver/model/step_name.h"
#include "solver/sheet/sheet_law.h"
#include "solver/strength/allowable.h"
#include "solver/strength/comparison.h"
#include "solver/strength/reason.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// Along the bend line over the sheet's width. All arrays have one entry per station; displacements in m along global
/// axes, angles in rad. Forces of the nose are means over the tributary length of a station, halfway to its neighbours:
/// force times that length, summed, is the total force. Values of the nose are NaN where none of it is over that length
/// (a gap between fingers).
struct BendLine {
  std::vector<double> x, nose_y, nose_z, bed_z, apron_n, angle_deviation;
  std::vector<double> clamp_force;   ///< total between nose and sheet per length, compression positive [N/m]
  std::vector<bool> lifted;          ///< the nose opens by more than the limit (nose_opening_limit)
  std::vector<double> clamp_reserve; ///< part carried by the pads: clamping not used up by the sheet's lever [N/m]
  std::vector<double> nose_opening;  ///< distance of the nose from the sheet, 0 where a pad carries [m]
};

/// Bow and straightness per body (absent body: 0), and the bend angle. NaN where it has no meaning in this step.
struct BowResult {
  std::array<double, 3> bow{};             ///< by BodyKind [m]
  std::array<double, 3> straightness{};    ///< smallest zone between two parallel lines (ISO 1101) [m]
  double angle_mean = 0, angle_spread = 0; ///< [rad]
};

struct BarResult {
  std::string name;  ///< "clamp.spine", or the member's or panel's name
  double stress = 0; ///< greatest von Mises where beam and plate theory hold (theory/validity.md): this is judged [Pa]
  double at_x = 0;   ///< where along x [m] (members: along the member)
  double y = 0, z = 0; ///< place in the section, from the centroid [m]
  double sigma = 0, tau = 0;
  SectionForces forces;   ///< at the worst place
  double utilisation = 0; ///< of yield; 0 when yield is unknown
  double peak_stress = 0; ///< greatest local von Mises: beside point forces it depends on the mesh, not judged [Pa]
  double peak_x = 0;      ///< where, as at_x [m]
};

/// Index of ground in place of an index into Findings::parts.
inline constexpr int ground_part = -1;

/// A part connected by elements, rigid links, screws and welds: in equilibrium on its own.
struct PartResult {
  std::string name;            ///< "clamp", "bed with member leg"
  std::vector<std::string> of; ///< its bars, members, panels and parts of the user's mesh, as named in results
};

/// Force and moment of one load source on one part: equal to the solver's nodal loads on the part.
struct LoadResult {
  std::string what;                                 ///< "push on the nose", "self-weight", "load 2"
  int part = ground_part;                           ///< index into Findings::parts
  Eigen::Vector3d at = Eigen::Vector3d::Zero();     ///< on its line of action, in this step [m]
  Eigen::Vector3d force = Eigen::Vector3d::Zero();  ///< global axes [N]
  Eigen::Vector3d moment = Eigen::Vector3d::Zero(); ///< beside the force at `at`, global axes [N m]
};

/// Compression-only contact of two bodies or bars: forces at stations, all along the same normal.
struct ContactResult {
  std::string what;                                   ///< "nose" or "bars"
  std::array<std::string, 2> joins;                   ///< lower and upper, as named in results
  std::array<int, 2> parts{ground_part, ground_part}; ///< indices into Findings::parts
  Eigen::Vector3d normal = Eigen::Vector3d::UnitZ();  ///< from the first to the second, global axes in this step
  std::vector<Eigen::Vector3d> at;                    ///< places of this step [m]
  std::vector<double> force;                          ///< positive where it presses [N]
};

/// Reaction of a hold on one part: force and moment on the part about `at`, global axes [m, N, N m].
struct HoldShare {
  int part = ground_part; ///< index into Findings::parts
  Eigen::Vector3d at = Eigen::Vector3d::Zero(), force = Eigen::Vector3d::Zero(), moment = Eigen::Vector3d::Zero();
};

/// A further quantity of a joint, SI.
struct JointFigure {
  std::string key; ///< as files call it, less the unit: "preload_loss"
  Quantity quantity = Quantity::force;
  double value = 0;
};

/// Force of a joint, or of the worst screw of a row.
struct JointResult {
  JointKind kind = JointKind::post; ///< of those that have a list in results: a hold counts as a support, a rod and
                                    ///< an end of a member as a tie
  std::string name;
  std::array<std::string, 2> joins;                      ///< as named in results; the second of a support is "ground"
  std::array<int, 2> parts{ground_part, ground_part};    ///< of either, indices into Findings::parts
  std::optional<std::array<Eigen::Vector3d, 2>> at_each; ///< points of application, where these differ [m]
  std::vector<HoldShare> shares;                         ///< holds: share of each part
  Eigen::Vector3d at = Eigen::Vector3d::Zero();          ///< [m], this step's place
  Eigen::Vector3d force = Eigen::Vector3d::Zero();       ///< on the first of `joins`, global axes [N]
  Eigen::Vector3d moment = Eigen::Vector3d::Zero();      ///< likewise [N m]
  double value = 0; ///< value in the table: post tension, cam compression, hinge resultant, worst screw shear, the
                    ///< hand's force on a handle (NaN where its reach is unknown: its moment is in `more`) [N]
  double utilisation = 0;           ///< of proof, allowable pressure, ...; 0 unknown
  bool open = false;                ///< a one-sided joint without force
  std::vector<JointFigure> more;    ///< in the order of files
  std::vector<Check> checks;        ///< actual against allowable values; `utilisation` is the greatest
  std::vector<std::string> remarks; ///< for the builder: expected wear of a hole, ...
  /// The value of `more` under a key; NaN where there is none.
  [[nodiscard]] double figure(std::string_view key) const {
    const auto found = std::find_if(more.begin(), more.end(), [&](const JointFigure& f) { return f.key == key; });
    return found == more.end() ? left_out : found->value;
  }
};

struct DialResult {
  std::string name;
  Eigen::Vector3d movement = Eigen::Vector3d::Zero(); ///< [m]
};

/// One bar or member as a chain of stations, to draw. Axes and points in this step, before displacement.
struct BarField {
  std::string name, body;
  Ref owner;
  std::shared_ptr<const Section> section;
  Eigen::Matrix3d axes;                             ///< rows: local x, y, z in global axes
  std::vector<Eigen::Vector3d> points;              ///< centroid at each station [m]
  std::vector<Vector6d> motion;                     ///< (u, theta) there, global axes [m, rad]
  std::vector<std::array<SectionForces, 2>> forces; ///< just before and just after each station
  double yield = 0;
};

/// A plate bar or panel, to draw.
struct ShellField {
  std::string name, body;
  Ref owner;
  double thickness = 0, yield = 0;
  std::vector<Eigen::Vector3d> points;
  std::vector<Vector6d> motion;
  std::vector<std::array<int, 4>> quads;        ///< into points
  std::vector<Eigen::Vector3d> normals;         ///< per point
  std::vector<std::array<double, 3>> von_mises; ///< per point: top, middle, bottom [Pa]
  std::vector<std::array<double, 4>> principal; ///< per point: top s1, s2, bottom s1, s2 [Pa]
};

/// A joint force or a pad's force to draw as an arrow.
struct ForceArrow {
  std::string name, kind;
  Eigen::Vector3d at, force;
  double pressure = 0; ///< pads: [Pa] over the land
};

struct Fields {
  std::vector<BarField> bars;
  std::vector<ShellField> shells;
  std::vector<ForceArrow> forces;
};

/// Certificate of one step's solution.
struct StepChecks {
  double equilibrium = 0; ///< residual force and moment of the whole with its reactions and of each part, over the
                          ///< greatest force; moments over the size of the machine or part
  double residual = 0;    ///< |K u - f| / |f|
  int contact_iterations = 0;
  double worst_closure = 0; ///< deepest overlap of a one-sided joint beyond its spring's own law, over deflection
  double worst_tension = 0; ///< greatest force of the wrong sign, over the greatest force
};

/// How the sheet is held against being drawn back by the apron's push, over its whole width.
struct SheetHold {
  double needs = 0;    ///< horizontal part of the apron's push [N]
  double has = 0;      ///< friction that nose and bed can give: the coefficient times their forces on the sheet [N]
  double carried = 0;  ///< friction that passes from the clamp to the bed, backwards on the bed [N]
  bool settled = true; ///< false: the iteration of the friction did not settle, and the step is solved without it
  [[nodiscard]] bool slips() const { return needs > has; }
};

struct StepResult {
  std::string name; ///< clamp_step, "bend 45 deg", "load"
  double angle = 0; ///< [rad]
  BowResult bow;
  BendLine bend_line;
  std::optional<SheetHold> hold; ///< of bend steps with bed and clamp
  std::vector<BarResult> bars;
  std::vector<JointResult> joints; ///< in the order of their kinds; touches that carry: the force on the bed
  std::vector<DialResult> dials;
  std::vector<LoadResult> loads;       ///< by source and part; filled with the fields
  std::vector<ContactResult> contacts; ///< nose and loose bars; filled with the fields
  StepChecks checks;
  Fields fields;
  std::vector<Reason> displaced; ///< parts displaced so far that small-displacement theory is only approximate
};

/// The joints of one kind. \param step a StepResult with its joints in order.
template <class Step> auto joints_of(Step& step, JointKind kind) {
  const auto before = [](const JointResult& j, JointKind k) { return j.kind < k; };
  const auto after = [](JointKind k, const JointResult& j) { return k < j.kind; };
  const auto begin = std::lower_bound(step.joints.begin(), step.joints.end(), kind, before);
  return std::span(begin, std::upper_bound(begin, step.joints.end(), kind, after));
}

/// Whether bend angle and bow of the apron are checked in a step: while clamping nothing is bent.
inline bool judges_bend(const StepResult& step) {
  return step.name != clamp_step;
}

struct SheetResult {
  double moment = 0;     ///< per unit width [N m/m]
  double apron = 0;      ///< force of the apron at the wanted angle [N/m]
  double grip = 0;       ///< m/g [N/m]
  Springback springback; ///< [rad]
  double friction = 0;   ///< coefficient at nose and bed
  std::string law;       ///< that gave the moment, and why it was taken
  std::string why;
};

struct Verdict {
  bool pass = true;
  std::vector<Reason> reasons; ///< gravest first
};

struct ModeShape {
  double frequency = 0;                       ///< [Hz]
  std::string description;                    ///< "clamp rolls about x"
  std::map<std::string, double> strain_share; ///< by body
  Fields fields;                              ///< shape scaled to a greatest displacement of 1
};

struct ModesResult {
  std::vector<ModeShape> modes;
  std::vector<double> buckling_factors;   ///< times the loads of buckling_step
  std::vector<ModeShape> buckling_shapes; ///< `frequency` holds the factor
  std::string joint_state = "";           ///< in which the joints vibrate: name of a step, or "all joints closed"
  std::string buckling_step = "";         ///< whose stress was taken; empty: none
  std::string buckling_note = "";         ///< why there are no load factors; empty if there are
  double residual = 0;                    ///< worst |u - (lambda - sigma) A^-1 M u| / |u| (theory/modes.md)
  double orthogonality = 0;               ///< worst u_i' M u_j, shapes scaled to u' M u = 1 (buckling: K for M)
};

/// SummaryMetrics figures of one step with the screws at one of their limits.
struct SlipBoundsStep {
  std::string name;
  BowResult bow;
  double stress = 0; ///< greatest von Mises of all bars, members and panels [Pa]
  std::vector<DialResult> dials;
  double use = 0; ///< highest utilisation of all parts
};

/// All steps at one limit; no steps unless status is ok.
struct SlipBoundsSide {
  Status status = Status::ok;
  std::string trouble;
  std::vector<SlipBoundsStep> steps;
};

/// Results with screws that do not slip and act as welds, with screws that do not slip but let the bars roll on each
/// other, and with screws that carry no shear along x.
struct SlipBounds {
  SlipBoundsSide no_slip, no_slip_rolling, no_shear;
};

/// Results with a sheet that slides freely on nose and bed, and with one that never slides.
struct FrictionBounds {
  SlipBoundsSide sliding, sticking;
};

/// A joint on a rigid arm whose seat the case does not give, and what the size of the seat changes.
struct ArmSeat {
  JointKind kind = JointKind::post;
  std::string name;
  std::string on;               ///< the bar that the arm reaches, "bed.web"
  double arm = 0;               ///< [m]
  double along = 0, across = 0; ///< seat assumed [m]
  double force = 0;             ///< greatest of all steps, with that seat [N]
  double force_small = 0;       ///< the same with seats of `small_seat`
};

/// All steps solved again with small seats of the joints on arms; force_small and the small bows say nothing unless
/// status is ok.
struct ArmSeats {
  Status status = Status::ok;
  std::string trouble;
  std::vector<ArmSeat> joints;
  std::array<double, 3> bow{nan, nan, nan}, bow_small{nan, nan, nan}; ///< greatest of all steps, by BodyKind [m]
};

/// Side of the square seat with which arms are solved again [m].
inline constexpr double small_seat = 0.02;

struct Findings {
  std::string title;
  Status status = Status::ok;
  std::string trouble;              ///< description of the mechanism, or of what did not converge
  std::vector<std::string> history; ///< of the iteration that failed
  std::optional<SheetResult> sheet;
  std::vector<PartResult> parts; ///< parts that must be in equilibrium in every step
  int dimension = 3;             ///< 2: in the x-z plane, without equilibrium along y, about x or about z
  std::vector<StepResult> steps;
  std::optional<std::size_t> worst_step; ///< greatest angle spread (or bow without an apron)
  Verdict verdict;
  std::optional<ModesResult> modes;
  std::optional<SlipBounds> slip_bounds;         ///< only where requested and there are screws
  std::optional<FrictionBounds> friction_bounds; ///< only where requested and a sheet is held
  std::optional<ArmSeats> arm_seats;             ///< only where requested and there are such joints
  std::vector<std::string> warnings, assumptions;
  std::string linear_solver;
  int unknowns = 0;
  double mass = 0; ///< of everything that has mass [kg]; NaN where a material in use has no density
};

} // namespace bedbow
