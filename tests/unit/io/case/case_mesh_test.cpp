#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

namespace bedbow {
namespace {

namespace fs = std::filesystem;

/// A quad of 1 x 2 and a line attached to its corner, in a file that is deleted after the test.
class CaseMesh : public testing::Test {
protected:
  CaseMesh()
      : file_(fs::temp_directory_path() / ("bedbow-case-mesh-" + std::to_string(::getpid()) + ".vtk")) {
    std::ofstream(file_) << R"(# vtk DataFile Version 3.0
a quad and a line
ASCII
DATASET UNSTRUCTURED_GRID
POINTS 5 double
0 0 0  1 0 0  1 2 0  0 2 0  1 2 5
CELLS 2 8
4 0 1 2 3
2 2 4
CELL_TYPES 2
9
3
CELL_DATA 2
SCALARS thickness double 1
LOOKUP_TABLE default
0.25 0
POINT_DATA 5
SCALARS foot double 1
LOOKUP_TABLE default
1 3 0 0 0
)";
  }
  ~CaseMesh() override { fs::remove(file_); }

  [[nodiscard]] std::string table(const std::string& keys) const {
    return "[mesh]\nfile = \"" + file_.string() + "\"\n" + keys;
  }

private:
  fs::path file_;
};

const std::string leg = R"([[mesh.section]]
name = "leg"
shape = "round"
diameter = "1/4 in"
up = [1, 0, 0]
[[hold]]
points = "foot"
holds = ["x", "y", "z", "rx", "ry", "rz"]
)";

TEST_F(CaseMesh, EveryKey) {
  const Machine m = test::machine(table("unit = \"in\"\nmaterial = \"S275JR\"\njoined = false\n" + leg));
  const UserMesh& own = m.own;
  ASSERT_EQ(own.points.size(), 5U);
  EXPECT_NEAR((own.points[4] - 0.0254 * Eigen::Vector3d(1, 2, 5)).norm(), 0, 1e-15);
  ASSERT_EQ(own.quads.size(), 1U);
  EXPECT_EQ(own.quads[0].points, (std::array<int, 4>{0, 1, 2, 3}));
  EXPECT_NEAR(own.quads[0].thickness, 0.25 * 0.0254, 1e-15) << "in the file's unit";
  ASSERT_EQ(own.lines.size(), 1U);
  EXPECT_EQ(own.lines[0].points, (std::array<int, 2>{2, 4}));
  EXPECT_EQ(own.lines[0].cell, 1);
  EXPECT_EQ(m.materials.at(own.lines[0].material).name, "S275JR");
  EXPECT_FALSE(own.joined);
  ASSERT_EQ(own.sections.size(), 1U);
  EXPECT_EQ(own.sections[0].name, "leg");
  EXPECT_DOUBLE_EQ(own.sections[0].shape.diameter, 0.00635);
  EXPECT_EQ(own.sections[0].up, Eigen::Vector3d::UnitX());
  const auto foot = std::ranges::find(own.sets, "foot", &PointSet::name);
  ASSERT_NE(foot, own.sets.end());
  EXPECT_EQ(foot->points, (std::vector<int>{0, 1}));
  EXPECT_EQ(foot->shares, (std::vector<double>{0.25, 0.75}));
  EXPECT_EQ(m.holds.at(0).set, static_cast<int>(foot - own.sets.begin()));
}

TEST_F(CaseMesh, Defaults) {
  const Machine m = test::machine(table("material = \"S275JR\"\n" + leg));
  EXPECT_NEAR(m.own.points[4].z(), 0.005, 1e-15) << "millimetres";
  EXPECT_TRUE(m.own.joined);
  EXPECT_EQ(m.own.parts.size(), 1U);
}

TEST_F(CaseMesh, WrongValues) {
  test::expect_error("", table("unit = \"N\"\n"), 3, "mesh.unit", {"\"N\" is not a unit of length"});
  test::expect_error("", table(leg), 2, "mesh.file", {"no cell array \"material\"", "give `material` for all cells"});
  test::expect_error("", table("material = \"S275JR\"\n"), 2, "mesh.file", {"no [[mesh.section]]"});
  test::expect_error("", table("material = \"S275JQ\"\n" + leg), 3, "mesh.material", {"nearest is \"S275JR\""});
}

} // namespace
} // namespace bedbow
