/// \file
/// The machine as a builder would draw it: bodies of bars, joints, sheet, members, panels, and the settings of studies.
/// Plain values in SI base units (m, N, Pa, kg, rad, s), filled by the case reader or by hand; no mechanics.
///
/// Axes: x along the bend line from the left end of the bed, y from the bend line to the rear, z up. The origin is the
/// left end of the bed's front top edge. Cross-section places are (y, z). The apron is described as it stands at 0 deg.
#pragma once

#include "mesh/machine/joint_kind.h"
#include "mesh/machine/limits.h"
#include "mesh/machine/user_mesh.h"
#include "mesh/piece/choice.h"
#include "mesh/piece/material.h"
#include "mesh/piece/section.h"

#include <Eigen/Core>

#include <array>
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// Place in the case file, for messages. Line and column count from 1; 0 means "not from a file".
struct SourcePos {
  int line = 0;
  int column = 0;
};

/// Value of a coordinate or size that the case omits.
inline constexpr double left_out = std::numeric_limits<double>::quiet_NaN();

enum class BodyKind { bed, clamp, apron };
inline constexpr std::array<BodyKind, 3> all_bodies{BodyKind::bed, BodyKind::clamp, BodyKind::apron};
inline constexpr std::array body_choices{Choice{"bed", BodyKind::bed}, Choice{"clamp", BodyKind::clamp},
                                         Choice{"apron", BodyKind::apron}};
/// "bed", "clamp" or "apron".
std::string to_string(BodyKind body);

/// The part to which something is attached. For `bar`, body and index; for `member` and `panel`, the index into the
/// machine's list; for `own`, the index into the parts of the user's mesh.
struct Ref {
  enum class Kind { none, ground, bar, member, panel, own };
  Kind kind = Kind::none;
  BodyKind body = BodyKind::bed;
  int index = -1;
  bool operator==(const Ref&) const = default;
};

/// Sections that stay plane, that bend across their wider side, or plates.
enum class BarModel { beam, strip, plate };
inline constexpr std::array bar_models{Choice{"beam", BarModel::beam}, Choice{"strip", BarModel::strip},
                                       Choice{"plate", BarModel::plate}};

/// A place relative to another bar: this bar touches it on one side. See mesh/machine/stack.h.
struct Stack {
  enum class Side { on, under, behind, before };
  Side side = Side::on;
  Ref bar; ///< of kind `bar`
  bool operator==(const Stack&) const = default;
};
inline constexpr std::array stack_sides{Choice{"on", Stack::Side::on}, Choice{"under", Stack::Side::under},
                                        Choice{"behind", Stack::Side::behind}, Choice{"before", Stack::Side::before}};

/// One bar of a body, straight along x.
struct Bar {
  std::string name;
  Shape shape;
  Eigen::Vector2d at = {0, 0}; ///< (y, z) of the centroid [m]
  std::optional<Stack> stack;  ///< decides one of the two coordinates of `at`
  BarModel model = BarModel::beam;
  std::string element; ///< formulation in the element registry; empty: the model's built-in one
  int material = -1;   ///< index into Machine::materials
  double start = 0;    ///< x of the left end [m]
  double length = 0;   ///< [m] > 0
  SourcePos pos;
  [[nodiscard]] double end() const { return start + length; }
};

/// Loose pieces that make the nose, from left to right.
struct Fingers {
  std::vector<double> widths;           ///< along x [m]
  std::vector<double> starts;           ///< x of each left end [m]; same length as widths
  double reach = 0;                     ///< from the carrying bar to the nose edge, along y [m]
  double thickness = 0;                 ///< [m]
  int material = -1;                    ///< index into Machine::materials
  std::optional<double> root_stiffness; ///< of one finger against tipping about x [N m/rad]; rigid when omitted
  SourcePos pos;
};

/// Where the clamp bears on the sheet.
struct Nose {
  int bar = -1;       ///< index into the clamp's bars
  double setback = 0; ///< y of the nose edge, or of the front of a rounded one [m]; see mesh/machine/setback.h
  double radius = 0;  ///< of the rounding of the edge [m]; 0 sharp
  double land = 0;    ///< depth of the bearing face behind the edge [m] > 0
  SourcePos pos;
};

/// A strip on a body's bend-line edge that rises towards the sheet: shims, or a machined or scraped pre-bow. Linear
/// between its places, constant beyond them.
struct Crown {
  std::vector<double> x;      ///< ascending [m]
  std::vector<double> height; ///< towards the sheet [m]; same length as x
  /// Height at x; 0 without places.
  [[nodiscard]] double at(double x) const;
};

/// Bed, clamp or apron. A body without bars is absent from the case.
struct Body {
  BodyKind kind = BodyKind::bed;
  double start = 0;
  double length = 0;
  int material = -1;
  std::vector<Bar> bars;
  int edge_bar =
      -1; ///< bed: bar that carries the front top edge; apron: bar that carries the face; clamp: the nose's bar
  Crown crown;
  SourcePos pos;
  [[nodiscard]] bool present() const { return !bars.empty(); }
};

/// What is being bent.
struct Sheet {
  int material = -1;
  double thickness = 0;     ///< [m]
  double width = 0;         ///< along the bend line [m]
  double centre = 0;        ///< x of its middle [m]
  double flange = 0;        ///< bend line to the line where the apron bears [m]
  double inside_radius = 0; ///< [m]
  double angle = 0;         ///< wanted after springback [rad]
  double grip = 0;          ///< depth behind the nose over which the sheet passes its moment to the bed [m]
  /// Coefficient between sheet and nose, and sheet and bed. Steel on steel: 0.15 is the least that Gieck's tables give
  /// static friction (0.15-0.30), www-eng.lbl.gov/~ajdemell/coefficients_of_friction.html.
  double friction = 0.15;
  std::string moment_law; ///< empty: the greater of the laws that the material has values for (choose_law)
  SourcePos pos;
  [[nodiscard]] double left() const { return centre - width / 2; }
  [[nodiscard]] double right() const { return centre + width / 2; }
};

/// Order of the six degrees of freedom everywhere: x y z rx ry rz.
enum Dof : int { ux = 0, uy = 1, uz = 2, rx = 3, ry = 4, rz = 5 };
using DofMask = std::array<bool, 6>;
inline constexpr std::array dof_choices{Choice{"x", ux},  Choice{"y", uy},  Choice{"z", uz},
                                        Choice{"rx", rx}, Choice{"ry", ry}, Choice{"rz", rz}};
inline constexpr std::array axis_choices{Choice{"x", ux}, Choice{"y", uy}, Choice{"z", uz}};
enum class UnilateralType { both, tension, compression };
/// What `only` of a tie may say; both ways where it is omitted.
inline constexpr std::array only_choices{Choice{"tension", UnilateralType::tension},
                                         Choice{"compression", UnilateralType::compression}};

/// A place as the case gives it; omitted coordinates are NaN until the mesher takes them from where the bars meet.
using GivenPoint = Eigen::Vector3d;

/// What the joints of the trade have in common. What stands on the ground joins a bar with it.
struct JointBase {
  std::string name; ///< may be empty; messages and results then use kind and number
  std::array<Ref, 2> joins;
  GivenPoint at = {left_out, left_out, left_out};
  Eigen::Vector2d seat = {left_out, left_out}; ///< size of the patch that it acts on, along x and across [m]; seat.h
  SourcePos pos;
};

/// Bearing face under a post's nut.
enum class NutSeat { washer, plain, spherical };
inline constexpr std::array nut_seats{Choice{"washer", NutSeat::washer}, Choice{"plain", NutSeat::plain},
                                      Choice{"spherical", NutSeat::spherical}};

/// Stud with nut: pulls the clamp down. Tension only along z, sideways as a stud fixed at both ends.
struct Post : JointBase {
  double diameter = 0;           ///< nominal [m]
  std::string thread;            ///< "M20", or empty when a plain diameter was given
  std::string grade;             ///< property class, "8.8"; may be empty
  double free_length = 0;        ///< stretched length [m]
  std::optional<double> preload; ///< force after clamping, before bending [N]
  NutSeat nut = NutSeat::washer;
  double washer_diameter = left_out, washer_thickness = left_out; ///< [m]; default: the thread's plain washer
  double engagement = left_out;                                   ///< thread in the nut [m]; default: a standard nut
  double tapped = left_out;                                       ///< thread in the lower bar [m]; default: a nut
  std::optional<double> allowed_seat, allowed_stress;             ///< override [Pa]
  std::optional<double> allowed_thread;                           ///< overrides [N]
};

/// Eccentric that lifts the clamp's tail: compression only along z.
struct Cam : JointBase {
  double lift = 0;                        ///< [m]; from throw and angle when those are given
  std::optional<double> throw_;           ///< eccentricity doubled: highest less lowest [m]
  std::optional<double> angle;            ///< from its lowest position [rad]
  double radius = left_out;               ///< [m]
  double width = left_out;                ///< along its axis [m]
  std::optional<double> stiffness;        ///< [N/m]
  bool linked = false;                    ///< turned together with the other linked cams
  double lag = 0;                         ///< how far it trails `angle` [rad]; in `lift` already
  double touch = 0;                       ///< angle at which the nose just touches the sheet [rad]; in `lift` already
  bool captive = false;                   ///< sits in a hole of the clamp and also moves it to and fro
  int material = -1;                      ///< index into Machine::materials; -1: that of the bar it presses on
  double friction = 0.15;                 ///< of the eccentric under the tail and of its shaft
  double shaft = left_out;                ///< diameter [m]
  double lever = left_out;                ///< from the shaft to the hand [m]
  std::optional<double> allowed_pressure; ///< overrides the peak pressure [Pa]
};

/// How far an eccentric turned to `angle` [rad] from its lowest position raises the tail above where the nose touches,
/// throw / 2 (cos touch - cos angle) [m]; below 0 the nose is open.
double cam_lift(double throw_, double angle, double touch = 0);

/// Apron pivot on the bend line, free about x.
struct Hinge : JointBase {
  double pin = left_out;                                  ///< diameter [m]
  double bearing_length = left_out;                       ///< [m]
  double gap = 0;                                         ///< clear distance along the pin between what it joins [m]
  bool both_sides = false;                                ///< held by a cheek on either side; else overhung
  std::optional<double> end_float;                        ///< total play along x [m]; see mesh/machine/end_float.h
  int pin_material = -1;                                  ///< index into Machine::materials; -1: that of the hole
  std::optional<double> allowed_pressure, allowed_stress; ///< override [Pa]
  std::optional<double> allowed_seat;                     ///< overrides, where the pin is fixed [Pa]
};

/// Where the operator holds the apron: stops its rotation about x.
struct Handle : JointBase {
  double reach = left_out; ///< from the bend line to the hand [m]
};

/// Any other joint.
struct Tie : JointBase {
  DofMask holds{};
  std::optional<double> stiffness;            ///< [N/m] for held translations; rigid when omitted
  std::optional<double> rotational_stiffness; ///< [N m/rad] for held rotations
  UnilateralType only = UnilateralType::both;
};

/// A row of screws between two bars.
struct Screws : JointBase {
  std::string thread; ///< "M8"
  double diameter = 0;
  std::string grade;
  std::vector<double> x;                                ///< positions [m]
  std::optional<double> shear_stiffness;                ///< per screw [N/m]
  std::optional<double> allowed_shear, allowed_tension; ///< override [N]
  std::optional<double> allowed_bearing;                ///< overrides [Pa]
};

/// Two bars joined along x without slip.
struct Weld : JointBase {
  double from = left_out;
  double to = left_out;
  int sides = 1; ///< 2: a seam along either edge of the faces that meet
};

/// Bed to ground (or any bar to ground).
struct Support : JointBase {
  DofMask holds{};
  std::optional<double> stiffness;            ///< [N/m]; rigid when omitted
  std::optional<double> rotational_stiffness; ///< [N m/rad]
};

/// Straight beam between two points.
struct Member {
  std::string name;
  Eigen::Vector3d from, to;
  Shape shape;
  Eigen::Vector3d up = {left_out, left_out, left_out}; ///< direction of the section's height; NaN: z, or y along z
  int material = -1;
  DofMask release_from{}, release_to{};
  bool tension_only = false;
  int divisions = 4;
  std::string element; ///< as of a bar
  SourcePos pos;
};

/// Flat rectangular plate: a corner and two edges.
struct Panel {
  std::string name;
  Eigen::Vector3d corner, edge_a, edge_b;
  double thickness = 0;
  int material = -1;
  std::array<int, 2> divisions{8, 8};
  std::string element; ///< as of a plate bar
  SourcePos pos;
};

/// Holds a point, a line, or a panel edge of members and panels, or a set of the user mesh's points to ground.
struct Hold {
  Eigen::Vector3d from, to; ///< equal for a point; NaN for a set
  int set = -1;             ///< index into UserMesh::sets
  DofMask holds{};
  SourcePos pos;
};

/// Force and moment at a point or shared by a set of points, force per length on a line, or pressure on a panel or on a
/// part of the user's mesh.
struct Load {
  enum class Kind { point, line, pressure, set };
  Kind kind = Kind::point;
  Ref on; ///< none: the member, panel or part at that place
  Eigen::Vector3d from = Eigen::Vector3d::Zero(), to = Eigen::Vector3d::Zero(); ///< point: both the place
  Eigen::Vector3d force = Eigen::Vector3d::Zero();                              ///< [N], or [N/m] for a line
  Eigen::Vector3d moment = Eigen::Vector3d::Zero();                             ///< [N m]
  double pressure = 0; ///< [Pa], along the normal edge_a x edge_b, or that of the quads' corners (right-hand rule)
  int panel = -1;      ///< -1: the part that `on` names
  int set = -1;        ///< index into UserMesh::sets
  SourcePos pos;
};

/// Dial indicator: the displacement of one spot.
struct Dial {
  std::string name;
  Ref on;
  Eigen::Vector3d at;
  std::optional<double> reading; ///< [m]
  int direction = -1;            ///< 0 x, 1 y, 2 z for the reading
  SourcePos pos;
};

/// Whether the mass is lumped: a diagonal matrix.
inline constexpr std::array mass_choices{Choice{"consistent", false}, Choice{"lumped", true}};

/// Apron positions that are solved by default, in words.
inline constexpr const char* usual_angles = "0, half the wanted angle, the wanted angle";

struct SolveSettings {
  int dimension = 3;                         ///< 3, or 2 for the x-z plane
  double element_size = 0.015;               ///< [m]
  std::optional<std::vector<double>> angles; ///< [rad]; omitted: usual_angles
  int modes = 0;
  int buckling = 0;
  std::string buckling_step; ///< name of the step whose stress is examined for buckling; empty: the worst one
  bool lumped_mass = false;  ///< diagonal mass instead of consistent
  std::string linear_solver; ///< empty: chosen by size
};

/// Everything the solver reads. `io` fills it; studies vary it.
struct Machine {
  std::string title;
  std::vector<Material> materials; ///< used ones only; indices above point here
  std::optional<Sheet> sheet;
  std::array<Body, 3> bodies; ///< by BodyKind
  Nose nose;
  std::optional<Fingers> fingers;
  std::vector<Post> posts;
  std::vector<Cam> cams;
  std::vector<Hinge> hinges;
  std::vector<Handle> handles;
  std::vector<Tie> ties;
  std::vector<Screws> screws;
  std::vector<Weld> welds;
  std::vector<Support> supports;
  std::vector<Member> members;
  std::vector<Panel> panels;
  UserMesh own;
  SourcePos own_pos; ///< of [mesh]
  std::vector<Hold> holds;
  std::vector<Load> loads;
  std::vector<Dial> dials;
  bool gravity = false;
  Limits limits;
  SolveSettings solve;

  /// Calls f(kind, list) for the list of each kind of joint that a case names.
  template <class F> void each_joint_list(F f) const { joint_lists(*this, f); }
  template <class F> void each_joint_list(F f) { joint_lists(*this, f); }

  [[nodiscard]] const Body& body(BodyKind k) const { return bodies[static_cast<std::size_t>(k)]; }
  [[nodiscard]] Body& body(BodyKind k) { return bodies[static_cast<std::size_t>(k)]; }
  /// The bar that a reference of kind `bar` names. Throws std::out_of_range.
  [[nodiscard]] const Bar& bar(const Ref& r) const;
  /// "bed.web", "ground", "member rod", "panel cheek", "mesh.gusset".
  [[nodiscard]] std::string name_of(const Ref& r) const;
  /// As results call it: "bed.web", "rod", "cheek", "mesh.gusset".
  [[nodiscard]] std::string plain_name(const Ref& r) const;

private:
  template <class Self, class F> static void joint_lists(Self& self, F& f) {
    f(JointKind::post, self.posts);
    f(JointKind::cam, self.cams);
    f(JointKind::hinge, self.hinges);
    f(JointKind::handle, self.handles);
    f(JointKind::tie, self.ties);
    f(JointKind::screw, self.screws);
    f(JointKind::weld, self.welds);
    f(JointKind::support, self.supports);
  }
};

} // namespace bedbow
