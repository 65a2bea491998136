// The suites that everything registered has to pass: all that is built in does; what is wrong on purpose does not, and
// the report says in what.
#include "solver/conformance/conformance.h"

#include <gtest/gtest.h>

namespace bedbow {
namespace {

/// Names of the checks that fail.
std::string failures(const Conformance& proof) {
  std::string out;
  for (const ProofCheck& c : proof.checks)
    if (!c.pass)
      out += c.what + " (" + std::to_string(c.value) + ", bound " + std::to_string(c.allowed) + ") " + c.note + "; ";
  return out;
}

TEST(Conformance, AllThatIsBuiltInPasses) {
  const Registries r = builtin_registries();
  for (const auto& e : r.shapes.entries()) EXPECT_EQ(failures(check_shape(e)), "") << e.name;
  for (const auto& e : r.moment_laws.entries()) EXPECT_EQ(failures(check_law(e)), "") << e.name;
  for (const auto& e : r.elements.entries()) EXPECT_EQ(failures(check_element(e)), "") << e.name;
  for (const auto& e : r.linear_solvers.entries()) EXPECT_EQ(failures(check_solver(e)), "") << e.name;
}

TEST(Conformance, EachSuiteLooksAtMuch) {
  const Registries r = builtin_registries();
  EXPECT_GE(check_element(r.elements.get("beam")).checks.size(), 12U);
  EXPECT_GE(check_shape(r.shapes.get("rectangle")).checks.size(), 10U);
  EXPECT_GE(check_law(r.moment_laws.get("rigid-plastic")).checks.size(), 5U);
  EXPECT_GE(check_solver(r.linear_solvers.get("band")).checks.size(), 9U);
}

/// A beam whose matrix has been tampered with.
Conformance tampered(const std::function<void(const ElementInput&, Eigen::MatrixXd&)>& tamper,
                     const char* name = "beam") {
  const Registries registries = builtin_registries();
  ElementEntry e = registries.elements.get(name);
  const auto right = e.stiffness;
  e.stiffness = [right, tamper](const ElementInput& in) {
    Eigen::MatrixXd K = right(in);
    tamper(in, K);
    return K;
  };
  return check_element(e);
}

TEST(Conformance, WrongElementsFailInWhatIsWrong) {
  EXPECT_NE(failures(tampered([](const auto&, auto& K) { K(0, 6) *= 1.001; })).find("symmetric"), std::string::npos);
  EXPECT_NE(failures(tampered([](const auto&, auto& K) { K(0, 0) *= 1.001; })).find("rigid-body modes"),
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

/// The built-in element with what `change` makes of it.
std::string failures_with(const char* name, const std::function<void(ElementEntry&)>& change) {
  ElementEntry e = builtin_registries().elements.get(name);
  change(e);
  return failures(check_element(e));
}

TEST(Conformance, WrongMassesFailInWhatIsWrong) {
  const auto tampered_mass = [](const std::function<void(Eigen::MatrixXd&)>& tamper) {
    std::vector<std::string> out;
    for (const char* name : {"beam", "shell4"})
      out.push_back(failures_with(name, [&](ElementEntry& e) {
        e.mass = [right = e.mass, tamper](const ElementInput& in, bool lumped) {
          Eigen::MatrixXd M = right(in, lumped);
          tamper(M);
          return M;
        };
      }));
    return out;
  };
  for (const auto& f : tampered_mass([](auto& M) { M(0, 7) += 0.01 * M(0, 0); }))
    EXPECT_NE(f.find("mass symmetric"), std::string::npos) << f;
  for (const auto& f : tampered_mass([](auto& M) { M(0, 0) *= -1; }))
    EXPECT_NE(f.find("no negative mass"), std::string::npos) << f;
  for (const auto& f : tampered_mass([](auto& M) { M *= 1.001; }))
    EXPECT_NE(f.find("total mass"), std::string::npos) << f;
  // All of the right mass, but more of it at the second node than at the first.
  for (const auto& f : tampered_mass([](auto& M) {
         for (int k = 0; k < 3; ++k) {
           const double part = 0.1 * M(k, k);
           M(k, k) -= part;
           M(6 + k, 6 + k) += part;
         }
       }))
    EXPECT_NE(f.find("mass centre"), std::string::npos) << f;
  // Turns weigh what ten times the mass would.
  for (const auto& f : tampered_mass([](auto& M) {
         for (Eigen::Index i = 0; i < M.rows(); ++i)
           if (i % 6 >= 3) M(i, i) += M(0, 0) * 1e3;
       }))
    EXPECT_NE(f.find("inertia of a rigid body"), std::string::npos) << f;
}

TEST(Conformance, WrongGeometricStiffnessFailsInWhatIsWrong) {
  const auto with = [](const char* name, const std::function<void(std::span<double>, Eigen::MatrixXd*)>& tamper) {
    return failures_with(name, [&](ElementEntry& e) {
      e.geometric = [right = e.geometric, tamper](const ElementInput& in, std::span<const double> state) {
        std::vector<double> changed(state.begin(), state.end());
        tamper(changed, nullptr);
        Eigen::MatrixXd K = right(in, changed);
        tamper(changed, &K);
        return K;
      };
    });
  };
  for (const char* name : {"beam", "shell4"}) {
    const std::string skew = with(name, [](auto, auto* K) {
      if (K) (*K)(1, 7) *= 1.01;
    });
    EXPECT_NE(skew.find("geometric stiffness symmetric"), std::string::npos) << skew;
    const std::string soft = with(name, [](auto, auto* K) {
      if (K) *K *= 1.01;
    });
    EXPECT_NE(soft.find("turns the forces"), std::string::npos) << soft;
    EXPECT_NE(soft.find(name == std::string("beam") ? "Euler's load" : "critical compression"), std::string::npos)
        << soft;
  }
  // Moments left out: pulls and pushes are right, what a moment does to a bar on edge is not.
  const std::string deaf = with("beam", [](std::span<double> state, auto*) { state[4] = state[10] = 0; });
  EXPECT_NE(deaf.find("lateral buckling"), std::string::npos) << deaf;
  EXPECT_EQ(deaf.find("Euler"), std::string::npos) << deaf;
  // x and y confused.
  const std::string swapped = with("shell4", [](std::span<double> state, auto* K) {
    if (!K)
      for (std::size_t p = 0; p < 4; ++p) std::swap(state[8 * p], state[8 * p + 1]);
  });
  EXPECT_NE(swapped.find("critical compression of a wide plate along x"), std::string::npos) << swapped;
}

TEST(Conformance, WrongLoadsFail) {
  for (const char* name : {"beam", "shell4"})
    for (const int wrong : {0, 1}) {
      const std::string f = failures_with(name, [wrong](ElementEntry& e) {
        e.load = [right = e.load, wrong](const ElementInput& in, std::span<const double> q) {
          Eigen::VectorXd out = right(in, q);
          if (wrong == 0) out *= 1.001;
          if (wrong == 1) std::swap(out[2], out[8]), out[2] *= 1.5; // a share that goes to the wrong end
          return out;
        };
      });
      EXPECT_NE(f.find("loads in equilibrium"), std::string::npos) << f;
    }
  const std::string none = failures_with("beam", [](ElementEntry& e) { e.load = nullptr; });
  EXPECT_EQ(none, "");
}

TEST(Conformance, WrongSectionsFail) {
  const Registries registries = builtin_registries();
  ShapeEntry e = registries.shapes.get("rectangle");
  const auto right = e.make;
  e.make = [right](const Shape& shape, double nu) {
    Section s = right(shape, nu);
    s.props.Iyy *= 1.1;
    return s;
  };
  EXPECT_NE(failures(check_shape(e)).find("Iyy, Izz against the outline"), std::string::npos);
}

TEST(Conformance, UnknownNamesAreAnsweredWithTheKnownOnes) {
  try {
    check_conformance("cube", builtin_registries());
    FAIL();
  } catch (const std::invalid_argument& e) {
    EXPECT_NE(std::string(e.what()).find("rectangle"), std::string::npos);
  }
}

} // namespace
} // namespace bedbow
