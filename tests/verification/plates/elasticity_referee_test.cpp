// Bars and plates against 3D elasticity: figures of tests/reference/elasticity.json, computed by a general-purpose
// finite-element library with quadratic bricks. The bodies and loads are those of tests/reference/elasticity.cpp.
#include "io/case/case_reader.h"
#include "solver/analysis.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <map>
#include <string>

namespace bedbow {
namespace {

using verification::record;

constexpr double beams = 0.03, plates = 0.02;

double tolerance(const std::string& model) {
  return model == "beam" ? beams : plates;
}

/// Figure of a configuration on the finest mesh.
double reference(const std::string& configuration, const std::string& figure) {
  std::ifstream in(BEDBOW_SOURCE_DIR "/tests/reference/elasticity.json");
  const auto all = nlohmann::json::parse(in);
  return all.at("configurations").at(configuration).at("meshes").back().at(figure);
}

void compare(const std::string& configuration, const std::string& figure, const std::string& model, double computed) {
  record("", "3D elasticity, GetFEM 5.4.2, tests/reference/elasticity.json",
         configuration + ", " + figure + ", " + model, computed, reference(configuration, figure), tolerance(model));
}

std::string mm(double v) {
  return "\"" + std::to_string(v) + " mm\"";
}

std::string point(double x, double y, double z) {
  return "[" + mm(x) + ", " + mm(y) + ", " + mm(z) + "]";
}

/// A bed of steel with E = 210 GPa, nu = 0.3, in pieces of 5 mm.
struct Text {
  std::string text =
      R"(title = "referee"
[material.steel]
E = "210 GPa"
nu = 0.3
[solve]
element_size = "5 mm"
)";

  void bed(double length, const std::string& bars) {
    text +=
        "[bed]\nlength = " + mm(length) + "\nmaterial = \"steel\"\nbar = [" + bars + "]\nedge = { bar = \"web\" }\n";
  }
  void line(const std::string& bar, std::array<double, 3> from, std::array<double, 3> to, double fz) {
    const double run = std::hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
    text += "[[load]]\non = \"bed." + bar + "\"\nfrom = " + point(from[0], from[1], from[2]) +
            "\nto = " + point(to[0], to[1], to[2]) + "\nper_length = [\"0 N/mm\", \"0 N/mm\", \"" +
            std::to_string(fz / run) + " N/mm\"]\n";
  }
  void hold(const std::string& bar, double x, double y, double z, const std::string& holds) {
    text += "[[support]]\nbar = \"bed." + bar + "\"\nat = " + point(x, y, z) + "\nholds = [" + holds + "]\n";
  }
  void dial(const std::string& name, const std::string& bar, double x, double y, double z) {
    text += "[[dial]]\nname = \"" + name + "\"\non = \"bed." + bar + "\"\nat = " + point(x, y, z) + "\n";
  }
  /// Movements of the dials [mm].
  [[nodiscard]] std::map<std::string, Eigen::Vector3d> solved() const {
    const Registries registries = builtin_registries();
    const Findings f = analyse(read_case_text(text, registries).machine, registries);
    EXPECT_EQ(f.status, Status::ok) << f.trouble;
    std::map<std::string, Eigen::Vector3d> out;
    if (f.steps.empty()) return out;
    for (const DialResult& d : f.steps[0].dials) out[d.name] = d.movement * 1e3;
    return out;
  }
};

std::string bar(const std::string& name, double width, double height, double y, double z, const std::string& model) {
  return "{ name = \"" + name + "\", shape = \"rectangle\", width = " + mm(width) + ", height = " + mm(height) +
         ", at = [" + mm(y) + ", " + mm(z) + "], model = \"" + model + "\" },";
}

class ElasticityReferee : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Models, ElasticityReferee, testing::Values("beam", "plate"),
                         [](const auto& info) { return info.param; });

TEST_P(ElasticityReferee, StubbyCantilever) {
  Text t;
  t.bed(240, bar("web", 20, 60, 0, 0, GetParam()));
  const std::string all = R"("x", "y", "z", "rx", "ry", "rz")";
  if (GetParam() == "beam")
    t.hold("web", 0, 0, 0, all);
  else // the plate's root edge, node by node
    for (int z = -30; z <= 30; z += 5) t.hold("web", 0, 0, z, all);
  t.line("web", {240, 0, -30}, {240, 0, 30}, -10000);
  t.dial("tip", "web", 240, 0, 0);
  compare("cantilever", "tip_z_mm", GetParam(), t.solved()["tip"].z());
}

TEST_P(ElasticityReferee, BarOnTwoPatches) {
  Text t;
  t.bed(600, bar("web", 20, 60, 0, 0, GetParam()));
  t.line("web", {280, 0, 30}, {320, 0, 30}, -20000);
  t.line("web", {50, 0, -30}, {70, 0, -30}, 10000);
  t.line("web", {530, 0, -30}, {550, 0, -30}, 10000);
  // The forces balance: these only stop the bar as a whole.
  t.hold("web", 60, 0, 0, R"("x", "y", "z", "rx")");
  t.hold("web", 540, 0, 0, R"("y", "z")");
  for (const double x : {0., 60., 300., 540.}) t.dial(std::to_string(static_cast<int>(x)), "web", x, 0, 0);
  auto d = t.solved();
  compare("bar on two patches", "middle_z_mm", GetParam(), d["300"].z() - (d["60"].z() + d["540"].z()) / 2);
  compare("bar on two patches", "end_z_mm", GetParam(), d["0"].z() - d["60"].z() - (d["60"].z() - d["540"].z()) / 8);
}

// Skew bending of two flats welded to an L.
TEST_P(ElasticityReferee, WeldedL) {
  Text t;
  t.bed(600, bar("flat", 60, 10, 30, -5, GetParam()) + bar("web", 10, 60, 5, -40, GetParam()));
  t.text += "[[weld]]\njoins = [\"bed.flat\", \"bed.web\"]\n";
  t.line("web", {0, 5, -40}, {20, 5, -40}, 1000);
  t.line("web", {290, 5, -40}, {310, 5, -40}, -2000);
  t.line("web", {580, 5, -40}, {600, 5, -40}, 1000);
  t.hold("web", 10, 5, -40, R"("x", "y", "z", "rx")");
  t.hold("web", 590, 5, -40, R"("y", "z")");
  for (const int x : {10, 300, 590}) {
    t.dial("corner " + std::to_string(x), "flat", x, 5, -5);
    t.dial("web " + std::to_string(x), "web", x, 5, -40);
  }
  auto d = t.solved();
  const auto off = [&d](const std::string& at, int k) {
    return d[at + " 300"][k] - (d[at + " 10"][k] + d[at + " 590"][k]) / 2;
  };
  compare("welded L", "corner_y_mm", GetParam(), off("corner", 1));
  compare("welded L", "corner_z_mm", GetParam(), off("corner", 2));
  compare("welded L", "web_z_mm", GetParam(), off("web", 2));
}

// Twisted by couples at its ends, an open section of narrow strips turns as if each strip turned by itself: J is their
// sum. The seam must let it warp; were its cross-section held plane, it would hardly turn at all.
TEST(TimoshenkoGoodier, WeldedStripsTwistAsTheirSum) {
  Text t;
  t.bed(600, bar("flat", 60, 10, 30, -5, "beam") + bar("web", 10, 60, 5, -40, "beam"));
  t.text += R"([[weld]]
joins = ["bed.flat", "bed.web"]
[[load]]
on = "bed.web"
at = ["600 mm", "5 mm", "-40 mm"]
force = ["0 N", "0 N", "0 N"]
moment = ["10 N*m", "0 N*m", "0 N*m"]
)";
  t.hold("web", 0, 5, -10, R"("x", "y", "z", "rx", "ry", "rz")");
  t.dial("up", "web", 600, 5, -10);
  t.dial("down", "web", 600, 5, -70);
  auto d = t.solved();
  const double J = 2 * 60 * 1000 * (1 / 3. - 0.21 / 6 * (1 - 1 / (12 * std::pow(6., 4)))); // Roark
  record("", "J of narrow rectangles adds up, eurocode.us/structural-materials/sections.html",
         "twist of two welded flats", -(d["up"].y() - d["down"].y()) / 60, 10000 * 600 / (210e3 / 2.6 * J), 5e-3,
         "rad");
}

// A beam knows no bending across its width: this one is for plates.
TEST(ElasticityRefereePlates, StripUnderPost) {
  Text t;
  t.bed(300, bar("web", 120, 10, 0, 0, "plate"));
  for (const double y : {-7.5, -2.5, 2.5, 7.5}) t.line("web", {90, y, 5}, {110, y, 5}, -500);
  t.line("web", {0, -60, 0}, {0, 60, 0}, 2000 * 2. / 3);
  t.line("web", {300, -60, 0}, {300, 60, 0}, 2000 / 3.);
  t.hold("web", 0, 0, 0, R"("x", "y", "z", "rx", "rz")");
  t.hold("web", 300, 0, 0, R"("z")");
  t.dial("post", "web", 100, 0, 0);
  t.dial("beside", "web", 100, 60, 0);
  t.dial("corner", "web", 0, 60, 0);
  auto d = t.solved();
  compare("strip under a post", "under_post_z_mm", "plate", d["post"].z());
  compare("strip under a post", "beside_post_z_mm", "plate", d["beside"].z());
}

} // namespace
} // namespace bedbow
