// What must not change an answer: turning, mirroring, units, the order of load and dial, one dimension that is not
// used.
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <regex>

namespace bedbow::verification {
namespace {

constexpr double rounding = 1e-8; // a solution has about ten digits

// ---- rotation of the whole machine

using Vector = Eigen::Vector3d;

std::string triple(const Vector& v, const std::string& unit) {
  return "[" + quantity(v.x(), unit) + ", " + quantity(v.y(), unit) + ", " + quantity(v.z(), unit) + "]";
}

/// A portal with a leaning leg, a hinged brace and a tension rod, all turned by R and shifted.
std::string frame(const Eigen::Matrix3d& R, const Vector& shift) {
  const auto at = [&](double x, double y, double z) { return triple(R * Vector(x, y, z) + shift, "mm"); };
  const auto direction = [&](double x, double y, double z) {
    const Vector v = R * Vector(x, y, z);
    char text[128];
    std::snprintf(text, sizeof text, "[%.17g, %.17g, %.17g]", v.x(), v.y(), v.z());
    return std::string(text);
  };
  const std::string flat = R"(shape = "rectangle"
width = "30 mm"
height = "60 mm"
material = "S275JR"
)";
  const std::string angle =
      R"(shape = "angle"
width = "40 mm"
height = "60 mm"
wall = "5 mm"
material = "S275JR"
)";
  const auto member = [&](const std::string& name, const std::string& a, const std::string& b, const std::string& up,
                          const std::string& rest) {
    return "[[member]]\nname = \"" + name + "\"\nfrom = " + a + "\nto = " + b + "\nup = " + up + "\n" + rest;
  };
  const std::string hold = "holds = [\"x\", \"y\", \"z\", \"rx\", \"ry\", \"rz\"]\n";
  return member("left", at(0, 0, 0), at(0, 0, 500), direction(0, 1, 0), flat) +
         member("right", at(700, 80, 0), at(600, 0, 500), direction(0, 1, 0), angle) +
         member("beam", at(0, 0, 500), at(600, 0, 500), direction(0, 0, 1), flat) +
         member("brace", at(0, 0, 0), at(600, 0, 500), direction(0, 1, 0),
                flat + "releases = { from = [\"ry\"], to = [\"ry\", \"rz\"] }\n") +
         member("rod", at(0, 0, 500), at(700, 80, 0), direction(0, 1, 0),
                R"(shape = "round"
diameter = "10 mm"
material = "S275JR"
tension_only = true
)") +
         "[[hold]]\nat = " + at(0, 0, 0) + "\n" + hold + "[[hold]]\nat = " + at(700, 80, 0) + "\n" + hold +
         "[[load]]\non = \"beam\"\nat = " + at(300, 0, 500) + "\nforce = " + triple(R * Vector(-900, 400, -1500), "N") +
         "\nmoment = " + triple(R * Vector(20, -30, 40), "N*m") + R"(
[[load]]
on = "left"
from = )" +
         at(0, 0, 125) + "\nto = " + at(0, 0, 375) + "\nper_length = " + triple(R * Vector(1, 2, 0), "N/mm") +
         R"(
[[dial]]
name = "corner"
on = "beam"
at = )" + at(600, 0, 530) +
         R"(
[[dial]]
name = "leg"
on = "left"
at = )" + at(15, 0, 250) +
         "\n";
}

TEST(Rotation, WholeFrameTurnedInSpace) {
  const Eigen::Matrix3d R = Eigen::AngleAxisd(1.1, Vector(0.3, -0.8, 0.5).normalized()).toRotationMatrix();
  const Findings plain = solved(frame(Eigen::Matrix3d::Identity(), Vector::Zero()));
  const Findings turned = solved(frame(R, Vector(120, -340, 560)));
  for (const char* name : {"corner", "leg"})
    record("", "the same machine turned by 63 deg about a slanting axis",
           std::string("dial ") + name + ", miss over movement",
           (dial(turned, name) - R * dial(plain, name)).norm() / dial(plain, name).norm(), 0, rounding);
  const auto& a = plain.steps[0];
  const auto& b = turned.steps[0];
  ASSERT_EQ(a.bars.size(), b.bars.size());
  for (std::size_t i = 0; i < a.bars.size(); ++i)
    record("", "the same machine turned by 63 deg about a slanting axis", "stress in " + a.bars[i].name,
           b.bars[i].stress * 1e-6, a.bars[i].stress * 1e-6, rounding, "MPa");
  ASSERT_EQ(joints_of(a, JointKind::tie).size(), 1U);
  EXPECT_GT(joints_of(a, JointKind::tie)[0].value, 1) << "the rod is to pull";
  record("", "the same machine turned by 63 deg about a slanting axis", "force in the rod",
         joints_of(b, JointKind::tie)[0].value, joints_of(a, JointKind::tie)[0].value, rounding, "N");
}

// ---- units

/// Every length in inches, every force in pounds: 25.4 mm and 4.4482216152605 N exactly.
std::string in_inches(const std::string& text) {
  std::string out;
  const std::regex wanted(R"re("(-?[0-9.]+) (mm|kN)")re");
  auto from = text.cbegin();
  for (std::sregex_iterator it(text.begin(), text.end(), wanted), end; it != end; ++it) {
    out.append(from, text.cbegin() + it->position());
    const double value = std::stod((*it)[1]);
    out += (*it)[2] == "mm" ? quantity(value / 25.4, "in") : quantity(value * 1e3 / 4.4482216152605, "lbf");
    from = text.cbegin() + it->position() + it->length();
  }
  return out.append(from, text.cend());
}

TEST(Units, InchesAgainstMillimetres) {
  const std::string text = replaced(project_file("cases/hive-lid/case.toml"), "folder, 900 mm", "folder");
  const std::string other = in_inches(text);
  EXPECT_EQ(other.find(" mm\""), std::string::npos);
  const Findings a = solved(text), b = solved(other);
  for (std::size_t i = 0; i < a.steps.size(); ++i) {
    const std::string source = "the same case in inches and pounds", step = a.steps[i].name;
    for (BodyKind k : {BodyKind::bed, BodyKind::clamp})
      record("", source, step + ": " + to_string(k) + " bow", b.steps[i].bow.bow[static_cast<std::size_t>(k)] * 1e3,
             a.steps[i].bow.bow[static_cast<std::size_t>(k)] * 1e3, rounding, "mm");
    record("", source, step + ": angle spread", b.steps[i].bow.angle_spread, a.steps[i].bow.angle_spread, rounding,
           "rad");
    for (std::size_t p = 0; p < joints_of(a.steps[i], JointKind::post).size(); ++p)
      EXPECT_NEAR(joints_of(b.steps[i], JointKind::post)[p].value / joints_of(a.steps[i], JointKind::post)[p].value, 1,
                  rounding);
  }
}

// ---- reciprocity

const Vector place_a(300, 40, 121.5), place_b(650, -81, 0);

std::string force_on(const std::string& bar, const Vector& at, const Vector& force) {
  return "[[load]]\non = \"" + bar + "\"\nat = " + point(at) + "\nforce = " + triple(force, "N") + "\n";
}

/// Hive-lid with forces at A on the clamp and B on the apron, a dial at each. Forces of nothing make the same stations.
/// The posts have no preload: with one, their length after clamping depends on the loads, and what bends then has a
/// history, for which the theorem does not hold. The sheet does not rub: friction follows the pressure, not the
/// reverse.
Findings with_forces(const Vector& at_a, const Vector& at_b) {
  const std::string smooth = replaced(project_file("cases/hive-lid/case.toml"), "[sheet]", "[sheet]\nfriction = 0");
  return solved(replaced(smooth, "preload = \"15 kN\"", "") + force_on("clamp.rib", place_a, at_a) +
                force_on("apron.face", place_b, at_b) +
                R"([[dial]]
name = "A"
on = "clamp.rib"
at = )" + point(place_a) +
                R"(
[[dial]]
name = "B"
on = "apron.face"
at = )" + point(place_b) +
                "\n");
}

/// By station: whether its pads carry.
std::vector<bool> closed_pads(const Findings& f, std::size_t step) {
  std::vector<bool> out;
  for (const double reserve : f.steps[step].bend_line.clamp_reserve) out.push_back(reserve > 0);
  return out;
}

// Maxwell and Betti: as long as no pad opens or closes, what a force at A does at B is what one at B does at A.
TEST(MaxwellBetti, ClampAgainstApron) {
  const Vector along_a(3, -4, 12), along_b(-2, 6, 3), nothing = Vector::Zero();
  const Findings none = with_forces(nothing, nothing);
  const Findings at_a = with_forces(along_a, nothing), at_b = with_forces(nothing, along_b);
  ASSERT_GE(none.steps.size(), 2U);
  ASSERT_EQ(none.steps[1].angle, 0) << "the apron's spot is given as it stands at 0 deg";
  for (std::size_t i = 0; i < 2; ++i) {
    ASSERT_EQ(closed_pads(none, i), closed_pads(at_a, i)) << "the forces are too great";
    ASSERT_EQ(closed_pads(none, i), closed_pads(at_b, i)) << "the forces are too great";
    const double ab = along_b.dot(dial(at_a, "B", i) - dial(none, "B", i));
    const double ba = along_a.dot(dial(at_b, "A", i) - dial(none, "A", i));
    EXPECT_GT(std::abs(ab), 1e-9);
    record("", "Maxwell and Betti", none.steps[i].name + ": work of B's force on A's movement", ab, ba, 1e-6, "N mm");
  }
}

// ---- mirrored machine

/// The machine seen in a mirror across the middle of its length.
Machine machine_mirrored(Machine m, double length) {
  const auto flip = [&](double& x) { x = length - x; };
  for (Body& b : m.bodies) {
    b.start = length - b.start - b.length;
    for (Bar& bar : b.bars) bar.start = length - bar.end();
  }
  flip(m.sheet->centre);
  m.each_joint_list([&](JointKind, auto& list) {
    for (JointBase& j : list) flip(j.at.x());
  });
  for (auto& s : m.screws) {
    std::ranges::for_each(s.x, flip);
    std::ranges::reverse(s.x);
  }
  for (auto& d : m.dials) flip(d.at.x());
  for (auto& l : m.loads) {
    flip(l.from.x());
    flip(l.to.x());
    l.force.x() *= -1;
    l.moment.y() *= -1;
    l.moment.z() *= -1;
  }
  return m;
}

double farthest_miss(const std::vector<double>& a, const std::vector<double>& b) {
  double most = 0, scale = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    most = std::max(most, std::abs(a[i] - b[b.size() - 1 - i]));
    scale = std::max(scale, std::abs(a[i]));
  }
  return scale > 0 ? most / scale : most;
}

TEST(Mirror, LopsidedMachine) {
  std::string text = replaced(project_file("cases/hive-lid/case.toml"), "centre = \"450 mm\"", "centre = \"400 mm\"");
  text = replaced(text, "x = \"310 mm\"", "x = \"270 mm\""); // nothing about it is symmetric
  text = replaced(text, "x = \"840 mm\"", "x = \"800 mm\"");
  text += R"([[load]]
on = "clamp.rib"
at = ["200 mm", "40 mm", "121.5 mm"]
force = ["300 N", "100 N", "-500 N"]
moment = ["5 N*m", "7 N*m", "9 N*m"]
)";
  const Machine m = machine_of(text);
  const Findings a = solved(m), b = solved(machine_mirrored(m, 0.9));
  const std::string source = "the same machine in a mirror";
  for (std::size_t i = 0; i < a.steps.size(); ++i) {
    const StepResult& s = a.steps[i];
    const StepResult& t = b.steps[i];
    for (const auto& [name, line] : {std::pair{"nose along z", &BendLine::nose_z},
                                     {"bed", &BendLine::bed_z},
                                     {"apron", &BendLine::apron_n},
                                     {"clamp force", &BendLine::clamp_force}})
      record("", source, s.name + ": " + name + ", farthest miss over greatest",
             farthest_miss(s.bend_line.*line, t.bend_line.*line), 0, 1e-7);
    for (std::size_t p = 0; p < joints_of(s, JointKind::post).size(); ++p)
      EXPECT_NEAR(joints_of(t, JointKind::post)[p].value / joints_of(s, JointKind::post)[p].value, 1, rounding)
          << joints_of(s, JointKind::post)[p].name;
    for (std::size_t k = 0; k < s.bars.size(); ++k)
      EXPECT_NEAR(t.bars[k].stress, s.bars[k].stress, rounding * std::max(s.bars[k].stress, 1e3))
          << s.name << " " << s.bars[k].name; // an apron that nothing loads has some nanopascal
    for (const DialResult& d : s.dials) {
      const Vector other = dial(b, d.name, i), here = d.movement * 1e3;
      EXPECT_LT((Vector(-other.x(), other.y(), other.z()) - here).norm(), rounding * here.norm()) << d.name;
    }
  }
}

// Posts and a sheet's end 1 to 3 mm beside screws, elements shorter than the pads' least spacing. The pads were thinned
// from the left, and the mirrored machine's bed bowed by 29 % more.
TEST(Mirror, StationsCloserThanPads) {
  std::string text = project_file("cases/hive-lid/case.toml");
  for (const auto& [what, by] : {std::pair{"centre = \"450 mm\"", "centre = \"449 mm\""},
                                 {"width = \"600 mm\"", "width = \"450 mm\""},
                                 {"x = \"310 mm\"", "x = \"272 mm\""},
                                 {"x = \"590 mm\"", "x = \"623 mm\""},
                                 {"y = \"70 mm\"\ndiameter", "y = \"50 mm\"\ndiameter"},
                                 {"preload = \"15 kN\"", "preload = \"25 kN\""}})
    text = replaced(text, what, by);
  for (const char* size : {"15 mm", "3.75 mm", "2.9 mm"}) {
    const Machine m =
        machine_of(replaced(text, "[solve]\n", "[solve]\nelement_size = \"" + std::string(size) + "\"\n"));
    const Findings a = solved(m), b = solved(machine_mirrored(m, 0.9));
    const std::string source = "the same machine in a mirror, elements of " + std::string(size);
    for (std::size_t i = 0; i < a.steps.size(); ++i) {
      const StepResult& s = a.steps[i];
      const StepResult& t = b.steps[i];
      for (BodyKind k : {BodyKind::bed, BodyKind::clamp})
        record("", source, s.name + ": " + to_string(k) + " bow", t.bow.bow[static_cast<std::size_t>(k)] * 1e3,
               s.bow.bow[static_cast<std::size_t>(k)] * 1e3, 1e-6, "mm");
      for (std::size_t p = 0; p < joints_of(s, JointKind::post).size(); ++p)
        EXPECT_NEAR(joints_of(t, JointKind::post)[p].value / joints_of(s, JointKind::post)[p].value, 1, 1e-6)
            << joints_of(s, JointKind::post)[p].name;
    }
  }
}

// ---- two dimensions against three

// All in one upright plane: pads, posts, cams, loads and both centroid lines at y = 7 mm. Then the plane needs nothing
// of the third dimension, and the two programs of equations must agree to rounding.
TEST(PlaneAgainstSpace, WhereThePlanesDecouple) {
  const std::string text =
      R"([sheet]
material = "DC01"
thickness = "1 mm"
width = "500 mm"
centre = "380 mm"
flange = "20 mm"
inside_radius = "1 mm"
angle = "90 deg"
grip = "5 mm"
[bed]
length = "800 mm"
material = "S275JR"
[[bed.bar]]
name = "web"
shape = "rectangle"
model = "beam"
width = "14 mm"
height = "90 mm"
at = ["7 mm", "-45 mm"]
[clamp]
length = "800 mm"
material = "S275JR"
nose = { land = "10 mm" }
[[clamp.bar]]
name = "spine"
shape = "rectangle"
model = "beam"
width = "10 mm"
height = "70 mm"
at = ["7 mm", "36 mm"]
[[post]]
joins = ["bed.web", "clamp.spine"]
x = "90 mm"
y = "7 mm"
diameter = "M16"
class = "8.8"
free_length = "150 mm"
preload = "6 kN"
[[post]]
joins = ["bed.web", "clamp.spine"]
x = "700 mm"
y = "7 mm"
diameter = "M16"
class = "8.8"
free_length = "150 mm"
preload = "9 kN"
[[cam]]
joins = ["bed.web", "clamp.spine"]
x = "760 mm"
y = "7 mm"
lift = "0.1 mm"
[[tie]]
joins = ["bed.web", "clamp.spine"]
at = ["90 mm", "7 mm", "0 mm"]
holds = ["y", "rx", "rz"]
[[support]]
bar = "bed.web"
x = "60 mm"
holds = ["x", "y", "z", "rx"]
[[support]]
bar = "bed.web"
x = "720 mm"
holds = ["y", "z", "rx"]
[[load]]
on = "clamp.spine"
at = ["400 mm", "7 mm", "60 mm"]
force = ["200 N", "0 N", "-3 kN"]
[[dial]]
name = "top"
on = "clamp.spine"
at = ["380 mm", "7 mm", "71 mm"]
[solve]
angles = ["0 deg"]
)";
  const Findings space = solved(text + "dimension = 3\n"), plane = solved(text + "dimension = 2\n");
  EXPECT_LT(plane.unknowns, space.unknowns);
  const std::string source = "the plane against space, all in one plane";
  const StepResult& s = space.steps[0];
  const StepResult& p = plane.steps[0];
  for (BodyKind k : {BodyKind::bed, BodyKind::clamp})
    record("", source, "clamp step: " + to_string(k) + " bow", p.bow.bow[static_cast<std::size_t>(k)] * 1e3,
           s.bow.bow[static_cast<std::size_t>(k)] * 1e3, rounding, "mm");
  record("", source, "clamp step: dial, miss over movement",
         (dial(plane, "top") - dial(space, "top")).norm() / dial(space, "top").norm(), 0, rounding);
  record("", source, "clamp step: cam", joints_of(p, JointKind::cam)[0].value, joints_of(s, JointKind::cam)[0].value,
         rounding, "N");
  for (std::size_t i = 0; i < s.bars.size(); ++i)
    record("", source, "clamp step: stress in " + s.bars[i].name, p.bars[i].stress * 1e-6, s.bars[i].stress * 1e-6,
           rounding, "MPa");
}

} // namespace
} // namespace bedbow::verification
