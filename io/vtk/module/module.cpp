// Function table of the module, and the writer. See io/vtk/vtk_module.h.
#include "io/vtk/module/reader.h"
#include "io/vtk/vtk_module.h"

#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkFieldData.h>
#include <vtkFloatArray.h>
#include <vtkInformation.h>
#include <vtkIntArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>
#include <vtkStringArray.h>
#include <vtkTypeInt64Array.h>
#include <vtkUnsignedCharArray.h>
#include <vtkUnstructuredGrid.h>
#include <vtkXMLUnstructuredGridWriter.h>

#include <algorithm>
#include <stdexcept>

namespace bedbow {

namespace {

template <class Array, class Value> vtkNew<Array> array_of(const std::vector<Value>& values, int components) {
  vtkNew<Array> out;
  out->SetNumberOfComponents(components);
  out->SetNumberOfTuples(static_cast<vtkIdType>(values.size()) / components);
  std::copy(values.begin(), values.end(), out->GetPointer(0));
  return out;
}

void add_points(vtkUnstructuredGrid* to, const VtkGrid& grid) {
  vtkNew<vtkPoints> points;
  points->SetData(array_of<vtkFloatArray>(grid.points, 3));
  to->SetPoints(points);
}

void add_cells(vtkUnstructuredGrid* to, const VtkGrid& grid) {
  std::vector<std::int64_t> offsets{0}; // VTK needs the start of each cell, and the end of the last
  offsets.insert(offsets.end(), grid.offsets.begin(), grid.offsets.end());
  vtkNew<vtkCellArray> cells;
  cells->SetData(array_of<vtkTypeInt64Array>(offsets, 1), array_of<vtkTypeInt64Array>(grid.connectivity, 1));
  std::vector<unsigned char> types;
  for (const VtkCell t : grid.types) types.push_back(static_cast<unsigned char>(t));
  to->SetCells(array_of<vtkUnsignedCharArray>(types, 1), cells);
}

void add_data(vtkUnstructuredGrid* to, const VtkGrid& grid) {
  for (const VtkArray& a : grid.point_arrays) {
    const auto data = array_of<vtkFloatArray>(a.values, a.components);
    data->SetName(a.name.c_str());
    data->GetInformation()->Set(vtkDataArray::UNITS_LABEL(), a.unit.c_str());
    to->GetPointData()->AddArray(data);
  }
  for (const VtkIndex& a : grid.cell_indices) {
    const auto data = array_of<vtkIntArray>(a.values, 1);
    data->SetName(a.name.c_str());
    to->GetCellData()->AddArray(data);
  }
  for (const VtkNames& names : grid.fields) {
    vtkNew<vtkStringArray> data;
    data->SetName(names.name.c_str());
    for (const std::string& value : names.values) data->InsertNextValue(value);
    to->GetFieldData()->AddArray(data);
  }
}

std::string vtu(const VtkGrid& grid) {
  vtkNew<vtkUnstructuredGrid> out;
  add_points(out, grid);
  add_cells(out, grid);
  add_data(out, grid);
  vtkNew<vtkXMLUnstructuredGridWriter> writer;
  writer->SetInputData(out);
  writer->WriteToOutputStringOn();
  writer->SetDataModeToAppended();
  writer->EncodeAppendedDataOff();
  writer->SetCompressorTypeToNone();
  if (writer->Write() == 0) throw std::runtime_error("VTK could not make a .vtu file of the grid");
  return writer->GetOutputString();
}

const VtkModule module{BEDBOW_VERSION, vtu, read_grid};

} // namespace

} // namespace bedbow

extern "C" __attribute__((visibility("default"))) const void* bedbow_vtk_module() {
  return &bedbow::module;
}
