#include "io/case/case_reader.h"
#include "mesh/build/mesher.h"
#include "mesh/machine/stud_spring.h"
#include "solver/analysis.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

const Case& hive() {
  static const Case c = read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries());
  return c;
}

Joint first_post(const Machine& m) {
  const Mesh mesh = make_mesh(m, builtin_registries().shapes);
  return *std::ranges::find(mesh.joints, JointKind::post, &Joint::kind);
}

// Two studs of M20, free over 120 mm, from ground to a bar of 60 x 80 mm whose top is at z = 20 mm and which they alone
// keep from going sideways. A force of 300 N at each, as high as the stud passes it without moment, so that nothing
// tilts.
Findings pushed_bar(const char* seat, double height) {
  std::string text = R"(
title = "pushed"
[material.m]
E = "205 GPa"
nu = 0.3
yield = "300 MPa"
[bed]
length = "1000 mm"
material = "m"
[[bed.bar]]
name = "bar"
shape = "rectangle"
width = "60 mm"
height = "80 mm"
at = ["0 mm", "-20 mm"]
[[support]]
bar = "bed.bar"
x = "0 mm"
holds = ["x", "z", "rx"]
[[support]]
bar = "bed.bar"
x = "1000 mm"
holds = ["z", "rx"]
)";
  for (const char* x : {"200 mm", "800 mm"})
    text += std::string("[[post]]\njoins = [\"ground\", \"bed.bar\"]\nx = \"") + x +
            "\"\ny = \"0 mm\"\ndiameter = \"M20\"\nclass = \"8.8\"\nfree_length = \"120 mm\"\nseat = \"" + seat +
            "\"\n[[load]]\non = \"bed.bar\"\nat = [\"" + x + "\", \"0 mm\", \"" + std::to_string(height * 1e3) +
            " mm\"]\nforce = [\"0 N\", \"300 N\", \"0 N\"]\n";
  return analyse(read_case_text(text, builtin_registries()).machine, builtin_registries());
}

} // namespace

// The sideways force used to act midway between the centroids of the bars, wherever the nut was.
TEST(Posts, PassShearInTheMiddleOfTheirFreeLength) {
  Machine m = hive().machine;
  EXPECT_NEAR(first_post(m).b.at.z(), 0.0215 - 0.060, 1e-12) << "below the top of the clamp's plate";
  m.posts.front().joins[1].index = 1; // with the nut on the rib, 100 mm higher
  EXPECT_NEAR(first_post(m).b.at.z(), 0.1215 - 0.060, 1e-12);
  m.posts.front().nut = NutSeat::spherical;
  EXPECT_NEAR(first_post(m).b.at.z(), 0.1215, 1e-12) << "where the seat lets it turn";
  m.posts.front().at.z() = -0.03;
  EXPECT_NEAR(first_post(m).b.at.z(), -0.03, 1e-12) << "where the case says";
  std::swap(m.posts.front().joins[0], m.posts.front().joins[1]);
  m.posts.front().at.z() = left_out;
  EXPECT_NEAR(first_post(m).b.at.z(), 0.1215, 1e-12) << "whichever is named first";
}

// A plate on edge is held where the nut bears and where the stud ends, not where the spring stands.
TEST(Posts, HoldAPlateOnEdgeAtTheNut) {
  Machine m = hive().machine;
  for (Body& body : m.bodies)
    for (Bar& bar : body.bars) bar.model = BarModel::plate;
  m.posts.front().joins[1].index = 1;
  const Mesh mesh = make_mesh(m, builtin_registries().shapes);
  const Joint post = *std::ranges::find(mesh.joints, JointKind::post, &Joint::kind);
  constexpr double seat = 0.100; // it stands beside the plate, on an arm: the plate's full height
  Eigen::Vector3d middle = Eigen::Vector3d::Zero(), carried = Eigen::Vector3d::Zero();
  for (const PlaceTerm& t : post.b.terms) {
    const Eigen::Vector3d node = mesh.nodes[t.node].x;
    middle += t.weight * node;
    carried += t.weight * node + t.lever();
  }
  EXPECT_NEAR(middle.z(), 0.1215 - seat / 4, 1e-9) << "half the seat lies on the plate, below its edge";
  EXPECT_NEAR((carried - post.b.at).norm(), 0, 1e-12) << "carried to the spring by a rigid arm";
}

// The moment of the check is V L/2 of the model's own force across the stud, V L with a spherical seat; W of M20's
// stressed circle is pi/32 17.6545^3 = 540.2 mm^3. With the nut on a spherical seat the two once disagreed: the spring
// was that of a stud fixed at both ends.
TEST(Posts, AreCheckedWithTheMomentOfTheModelsForce) {
  const double W = std::numbers::pi / 32 * std::pow(17.6545e-3, 3);
  for (const auto& [seat, height, arm] : {std::tuple{"washer", -0.040, 0.060}, std::tuple{"spherical", 0.020, 0.120}}) {
    const Findings f = pushed_bar(seat, height);
    ASSERT_EQ(f.status, Status::ok) << f.trouble;
    const auto posts = joints_of(f.steps.front(), JointKind::post);
    ASSERT_EQ(posts.size(), 2U);
    for (const JointResult& p : posts) {
      EXPECT_NEAR(p.figure("shear"), 300, 0.01);
      const auto stud = std::ranges::find(p.checks, "stud", &Check::what);
      ASSERT_NE(stud, p.checks.end());
      EXPECT_NEAR(stud->actual, 300 * arm / W, 5e-4 * stud->actual) << seat;
    }
  }
}

} // namespace bedbow
