// The suites that everything registered has to pass: all that is built in does; what is wrong on purpose does not, and
// the report says in what.
#include "solver/proof/proof.h"

#include <gtest/gtest.h>

namespace bedbow {
namespace {

/// Names of the checks that fail.
std::string failures(const Proof& proof) {
  std::string out;
  for (const ProofCheck& c : proof.checks)
    if (!c.pass)
      out += c.what + " (" + std::to_string(c.value) + ", bound " + std::to_string(c.allowed) + ") " + c.note + "; ";
  return out;
}

TEST(Proof, AllThatIsBuiltInPasses) {
  const Registries r = builtin_registries();
  for (const auto& e : r.shapes.entries()) EXPECT_EQ(failures(prove_shape(e)), "") << e.name;
  for (const auto& e : r.moment_laws.entries()) EXPECT_EQ(failures(prove_law(e)), "") << e.name;
  for (const auto& e : r.elements.entries()) EXPECT_EQ(failures(prove_element(e)), "") << e.name;
  for (const auto& e : r.linear_solvers.entries()) EXPECT_EQ(failures(prove_solver(e)), "") << e.name;
}

TEST(Proof, EachSuiteLooksAtMuch) {
  const Registries r = builtin_registries();
  EXPECT_GE(prove_element(r.elements.get("beam")).checks.size(), 12U);
  EXPECT_GE(prove_shape(r.shapes.get("rectangle")).checks.size(), 10U);
  EXPECT_GE(prove_law(r.moment_laws.get("rigid-plastic")).checks.size(), 5U);
  EXPECT_GE(prove_solver(r.linear_solvers.get("band")).checks.size(), 9U);
}

/// A beam whose matrix has been tampered with.
Proof tampered(const std::function<void(const ElementInput&, Eigen::MatrixXd&)>& tamper, const char* name = "beam") {
  const Registries registries = builtin_registries();
  ElementEntry e = registries.elements.get(name);
  const auto right = e.stiffness;
  e.stiffness = [right, tamper](const ElementInput& in) {
    Eigen::MatrixXd K = right(in);
    tamper(in, K);
    return K;
  };
  return prove_element(e);
}

TEST(Proof, WrongElementsFailInWhatIsWrong) {
  EXPECT_NE(failures(tampered([](const auto&, auto& K) { K(0, 6) *= 1.001; })).find("symmetric"), std::string::npos);
  EXPECT_NE(failures(tampered([](const auto&, auto& K) { K(0, 0) *= 1.001; })).find("rigid movements"),
            std::string::npos);
  EXPECT_NE(failures(tampered([](const auto&, auto& K) { K *= -1; })).find("no negative eigenvalue"),
            std::string::npos);
  EXPECT_NE(failures(tampered([](const auto&, auto& K) { K *= 1.001; })).find("energy of constant states"),
            std::string::npos);
  EXPECT_NE(failures(tampered([](const auto& in, auto& K) { K *= 1 + in.corners(0, 0); })).find("the same anywhere"),
            std::string::npos);
  EXPECT_NE(failures(tampered([](const auto&, auto& K) { K.resize(6, 6); })).find("declared extents"),
            std::string::npos);
  // Stiffer where the piece is short: each piece is right by itself as a rigid body, but the patch is not.
  EXPECT_NE(failures(tampered([](const auto& in, auto& K) {
              K *= 1 + (in.corners.col(1) - in.corners.col(0)).norm();
            })).find("patch test"),
            std::string::npos);
  EXPECT_NE(failures(tampered([](const auto& in, auto& K) { K *= 1 + (in.corners.col(2) - in.corners.col(0)).norm(); },
                              "shell4"))
                .find("patch test"),
            std::string::npos);
}

TEST(Proof, WrongSectionsFail) {
  const Registries registries = builtin_registries();
  ShapeEntry e = registries.shapes.get("rectangle");
  const auto right = e.make;
  e.make = [right](const Shape& shape, double nu) {
    Section s = right(shape, nu);
    s.props.Iyy *= 1.1;
    return s;
  };
  EXPECT_NE(failures(prove_shape(e)).find("Iyy, Izz against the outline"), std::string::npos);
}

TEST(Proof, UnknownNamesAreAnsweredWithTheKnownOnes) {
  try {
    prove("cube", builtin_registries());
    FAIL();
  } catch (const std::invalid_argument& e) {
    EXPECT_NE(std::string(e.what()).find("rectangle"), std::string::npos);
  }
}

} // namespace
} // namespace bedbow
