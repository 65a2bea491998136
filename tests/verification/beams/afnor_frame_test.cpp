// Two parallel cantilevers whose tips a rigid link joins, as two bars of a bed with a rigid tie.
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

std::string cantilever(const std::string& name, double z_mm) {
  // So great an area that the pair can't turn by one bar growing longer and the other shorter.
  return "[[bed.bar]]\nname = \"" + name +
         R"("
shape = "section"
A = "10 m^2"
Iyy = "1.3333333333333333 cm^4"
Izz = "1.3333333333333333 cm^4"
J = "2 cm^4"
Ay = "100 m^2"
Az = "100 m^2"
at = ["0 mm", )" +
         mm(z_mm) + "]\n";
}

std::string root(const std::string& name) {
  return "[[support]]\nname = \"" + name + "\"\nbar = \"bed." + name +
         R"("
x = "0 mm"
holds = ["x", "y", "z", "rx", "ry", "rz"]
)";
}

TEST(AfnorSsll0589, RigidlyLinkedCantilevers) {
  const std::string source = "AFNOR, Guide de validation des progiciels de calcul de structures, 1990, SSLL05/89";
  const Findings f = solved(
      R"([material.steel]
E = "200 GPa"
nu = 0.3
[bed]
length = "2 m"
material = "steel"
)" + cantilever("lower", -200) +
      cantilever("upper", 0) + root("lower") + root("upper") +
      R"([[tie]]
joins = ["bed.lower", "bed.upper"]
at = ["2 m", "0 mm", "-100 mm"]
holds = ["x", "y", "z", "rx", "ry", "rz"]
[[load]]
on = "bed.upper"
at = ["2 m", "0 mm", "0 mm"]
force = ["0 N", "0 N", "-0.1 kN"]
[[dial]]
name = "tip"
on = "bed.lower"
at = ["2 m", "0 mm", "-200 mm"]
)");
  // A tenth of the guide's 1 kN, times ten: 125 mm on 2 m are no small displacement, and refused as one.
  constexpr double tenth = 10;
  // Turning by stretch leaves less than a millionth: EI / (E A h^2) is 3e-8.
  record("A13", source, "deflection of the linked tips", -dial(f, "tip").z() * 1e-3 * tenth, 0.125, 1e-6, "m");
  for (const char* name : {"lower", "upper"})
    record("A13", source, std::string("moment at the root, ") + name,
           std::abs(joint(joints_of(f.steps.front(), JointKind::support), name).moment.y()) * tenth, 500, 1e-6, "N m");
}

} // namespace
} // namespace bedbow::verification
