#include "tests/verification/modes/vibration.h"

#include <gtest/gtest.h>

namespace bedbow::verification {

namespace {

Findings found(Machine machine) {
  AnalysisOptions options;
  options.allow_mechanisms = true;
  Findings f = analyse(machine, builtin_registries(), options);
  EXPECT_EQ(f.status, Status::ok) << f.trouble;
  if (!f.modes) throw std::runtime_error("no modes: " + f.trouble);
  EXPECT_LT(f.modes->residual, 1e-7);
  EXPECT_LT(f.modes->orthogonality, 1e-8);
  return f;
}

} // namespace

Findings vibrating(const std::string& text, int modes) {
  Machine m = machine_of(text);
  m.solve.modes = modes;
  Findings f = found(std::move(m));
  EXPECT_EQ(f.modes->modes.size(), static_cast<std::size_t>(modes));
  return f;
}

Findings buckling(const std::string& text, int factors) {
  Machine m = machine_of(text);
  m.solve.buckling = factors;
  return found(std::move(m));
}

std::vector<double> frequencies(const Findings& f) {
  std::vector<double> out;
  for (const ModeShape& m : f.modes->modes)
    if (m.frequency > 0) out.push_back(m.frequency);
  return out;
}

std::string member(const std::string& name, const Eigen::Vector3d& from, const Eigen::Vector3d& to,
                   const std::string& shape, int divisions) {
  return "[[member]]\nname = \"" + name + "\"\nfrom = " + point(from) + "\nto = " + point(to) + "\n" + shape +
         "material = \"m\"\ndivisions = " + std::to_string(divisions) + "\n";
}

std::string hold(const Eigen::Vector3d& at, const std::string& holds) {
  return "[[hold]]\nat = " + point(at) + "\nholds = [" + holds + "]\n";
}

std::string slender(double A, double Iyy, double Izz, double J) {
  return "shape = \"section\"\nA = " + quantity(A, "mm^2") + "\nIyy = " + quantity(Iyy, "mm^4") +
         "\nIzz = " + quantity(Izz, "mm^4") + "\nJ = " + quantity(J, "mm^4") + R"(
Ay = "1e6 m^2"
Az = "1e6 m^2"
)";
}

std::string head(double E, double nu, double density) {
  return "title = \"vibrating\"\n[material.m]\nE = " + quantity(E, "GPa") + "\nnu = " + std::to_string(nu) +
         "\ndensity = " + quantity(density, "kg/m^3") + "\n";
}

} // namespace bedbow::verification
