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
         "\"\nshape = \"section\"\nA = \"10 m^2\"\nIyy = \"1.3333333333333333 cm^4\"\nIzz = \"1.3333333333333333 "
         "cm^4\"\n"
         "J = \"2 cm^4\"\nAy = \"100 m^2\"\nAz = \"100 m^2\"\nat = [\"0 mm\", " +
         mm(z_mm) + "]\n";
}

std::string root(const std::string& name) {
  return "[[support]]\nname = \"" + name + "\"\nbar = \"bed." + name +
         "\"\nx = \"0 mm\"\nholds = [\"x\", \"y\", \"z\", \"rx\", \"ry\", \"rz\"]\n";
}

TEST(AfnorSsll0589, RigidlyLinkedCantilevers) {
  const std::string source = "AFNOR, Guide de validation des progiciels de calcul de structures, 1990, SSLL05/89";
  const Findings f = solved(
      "[material.steel]\nE = \"200 GPa\"\nnu = 0.3\n[bed]\nlength = \"2 m\"\nmaterial = \"steel\"\n" +
      cantilever("lower", -200) + cantilever("upper", 0) + root("lower") + root("upper") +
      "[[tie]]\njoins = [\"bed.lower\", \"bed.upper\"]\nat = [\"2 m\", \"0 mm\", \"-100 mm\"]\n"
      "holds = [\"x\", \"y\", \"z\", \"rx\", \"ry\", \"rz\"]\n"
      "[[load]]\non = \"bed.upper\"\nat = [\"2 m\", \"0 mm\", \"0 mm\"]\nforce = [\"0 N\", \"0 N\", \"-0.1 kN\"]\n"
      "[[dial]]\nname = \"tip\"\non = \"bed.lower\"\nat = [\"2 m\", \"0 mm\", \"-200 mm\"]\n");
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
