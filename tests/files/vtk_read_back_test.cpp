// Files are read back by VTK's own readers, as a viewer would.
#include "io/results/result_files.h"
#include "io/results/result_json.h"
#include "io/vtk/vtk_grid.h"
#include "io/vtk/vtk_module.h"

#include "tests/unit/support/findings_fixture.h"
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <unistd.h>
#include <vtkCellData.h>
#include <vtkDataArray.h>
#include <vtkFieldData.h>
#include <vtkInformation.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkStringArray.h>
#include <vtkUnstructuredGrid.h>
#include <vtkXMLDataElement.h>
#include <vtkXMLDataParser.h>
#include <vtkXMLUnstructuredGridReader.h>

#include <cmath>
#include <fstream>

namespace fs = std::filesystem;
using namespace bedbow;

namespace {

class VtkReadBack : public ::testing::Test {
protected:
  VtkReadBack() {
    dir = fs::temp_directory_path() / ("bedbow-vtk-" + std::to_string(::getpid()));
    fs::remove_all(dir);
    findings = test::findings();
    write_results(dir, findings, result_json(findings, {}));
  }
  ~VtkReadBack() override { fs::remove_all(dir); }
  vtkUnstructuredGrid* read(const std::string& name) {
    reader->SetFileName((dir / name).c_str());
    reader->Update();
    EXPECT_EQ(reader->GetErrorCode(), 0UL);
    return reader->GetOutput();
  }
  fs::path dir;
  Findings findings;
  vtkNew<vtkXMLUnstructuredGridReader> reader;
};

std::string text(vtkUnstructuredGrid* grid, const char* field, int i) {
  auto* names = vtkStringArray::SafeDownCast(grid->GetFieldData()->GetAbstractArray(field));
  return names == nullptr ? "missing" : std::string(names->GetValue(i));
}

TEST_F(VtkReadBack, SurfaceIsWhatWasWritten) {
  vtkUnstructuredGrid* grid = read("machine_1.vtu");
  const VtkGrid wanted = surface_grid(findings.steps[1].fields, findings.steps[1].name);
  ASSERT_EQ(grid->GetNumberOfPoints(), static_cast<vtkIdType>(wanted.points.size() / 3));
  ASSERT_EQ(grid->GetNumberOfCells(), static_cast<vtkIdType>(wanted.types.size()));
  for (vtkIdType i = 0; i < grid->GetNumberOfPoints(); ++i)
    for (int c = 0; c < 3; ++c) ASSERT_EQ(static_cast<float>(grid->GetPoint(i)[c]), wanted.points[3 * i + c]);
  for (const VtkArray& a : wanted.point_arrays) {
    vtkDataArray* data = grid->GetPointData()->GetArray(a.name.c_str());
    ASSERT_NE(data, nullptr) << a.name;
    ASSERT_EQ(data->GetNumberOfComponents(), a.components);
    for (vtkIdType i = 0; i < data->GetNumberOfTuples(); ++i)
      for (int c = 0; c < a.components; ++c) {
        const float value = a.values[static_cast<std::size_t>(i * a.components + c)];
        const double got = data->GetComponent(i, c);
        ASSERT_TRUE(got == value || (std::isnan(got) && std::isnan(value))) << a.name << " " << i;
      }
  }
}

TEST_F(VtkReadBack, CellsAreFacesWithBodyAndBar) {
  vtkUnstructuredGrid* grid = read("machine_0.vtu");
  vtkIdType corner = 0;
  const VtkGrid wanted = surface_grid(findings.steps[0].fields, "clamp");
  for (vtkIdType i = 0; i < grid->GetNumberOfCells(); ++i) {
    vtkCell* cell = grid->GetCell(i);
    ASSERT_EQ(cell->GetCellDimension(), 2);
    for (int k = 0; k < cell->GetNumberOfPoints(); ++k) ASSERT_EQ(cell->GetPointId(k), wanted.connectivity[corner++]);
  }
  EXPECT_EQ(text(grid, "bar_names", 1), "bed.web");
  EXPECT_EQ(text(grid, "body_names", 2), "apron");
  EXPECT_EQ(text(grid, "step", 0), "clamp");
  EXPECT_EQ(grid->GetCellData()->GetArray("bar")->GetRange()[1], 3);
}

TEST_F(VtkReadBack, UnitsGoAlong) {
  vtkDataArray* stress = read("machine_0.vtu")->GetPointData()->GetArray("von_mises");
  ASSERT_TRUE(stress->HasInformation());
  EXPECT_STREQ(stress->GetInformation()->Get(vtkDataArray::UNITS_LABEL()), "MPa");
}

TEST_F(VtkReadBack, ForcesArePointsWithVectors) {
  vtkUnstructuredGrid* grid = read("forces_0.vtu");
  ASSERT_EQ(grid->GetNumberOfPoints(), 2);
  EXPECT_EQ(grid->GetPointData()->GetArray("force")->GetComponent(0, 2), 5000);
  EXPECT_FLOAT_EQ(static_cast<float>(grid->GetPointData()->GetArray("pressure")->GetComponent(1, 0)), 0.4F);
  EXPECT_EQ(text(grid, "joint_names", 1), "pad");
}

TEST_F(VtkReadBack, CollectionNamesEveryStep) {
  vtkNew<vtkXMLDataParser> parser;
  parser->SetFileName((dir / "machine.pvd").c_str());
  ASSERT_EQ(parser->Parse(), 1);
  vtkXMLDataElement* collection = parser->GetRootElement()->FindNestedElementWithName("Collection");
  ASSERT_NE(collection, nullptr);
  ASSERT_EQ(collection->GetNumberOfNestedElements(), static_cast<int>(findings.steps.size()));
  for (int i = 0; i < collection->GetNumberOfNestedElements(); ++i) {
    vtkXMLDataElement* entry = collection->GetNestedElement(i);
    EXPECT_TRUE(fs::exists(dir / entry->GetAttribute("file")));
    EXPECT_STREQ(entry->GetAttribute("name"), findings.steps[static_cast<std::size_t>(i)].name.c_str());
  }
}

// Up to version 0.1 machine.pvd was called assembly.pvd: that name still opens the same steps.
TEST_F(VtkReadBack, FormerNameOpensTheSameSteps) {
  const auto files_in = [&](const char* name) {
    vtkNew<vtkXMLDataParser> parser;
    parser->SetFileName((dir / name).c_str());
    EXPECT_EQ(parser->Parse(), 1);
    std::vector<std::string> files;
    vtkXMLDataElement* collection = parser->GetRootElement()->FindNestedElementWithName("Collection");
    for (int i = 0; i < collection->GetNumberOfNestedElements(); ++i)
      files.emplace_back(collection->GetNestedElement(i)->GetAttribute("file"));
    return files;
  };
  EXPECT_EQ(files_in("assembly.pvd").size(), findings.steps.size());
  EXPECT_EQ(files_in("assembly.pvd"), files_in("machine.pvd"));
}

TEST_F(VtkReadBack, FilesOfTheFormerNameGo) {
  std::ofstream(dir / "assembly_0.vtu") << "of an earlier version";
  write_results(dir, findings, result_json(findings, {}));
  EXPECT_FALSE(fs::exists(dir / "assembly_0.vtu"));
}

TEST_F(VtkReadBack, FewerStepsLeaveNoOldOnes) {
  findings.steps.resize(1);
  findings.worst_step = 0;
  write_results(dir, findings, result_json(findings, {}));
  EXPECT_TRUE(fs::exists(dir / "machine_0.vtu"));
  EXPECT_FALSE(fs::exists(dir / "machine_1.vtu"));
  EXPECT_FALSE(fs::exists(dir / "forces_1.vtu"));
}

TEST_F(VtkReadBack, EmptyFieldsStillMakeAFile) {
  vtkNew<vtkXMLUnstructuredGridReader> from_text;
  from_text->ReadFromInputStringOn();
  from_text->SetInputString(vtk_module().vtu(force_grid({}, "load")));
  from_text->Update();
  EXPECT_EQ(from_text->GetErrorCode(), 0UL);
  EXPECT_EQ(from_text->GetOutput()->GetNumberOfPoints(), 0);
}

TEST_F(VtkReadBack, SameFindingsSameBytes) {
  const VtkGrid grid = surface_grid(findings.steps[0].fields, "clamp");
  EXPECT_EQ(vtk_module().vtu(grid), vtk_module().vtu(grid));
}

} // namespace
