#include "tests/unit/support/findings_fixture.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace bedbow::test {

namespace {

constexpr double deg = std::numbers::pi / 180;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

std::vector<Eigen::Vector2d> box(double b, double h) {
  return {{-b / 2, -h / 2}, {b / 2, -h / 2}, {b / 2, h / 2}, {-b / 2, h / 2}};
}

StressPoint plain_point(const Eigen::Vector2d& at) {
  StressPoint p;
  p.y = at.x();
  p.z = at.y();
  return p;
}

JointResult joint(JointKind kind, const std::string& name, double x, double value, double utilisation) {
  JointResult j;
  j.kind = kind;
  j.name = name;
  j.at = {x, 0.06, 0};
  j.force = {0, 0, value};
  j.value = value;
  j.utilisation = utilisation;
  return j;
}

StepResult step(const std::string& name, double angle, double scale) {
  StepResult s;
  s.name = name;
  s.angle = angle;
  s.bow = {{1e-5 * scale, 2e-5 * scale, 3e-5 * scale}, {0.5e-5 * scale, 1e-5 * scale, 1.5e-5 * scale}, nan, nan};
  s.bend_line = {{0.15, 0.45, 0.75}, {1e-6, 2e-6, 1e-6}, {1e-5, 2e-5 * scale, 1e-5}, {-1e-5, -2e-5, -1e-5},
                 {nan, nan, nan},    {nan, nan, nan},    {8000, 5000, 8000},         {false, false, false},
                 {8000, 5000, 8000}, {0, 0, 0}};
  BarResult bar;
  bar.name = "clamp.spine";
  bar.stress = 50e6 * scale;
  bar.at_x = 0.45;
  bar.y = 0.015;
  bar.z = -0.04;
  bar.sigma = 49e6 * scale;
  bar.tau = 5e6 * scale;
  bar.forces.My = 1000;
  bar.utilisation = 50 * scale / 275;
  s.bars = {bar};
  using enum JointKind;
  s.joints = {joint(post, "left", 0.04, 5000 * scale, 0.1 * scale),
              joint(post, "right", 0.86, 5100 * scale, 0.11 * scale),
              joint(cam, "tail", 0.04, 0, 0),
              joint(hinge, "left", 0, 700 * scale, 0.2),
              joint(hinge, "right", 0.9, 700 * scale, 0.2),
              joint(screw, "bed.top to bed.web", 0.45, 900, 0.05),
              joint(support, "leg", 0.1, 150, 0)};
  s.joints[0].more = {{"bending", Quantity::stress, 30e6}, {"preload_loss", Quantity::force, 250}};
  s.joints[2].open = true;
  s.dials = {{"mid", {0, 1e-4, -2e-4}}};
  s.checks = {1e-13 * scale, 2e-13, 3, 0, 0};
  return s;
}

} // namespace

Section rectangle_section(double b, double h) {
  Section s;
  SectionProperties& p = s.props;
  p.A = b * h;
  p.Iyy = b * h * h * h / 12;
  p.Izz = h * b * b * b / 12;
  p.J = 0.2 * b * b * b * h;
  p.Ay = p.Az = p.A / 1.2;
  p.lower = {-b / 2, -h / 2};
  p.upper = {b / 2, h / 2};
  s.outline = {box(b, h)};
  for (const auto& corner : s.outline[0]) s.points.push_back(plain_point(corner));
  for (const double side : {-1.0, 1.0}) {
    StressPoint mid = plain_point({side * b / 2, 0});
    mid.tau_Vz = {0, 1.5 / p.A}; // parabola over the height, source: any textbook of strength of materials
    s.points.push_back(mid);
    mid = plain_point({0, side * h / 2});
    mid.tau_Vy = {1.5 / p.A, 0};
    s.points.push_back(mid);
  }
  return s;
}

Section tube_section(double side, double wall) {
  Section s = rectangle_section(side, side);
  const double inner = side - 2 * wall;
  s.props.A = side * side - inner * inner;
  s.props.Iyy = s.props.Izz = (std::pow(side, 4) - std::pow(inner, 4)) / 12;
  s.outline.push_back(box(inner, inner));
  s.points.resize(4);
  return s;
}

Section angle_section(double leg, double wall) {
  Section s;
  const double area = wall * (2 * leg - wall);
  const double c = (leg * wall * leg / 2 + (leg - wall) * wall * wall / 2) / area;
  for (const Eigen::Vector2d& p : {Eigen::Vector2d{0, 0}, {leg, 0}, {leg, wall}, {wall, wall}, {wall, leg}, {0, leg}}) {
    if (s.outline.empty()) s.outline.emplace_back();
    s.outline[0].push_back(p - Eigen::Vector2d(c, c));
    s.points.push_back(plain_point(s.outline[0].back()));
  }
  s.props.A = area;
  s.props.Iyy = s.props.Izz = area * leg * leg / 10; // of no matter for drawing
  s.props.lower = {-c, -c};
  s.props.upper = {leg - c, leg - c};
  return s;
}

BarField bar_field(const std::string& name, BodyKind body, Section section, double x0, double x1, double y, double z,
                   int stations) {
  BarField f;
  f.name = name;
  f.body = to_string(body);
  f.owner = {Ref::Kind::bar, body, 0};
  f.section = std::make_shared<const Section>(std::move(section));
  f.axes = Eigen::Matrix3d::Identity();
  f.yield = 275e6;
  for (int i = 0; i < stations; ++i) {
    f.points.emplace_back(x0 + (x1 - x0) * i / (stations - 1), y, z);
    f.motion.emplace_back((Vector6d() << 0, 0, -0.001, 0.01, 0, 0).finished());
    SectionForces forces;
    forces.N = 1000;
    forces.My = 100;
    f.forces.push_back({forces, forces});
  }
  return f;
}

ShellField shell_field(const std::string& name, double height) {
  ShellField f;
  f.name = name;
  f.body = "panel";
  f.owner = {Ref::Kind::panel, BodyKind::bed, 0};
  f.thickness = 0.01;
  f.yield = 235e6;
  for (int j = 0; j < 2; ++j)
    for (int i = 0; i < 3; ++i) {
      f.points.emplace_back(0.1 * i, 0.1 * j, height);
      f.motion.emplace_back((Vector6d() << 0, 0, 0.002, 0, 0, 0).finished());
      f.normals.emplace_back(0, 0, 1);
      f.von_mises.push_back({30e6, 10e6, 20e6});
      f.principal.push_back({30e6, 0, 20e6, -1e6});
    }
  f.quads = {{0, 1, 4, 3}, {1, 2, 5, 4}};
  return f;
}

Machine machine() {
  Machine m;
  m.title = "Invented folder";
  m.materials.resize(2);
  m.materials[0].name = "S275JR";
  m.materials[0].yield = 275e6;
  m.materials[1].name = "DC01";
  m.sheet = Sheet{};
  m.sheet->material = 1;
  m.sheet->thickness = 0.0015;
  m.sheet->width = 0.6;
  m.sheet->centre = 0.45;
  m.sheet->angle = 90 * deg;
  for (const BodyKind k : all_bodies) {
    m.body(k).kind = k;
    m.body(k).length = 0.9;
    Bar bar;
    bar.name = k == BodyKind::clamp ? "spine" : k == BodyKind::bed ? "web" : "face";
    bar.material = 0;
    bar.length = 0.9;
    m.body(k).bars = {bar};
  }
  m.limits.bow = 0.25e-3;
  m.limits.angle = 0.5 * deg;
  m.limits.utilisation = 0.67;
  m.solve.element_size = 0.015;
  return m;
}

Findings findings() {
  Findings f;
  f.title = "Invented folder";
  f.sheet = SheetResult{200, 8000, 13000, {1 * deg, 0.6 * deg, 0.4 * deg}, 0.15, "rigid-plastic", "given in the case"};
  f.steps = {step("clamp", 0, 1), step("bend 90 deg", 90 * deg, 2)};
  StepResult& bend = f.steps[1];
  bend.bow.angle_mean = 0.5 * deg;
  bend.bow.angle_spread = 0.75 * deg;
  bend.bend_line.apron_n = {-1e-4, -3e-4, -1e-4};
  bend.bend_line.angle_deviation = {0.1 * deg, 0.85 * deg, 0.1 * deg};
  bend.bend_line.clamp_force = {27000, 19000, 27000};
  bend.bend_line.clamp_reserve = {8000, 0, 8000};
  bend.bend_line.nose_opening = {0, 1e-4, 0};
  bend.bend_line.lifted = {false, true, false};
  for (StepResult& s : f.steps) {
    s.fields.bars = {bar_field("clamp.spine", BodyKind::clamp, rectangle_section(0.03, 0.08), 0, 0.9, 0.015, 0.042),
                     bar_field("bed.web", BodyKind::bed, tube_section(0.05, 0.004), 0, 0.9, 0.025, -0.025),
                     bar_field("apron.face", BodyKind::apron, angle_section(0.05, 0.006), 0, 0.9, -0.02, -0.03)};
    s.fields.shells = {shell_field("cheek", -0.2)};
    s.fields.forces = {{"left", "post", {0.04, 0.06, 0}, {0, 0, 5000}, 0},
                       {"pad", "pad", {0.45, 0.0075, 0.0015}, {0, 0, -120}, 0.4e6}};
  }
  f.worst_step = 1;
  f.verdict = {false, {{Failure::bows, "bend angle", "bend angle", 0.75 * deg, 0.5 * deg, Quantity::angle}}};
  f.verdict.reasons[0].step = "bend 90 deg";
  f.warnings = {"the sheet ends 1 mm from a post"};
  f.assumptions = {"cam tail: stiffness 1e9 N/m, so that it does not matter"};
  f.linear_solver = "band";
  f.unknowns = 1234;
  f.mass = 31.5;
  return f;
}

Findings frame_findings() {
  Findings f;
  f.title = "Invented frame";
  StepResult s;
  s.name = "load";
  BarResult rod;
  rod.name = "rod";
  rod.stress = 12e6;
  rod.at_x = 0.1;
  s.bars = {rod};
  s.dials = {{"tip", {1e-3, 0, 0}}};
  s.checks = {1e-12, 1e-12, 0, 0, 0};
  f.steps = {s};
  f.linear_solver = "band";
  return f;
}

} // namespace bedbow::test
