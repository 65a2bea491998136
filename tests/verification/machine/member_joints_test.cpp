// Members that meet in a T, rods and panels likewise, against closed forms of beams and frames.
#include "mesh/machine/problem.h"

#include "tests/verification/modes/vibration.h"
#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace bedbow::verification {
namespace {

const std::string under_force = "cantilever under a force, tquigley.com/T302.htm";
const std::string under_moment = "cantilever under a moment, tquigley.com/?page_id=45, straight beyond it";
const std::string by_displacements = "slope-deflection equations of the frame, solved in the test";
const std::string all = R"("x", "y", "z", "rx", "ry", "rz")";
// Beams without shear flexibility, 1 m long: A, Iyy, Izz, J in mm.
constexpr double E = 210e9, G = E / 2.6, A = 1200, Iyy = 360e3, Izz = 40e3, J = 126e3;
constexpr double EI = E * Iyy * 1e-12, EA = E * A * 1e-6, GJ = G * J * 1e-12;
constexpr double exact = 1e-9;

std::string beam(const std::string& name, const Eigen::Vector3d& from, const Eigen::Vector3d& to) {
  return member(name, from, to, slender(A, Iyy, Izz, J), 4);
}

std::string force_on_member(const std::string& on, const Eigen::Vector3d& at, const Eigen::Vector3d& f) {
  return "[[load]]\non = \"" + on + "\"\nat = " + point(at) + "\nforce = [" + quantity(f.x(), "N") + ", " +
         quantity(f.y(), "N") + ", " + quantity(f.z(), "N") + "]\n";
}

std::string spot(const std::string& name, const std::string& on, const Eigen::Vector3d& at) {
  return "[[dial]]\nname = \"" + name + "\"\non = \"" + on + "\"\nat = " + point(at) + "\n";
}

std::vector<std::string> warnings_of(const std::string& text) {
  std::vector<std::string> out;
  for (const Problem& p : read_case_text(text, builtin_registries()).warnings) out.push_back(p.key + ": " + p.text);
  return out;
}

bool any_has(const std::vector<std::string>& lines, const std::string& one, const std::string& other = "") {
  return std::ranges::any_of(lines, [&](const std::string& line) {
    return line.find(one) != std::string::npos && line.find(other) != std::string::npos;
  });
}

} // namespace

// A stub welded on a cantilever at 600 mm, between its divisions, was silently apart from it: the frame answered
// something else, or the stub fell. Whatever the order of the members and their ends, the cantilever bends as under the
// stub's load at its foot.
TEST(MembersInAT, StubOnACantilever) {
  const double a = 0.6, L = 1, h = 0.2, P = 800, F = 500;
  const std::string along = beam("beam", {0, 0, 0}, {1000, 0, 0}), back = beam("beam", {1000, 0, 0}, {0, 0, 0});
  const std::string up = beam("stub", {600, 0, 0}, {600, 0, 200}), down = beam("stub", {600, 0, 200}, {600, 0, 0});
  for (const auto& [order, members] : {std::pair{"beam, stub", along + up},
                                       {"stub, beam", up + along},
                                       {"beam, stub from its top", along + down},
                                       {"stub, beam from its tip", up + back}}) {
    const std::string on = head(210, 0.3, 7850) + members + hold({0, 0, 0}, all) + spot("tip", "beam", {1000, 0, 0});
    const double w = dial(solved(on + force_on_member("stub", {600, 0, 200}, {0, 0, -P})), "tip").z();
    record("", under_force, std::string("tip of a cantilever under a stub's load, ") + order, w,
           -P * a * a / (6 * EI) * (3 * L - a) * 1e3, exact, "mm");
    const double turned = dial(solved(on + force_on_member("stub", {600, 0, 200}, {F, 0, 0})), "tip").z();
    record("", under_moment, std::string("the same, by the stub's moment, ") + order, turned,
           -F * h * a / EI * (L - a / 2) * 1e3, exact, "mm");
  }
}

// Two beams of a grid: one clamped at both ends, one that ends on its middle. Deflection and twist of the joint by the
// slope-deflection method.
TEST(MembersInAT, GridOfTwoBeams) {
  const double l = 0.5, L = 1, P = 3000;
  Eigen::Matrix2d k; // deflection down and rotation about x at the joint
  k << 12 * EI / (l * l * l) + 192 * EI / (L * L * L), -6 * EI / (l * l), -6 * EI / (l * l), 4 * EI / l + 4 * GJ / L;
  const double w = k.inverse()(0, 0) * P;
  const std::string girder = beam("girder", {0, 0, 0}, {1000, 0, 0}),
                    cross = beam("cross", {500, -500, 0}, {500, 0, 0});
  for (const std::string& members : {girder + cross, cross + girder}) {
    const Findings f = solved(head(210, 0.3, 7850) + members + hold({0, 0, 0}, all) + hold({1000, 0, 0}, all) +
                              hold({500, -500, 0}, all) + force_on_member("cross", {500, 0, 0}, {0, 0, -P}) +
                              spot("joint", "girder", {500, 0, 0}));
    record("", by_displacements, "grid of two beams, deflection of the joint", dial(f, "joint").z(), -w * 1e3, exact,
           "mm");
  }
}

// A rod from the floor to a column's flank: it pulls where it meets the column.
TEST(MembersInAT, RodOnAColumn) {
  const double h = 1, a = 0.6, H = 1000, area = 78.53981634e-6, length = 0.6 * std::sqrt(2), s = std::sqrt(0.5);
  const double rod = E * area / length;
  const double pull =
      rod * s * a * a * (3 * h - a) / (6 * EI) * H / (1 + rod * s * s * (a * a * a / (3 * EI) + a / EA));
  const std::string column = beam("column", {0, 0, 0}, {0, 0, 1000});
  const std::string guy =
      member("guy", {-600, 0, 0}, {0, 0, 600}, slender(78.53981634, 490, 490, 980), 1) + "tension_only = true\n";
  for (const std::string& members : {column + guy, guy + column}) {
    const Findings f =
        solved(head(210, 0.3, 7850) + replaced(members, "name = \"column\"\n", "name = \"column\"\nup = [1, 0, 0]\n") +
               hold({0, 0, 0}, all) + hold({-600, 0, 0}, all) + force_on_member("column", {0, 0, 1000}, {H, 0, 0}));
    record("", "compatibility of rod and cantilever, worked in the test", "pull of a rod on a column's flank",
           joint(joints_of(f.steps[0], JointKind::tie), "guy").value, pull, exact, "N");
  }
}

// A member along a panel's edge takes part at every node of that edge, not only at its own ends.
TEST(MembersInAT, StiffenerAlongAPanelsEdge) {
  const std::string panel =
      R"([[panel]]
name = "shelf"
corner = ["0 mm", "0 mm", "0 mm"]
edge_a = ["400 mm", "0 mm", "0 mm"]
edge_b = ["0 mm", "100 mm", "0 mm"]
thickness = "4 mm"
material = "m"
divisions = [8, 2]
)";
  std::string dials;
  for (const std::string on : {"shelf", "rib"}) dials += spot(on, on, {150, 0, 0});
  const Findings f = solved(head(210, 0.3, 7850) + panel + beam("rib", {0, 0, 0}, {400, 0, 0}) + hold({0, 0, 0}, all) +
                            hold({400, 0, 0}, all) + R"([[load]]
panel = "shelf"
pressure = "5 kPa"
)" + dials);
  EXPECT_GT(dial(f, "shelf").norm(), 1e-6);
  EXPECT_LT((dial(f, "shelf") - dial(f, "rib")).norm(), 1e-12);
}

// A stub that stands on a strip of plate between the nodes of its mesh was silently apart. It loads the strip where it
// stands: P a^3 / 3 E I + 6/5 P a / G A at its foot, which four-node shells of length L / n find too soft by 1 / (4
// n^2).
TEST(MembersInAT, StubOnAPlateBetweenItsNodes) {
  const double a = 0.375, P = 100, width = 0.04, t = 0.01, I = width * t * t * t / 12;
  const std::string strip =
      R"([[panel]]
name = "strip"
corner = ["0 mm", "0 mm", "0 mm"]
edge_a = ["400 mm", "0 mm", "0 mm"]
edge_b = ["0 mm", "40 mm", "0 mm"]
thickness = "10 mm"
material = "m"
divisions = [8, 2]
)";
  const auto loaded = [&](double y) {
    const Findings f =
        solved(head(210, 0, 7850) + strip + beam("stub", {375, y, 0}, {375, y, 100}) +
               "[[hold]]\nfrom = " + point({0, 0, 0}) + "\nto = " + point({0, 40, 0}) + "\nholds = [" + all + "]\n" +
               force_on_member("stub", {375, y, 100}, {0, 0, -P}) + spot("foot", "stub", {375, y, 0}));
    const JointResult& wall = joint(joints_of(f.steps[0], JointKind::support), "hold 1");
    record("", "statics", "force of the wall, stub at y = " + std::to_string(int(y)) + " mm", wall.force.z(), P, exact,
           "N");
    record("", "statics", "its moment about y", wall.moment.y(), -P * a, exact, "N m");
    EXPECT_NEAR(wall.moment.x(), P * (y / 1e3 - 0.02), 1e-7);
    record("", "statics", "what the strip brings to the stub",
           joint(joints_of(f.steps[0], JointKind::tie), "stub on strip").force.z(), P, exact, "N");
    return dial(f, "foot").z();
  };
  record("", "Timoshenko's beam", "stub in the middle of a plate strip, between its nodes", loaded(20),
         -(P * a * a * a / (3 * E * I) + 1.2 * P * a / (E / 2 * width * t)) * 1e3, 1.0 / (4 * 7.5 * 7.5) + 1e-3, "mm");
  EXPECT_NEAR(loaded(13), loaded(27), 1e-9); // no side of the cell is preferred
}

// What merely crosses is not joined, and that is said: both names and the place.
TEST(MembersInAT, CrossingIsSaid) {
  const std::string one = beam("brace", {0, 0, 0}, {1000, 0, 1000}), other = beam("strut", {0, 0, 1000}, {1000, 0, 0});
  const auto lines = warnings_of(head(210, 0.3, 7850) + one + other);
  ASSERT_EQ(lines.size(), 1U);
  EXPECT_NE(lines[0].find("member.brace: it crosses member strut at [500 mm, 0 mm, 500 mm]"), std::string::npos)
      << lines[0];
  // A third that ends there joins them; members of one line, and rods, say nothing.
  EXPECT_TRUE(warnings_of(head(210, 0.3, 7850) + one + other + beam("third", {500, 0, 500}, {500, 0, 900})).empty());
  EXPECT_TRUE(
      warnings_of(head(210, 0.3, 7850) + one + "tension_only = true\n" + other + "tension_only = true\n").empty());
  EXPECT_TRUE(warnings_of(head(210, 0.3, 7850) + one + beam("tee", {500, 0, 500}, {500, 0, 0})).empty());
}

// An end that misses by less than a millimetre is a slip of the pen; an end on a rod's middle holds nothing.
TEST(MembersInAT, NearMissesAreSaid) {
  const std::string one = beam("beam", {0, 0, 0}, {1000, 0, 0});
  EXPECT_TRUE(any_has(warnings_of(head(210, 0.3, 7850) + one + beam("stub", {400, 0.3, 0}, {400, 0, 300})),
                      "member.stub", "0.3 mm beside member beam"));
  EXPECT_TRUE(any_has(
      warnings_of(head(210, 0.3, 7850) + one + "tension_only = true\n" + beam("stub", {400, 0, 0}, {400, 0, 300})),
      "member.stub", "on member beam between its ends"));
  EXPECT_TRUE(warnings_of(head(210, 0.3, 7850) + one + beam("stub", {400, 30, 0}, {400, 30, 300})).empty());
}

// A rail drawn as it is cut, from face to face of two legs of 40 mm, was silently apart from the leg whose axis it did
// not reach: the tube's face is 20 mm from it. Beyond the face, or where the end is joined to a third member, nothing
// is amiss.
TEST(MembersInAT, EndsInsideASectionAreSaid) {
  const auto tube = [](const std::string& name, const Eigen::Vector3d& from, const Eigen::Vector3d& to) {
    return member(name, from, to, "shape = \"tube\"\nwidth = \"40 mm\"\nheight = \"40 mm\"\nwall = \"3 mm\"\n", 4);
  };
  const std::string legs =
      head(210, 0.3, 7850) + tube("left", {0, 0, 0}, {0, 0, 600}) + tube("right", {500, 0, 0}, {500, 0, 600});
  const auto rail_to = [&](double x) { return warnings_of(legs + tube("rail", {0, 0, 300}, {x, 0, 300})); };
  EXPECT_TRUE(any_has(rail_to(480), "member.rail", "lies in member right, 20 mm off its axis"));
  EXPECT_TRUE(any_has(rail_to(495), "member.rail", "lies in member right, 5 mm off its axis"));
  EXPECT_TRUE(rail_to(500).empty());
  EXPECT_TRUE(rail_to(479).empty());
  EXPECT_TRUE(warnings_of(legs + tube("rail", {0, 0, 300}, {490, 0, 300}) + tube("strut", {490, 0, 300}, {400, 300, 0}))
                  .empty());
}

// Panels whose edges meet with unlike divisions are joined at the nodes that meet only.
TEST(MembersInAT, PanelsOfUnlikeDivisionsAreSaid) {
  const auto panel = [](const std::string& name, double x, int divisions) {
    return "[[panel]]\nname = \"" + name + "\"\ncorner = " + point({x, 0, 0}) + "\nedge_a = " + point({100, 0, 0}) +
           "\nedge_b = " + point({0, 80, 0}) + R"(
thickness = "5 mm"
material = "m"
divisions = [4, )" +
           std::to_string(divisions) + "]\n";
  };
  EXPECT_TRUE(warnings_of(head(210, 0.3, 7850) + panel("left", 0, 4) + panel("right", 100, 4)).empty());
  const auto lines = warnings_of(head(210, 0.3, 7850) + panel("left", 0, 8) + panel("right", 100, 4));
  EXPECT_TRUE(any_has(lines, "panel.left: 4 nodes of its edges lie on panel right")) << (lines.empty() ? "" : lines[0]);
}

// Feet of a frame taken away: it turned about the feet left, by 3e33 mm, and was "ok", since a rod between two places
// of it was taken for a joint that holds the turning.
TEST(FreeMovement, IsSeenBesideARod) {
  const std::string bench = project_file("cases/bench-folder/case.toml");
  const auto without = [](std::string text, const std::string& foot) {
    const std::size_t from = text.find("[[hold]]\nname = \"" + foot);
    const std::size_t first = from != std::string::npos ? from : text.rfind("[[hold]]", text.find("name = \"" + foot));
    return text.erase(first, text.find("[[", first + 2) - first);
  };
  for (const auto& [one, other] : {std::pair{"left rear foot", "right rear foot"},
                                   {"left front foot", "right front foot"},
                                   {"right front foot", "right rear foot"},
                                   {"left front foot", "right rear foot"},
                                   {"left front foot", "left rear foot"},
                                   {"left rear foot", "right front foot"}}) {
    const Findings f = analyse(machine_of(without(without(bench, one), other)), builtin_registries());
    EXPECT_EQ(f.status, Status::mechanism) << one << ", " << other;
    EXPECT_NE(f.trouble.find("can turn about"), std::string::npos) << f.trouble;
  }
}

// Its mass is that of every piece, the rod's too: pi (20 mm)^2 / 4 and so on, by hand.
TEST(Mass, OfABenchWithItsRod) {
  const double rail = (40 * 80 - 32 * 72) * 1e-6, leg = (40 * 40 - 34 * 34) * 1e-6, pi = 3.14159265358979;
  const double volume = 2 * rail + 2 * pi / 4 * 400e-6 * 0.12 + 4 * leg * std::hypot(0.25, 0.8) +
                        pi / 4 * 100e-6 * std::sqrt(1 + 0.0625 + 0.64);
  const Findings f = solved(project_file("cases/bench-folder/case.toml"));
  record("", "by hand, 7850 kg/m^3", "mass of the bench folder's frame", f.mass, volume * 7850, 1e-9, "kg");
  // Without a density nothing is known, which is not 0 kg.
  const Findings unknown = solved(replaced(head(210, 0.3, 7850), "density = \"7850 kg/m^3\"\n", "") +
                                  beam("beam", {0, 0, 0}, {1000, 0, 0}) + hold({0, 0, 0}, all));
  EXPECT_TRUE(std::isnan(unknown.mass));
}

} // namespace bedbow::verification
