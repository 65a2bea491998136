#include "io/case/case_reader.h"
#include "mesh/build/mesher.h"
#include "mesh/build/seats.h"
#include "solver/registry/registries.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

/// A flat of 600 x 100 x 10 mm as plates; its centroid lies at y = 50, z = 0 mm. \param joints further TOML.
Machine flat_with(const std::string& joints) {
  const std::string text = R"(title = "flat"
[material.steel]
E = "210 GPa"
nu = 0.3
[bed]
length = "600 mm"
material = "steel"
bar = [{ name = "flat", shape = "rectangle", width = "100 mm", height = "10 mm", at = ["50 mm", "0 mm"], model = "plate" }]
edge = { bar = "flat" }
[[support]]
bar = "bed.flat"
x = "0 mm"
holds = ["x", "y", "z", "rx", "ry", "rz"]
)" + joints;
  return read_case_text(text, builtin_registries()).machine;
}

const Ref flat{Ref::Kind::bar, BodyKind::bed, 0};

/// Displacement of a place where every node follows a field.
template <class Field> Eigen::Vector3d moved(const Mesh& mesh, const Place& place, Field field) {
  Eigen::Vector3d out = Eigen::Vector3d::Zero();
  for (const PlaceTerm& t : place.terms) {
    const auto [u, theta] = field(mesh.nodes[static_cast<std::size_t>(t.node)].x);
    Eigen::Matrix<double, 6, 1> node;
    node << u, theta;
    out += t.movement.topRows<3>() * node;
  }
  return out;
}

double sum_of_weights(const Place& place) {
  double sum = 0;
  for (const PlaceTerm& t : place.terms) sum += t.weight;
  return sum;
}

const Registry<ShapeEntry>& shapes() {
  static const Registries all = builtin_registries();
  return all.shapes;
}

} // namespace

// Whatever the size of its seat, a joint follows a rigid movement exactly.
TEST(Seats, FollowRigidMovements) {
  const Machine m = flat_with("");
  const Mesh mesh = make_mesh(m, shapes());
  const Eigen::Vector3d turn(1e-3, -2e-3, 3e-3), shift(1e-3, 2e-3, -1e-3);
  for (const Eigen::Vector2d& size : {Eigen::Vector2d(0, 0), Eigen::Vector2d(0.04, 0.03), Eigen::Vector2d(0.5, 0.1)})
    for (const Eigen::Vector3d& at : {Eigen::Vector3d(0.3, 0.05, 0), Eigen::Vector3d(0.597, 0.13, 0.08)}) {
      const Place place = place_on_bar(m, mesh, flat, at, size);
      EXPECT_NEAR(sum_of_weights(place), 1, 1e-14);
      const Eigen::Vector3d u = moved(mesh, place, [&](const Eigen::Vector3d& x) {
        return std::pair(Eigen::Vector3d(shift + turn.cross(x)), turn);
      });
      EXPECT_LT((u - shift - turn.cross(at)).norm(), 1e-15) << size.transpose() << " at " << at.transpose();
    }
}

// The mean of w = k x^2 / 2 over a patch of length a is that in its middle and k a^2 / 24 more; Gauss's points give it
// but for what bilinear interpolation with rotations adds, k h^2 / 8 at most.
TEST(Seats, ReadTheMeanOverTheirPatch) {
  const Machine m = flat_with("[solve]\nelement_size = \"5 mm\"\n");
  const Mesh mesh = make_mesh(m, shapes());
  const double k = 1, a = 0.08, h = 0.005, x0 = 0.3;
  const Place place = place_on_bar(m, mesh, flat, {x0, 0.05, 0}, {a, 0.06});
  const Eigen::Vector3d u = moved(mesh, place, [&](const Eigen::Vector3d& x) {
    const double s = x.x() - x0;
    return std::pair(Eigen::Vector3d(0, 0, k * s * s / 2), Eigen::Vector3d(0, -k * s, 0));
  });
  EXPECT_NEAR(u.z(), k * a * a / 24, k * h * h / 8);
}

// What a joint touches spreads by the plate's thickness; a support holds the whole width.
TEST(Seats, SizesByContact) {
  const Machine m = flat_with(R"([[tie]]
joins = ["bed.flat", "ground"]
at = ["300 mm", "50 mm", "0 mm"]
holds = ["z"]
[[post]]
joins = ["bed.flat", "ground"]
at = ["200 mm", "50 mm", "5 mm"]
diameter = "M20"
free_length = "100 mm"
washer_diameter = "36 mm"
[[post]]
joins = ["bed.flat", "ground"]
at = ["400 mm", "50 mm", "5 mm"]
diameter = "M20"
free_length = "100 mm"
seat = ["30 mm", "25 mm"]
)");
  const Mesh mesh = make_mesh(m, shapes());
  const auto size = [&](const auto& j, JointKind kind) -> Eigen::Vector2d {
    const BarSeat s = mesher::seats_of(m, mesh, j, kind, mesher::place_of(m, mesh, j, kind))[0];
    EXPECT_EQ(s.arm, 0);
    return Eigen::Vector2d(s.along, s.across) * 1e3;
  };
  EXPECT_LT((size(m.ties[0], JointKind::tie) - Eigen::Vector2d(10, 10)).norm(), 1e-9);
  EXPECT_LT((size(m.posts[0], JointKind::post) - Eigen::Vector2d(46, 46)).norm(), 1e-9);
  EXPECT_LT((size(m.posts[1], JointKind::post) - Eigen::Vector2d(30, 25)).norm(), 1e-9);
  EXPECT_LT((size(m.supports[0], JointKind::support) - Eigen::Vector2d(0, 100)).norm(), 1e-9);
}

// A post beside its bar reaches it by an arm: its seat is the bar's full height unless the case gives one.
TEST(Seats, ArmsReachTheWholeHeight) {
  const std::string post = R"([[post]]
joins = ["bed.flat", "ground"]
at = ["300 mm", "140 mm", "5 mm"]
diameter = "M20"
free_length = "100 mm"
)";
  const Machine m = flat_with(post);
  const Mesh mesh = make_mesh(m, shapes());
  const auto arms = mesher::joints_on_arms(m, mesh);
  ASSERT_EQ(arms.size(), 1U);
  EXPECT_NEAR(arms[0].seat.arm, 0.04, 1e-12);
  EXPECT_NEAR(arms[0].seat.along, 0.1, 1e-12);
  EXPECT_NEAR(arms[0].seat.across, 0.1, 1e-12);
  const Machine given = flat_with(post + "seat = [\"30 mm\", \"40 mm\"]\n");
  EXPECT_TRUE(mesher::joints_on_arms(given, make_mesh(given, shapes())).empty());
}

// A seat smaller than two elements gets nodes at its edges.
TEST(Seats, SmallOnesGetNodes) {
  const Machine m = flat_with(R"([[tie]]
joins = ["bed.flat", "ground"]
at = ["304 mm", "53 mm", "0 mm"]
holds = ["z"]
)");
  const Mesh mesh = make_mesh(m, shapes());
  const auto has = [](const std::vector<double>& all, double v) {
    return std::ranges::any_of(all, [&](double x) { return std::abs(x - v) < 1e-9; });
  };
  for (double x : {0.299, 0.304, 0.309}) EXPECT_TRUE(has(mesh.stations, x)) << x;
  for (double y : {-0.002, 0.003, 0.008}) EXPECT_TRUE(has(layout_of(mesh, flat).across, y)) << y;
}

} // namespace bedbow
