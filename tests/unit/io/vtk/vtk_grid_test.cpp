#include "io/draw/surface.h"
#include "io/vtk/vtk_grid.h"

#include "tests/unit/support/findings_fixture.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

namespace {

const VtkArray& array(const VtkGrid& g, const std::string& name) {
  for (const VtkArray& a : g.point_arrays)
    if (a.name == name) return a;
  throw std::out_of_range(name);
}

TEST(VtkGrid, SurfaceInMillimetres) {
  const Fields fields = test::findings().steps[1].fields;
  const VtkGrid g = surface_grid(fields, "bend 90 deg");
  const Surface s = surface_of(fields);
  ASSERT_EQ(g.points.size(), 3 * s.points.size());
  ASSERT_EQ(g.types.size(), s.cells.size());
  EXPECT_EQ(g.offsets.back(), static_cast<std::int64_t>(g.connectivity.size()));
  for (const VtkArray& a : g.point_arrays) EXPECT_EQ(a.values.size(), s.points.size() * a.components) << a.name;
  EXPECT_FLOAT_EQ(g.points[1], static_cast<float>(s.points[0].at.y() * 1000));
  EXPECT_FLOAT_EQ(array(g, "displacement").values[2], static_cast<float>(s.points[0].displacement.z() * 1000));
  EXPECT_FLOAT_EQ(array(g, "rotation").values[0], static_cast<float>(0.01 * 180 / std::acos(-1.0)));
  EXPECT_FLOAT_EQ(array(g, "von_mises").values[0], static_cast<float>(s.points[0].von_mises / 1e6));
  EXPECT_EQ(array(g, "von_mises").unit, "MPa");
}

TEST(VtkGrid, CellsNameTheirBarAndBody) {
  const VtkGrid g = surface_grid(test::findings().steps[0].fields, "clamp");
  ASSERT_EQ(g.cell_indices[0].name, "bar");
  ASSERT_EQ(g.fields[0].name, "bar_names");
  EXPECT_EQ(g.fields[0].values, (std::vector<std::string>{"clamp.spine", "bed.web", "apron.face", "cheek"}));
  EXPECT_EQ(g.fields[1].values, (std::vector<std::string>{"clamp", "bed", "apron", "panel"}));
  EXPECT_EQ(g.cell_indices[0].values.size(), g.types.size());
  EXPECT_EQ(g.cell_indices[0].values.front(), 0);
  EXPECT_EQ(g.cell_indices[0].values.back(), 3);
  EXPECT_EQ(g.fields[2].values, std::vector<std::string>{"clamp"});
}

TEST(VtkGrid, MidPlaneStressOnlyWithPlates) {
  Fields fields = test::findings().steps[0].fields;
  EXPECT_TRUE(std::isnan(array(surface_grid(fields, ""), "von_mises_middle").values[0])) << "a bar has no mid-plane";
  EXPECT_EQ(array(surface_grid(fields, ""), "von_mises_middle").values.back(), 10);
  fields.shells.clear();
  EXPECT_THROW((void)array(surface_grid(fields, ""), "von_mises_middle"), std::out_of_range);
}

TEST(VtkGrid, ForcesAreNamedPoints) {
  const VtkGrid g = force_grid(test::findings().steps[0].fields.forces, "clamp");
  EXPECT_EQ(g.points[0], 40);
  EXPECT_EQ(array(g, "force").values[2], 5000);
  EXPECT_FLOAT_EQ(array(g, "pressure").values[1], 0.4F);
  EXPECT_EQ(g.fields[1].values, (std::vector<std::string>{"post", "pad"}));
  EXPECT_EQ(g.types.size(), 2U);
}

} // namespace

} // namespace bedbow
