#include "io/vtk/module/reader.h"

#include <vtkAbstractArray.h>
#include <vtkCellData.h>
#include <vtkDataArray.h>
#include <vtkFieldData.h>
#include <vtkIdList.h>
#include <vtkLogger.h>
#include <vtkNew.h>
#include <vtkObjectFactory.h>
#include <vtkOutputWindow.h>
#include <vtkPointData.h>
#include <vtkPoints.h>
#include <vtkStringArray.h>
#include <vtkUnstructuredGrid.h>
#include <vtkUnstructuredGridReader.h>
#include <vtkXMLUnstructuredGridReader.h>

#include <mutex>
#include <stdexcept>

namespace bedbow {

namespace {

/// Collects VTK's messages instead of printing them.
class Listener : public vtkOutputWindow {
public:
  vtkTypeMacro(Listener, vtkOutputWindow);
  static Listener* New(); // NOLINT(readability-identifier-naming): VTK's way of making objects
  void DisplayText(const char* text) override { said_ += text; }
  [[nodiscard]] const std::string& said() const { return said_; }

private:
  std::string said_;
};
vtkStandardNewMacro(Listener);

/// The last sentence of VTK's message, without its source file and address: "... (0x55d0): text".
std::string in_short(const std::string& said) {
  const std::size_t begin = said.find("): ");
  std::string out = begin == std::string::npos ? said : said.substr(begin + 3);
  out = out.substr(0, out.find('\n'));
  while (!out.empty() && (out.back() == '.' || out.back() == ' ')) out.pop_back();
  return out;
}

GridArray array_of(vtkAbstractArray* from) {
  GridArray out;
  out.name = from->GetName() == nullptr ? "" : from->GetName();
  out.components = from->GetNumberOfComponents();
  const vtkIdType values = from->GetNumberOfValues();
  if (auto* texts = vtkStringArray::SafeDownCast(from)) {
    out.is_text = true;
    for (vtkIdType i = 0; i < values; ++i) out.texts.emplace_back(texts->GetValue(i));
  } else if (auto* numbers = vtkDataArray::SafeDownCast(from)) {
    out.is_whole = numbers->GetDataType() != VTK_FLOAT && numbers->GetDataType() != VTK_DOUBLE;
    for (vtkIdType i = 0; i < numbers->GetNumberOfTuples(); ++i)
      for (int c = 0; c < out.components; ++c) out.numbers.push_back(numbers->GetComponent(i, c));
  }
  return out;
}

std::vector<GridArray> arrays_of(vtkFieldData* from) {
  std::vector<GridArray> out;
  for (int i = 0; i < from->GetNumberOfArrays(); ++i)
    if (from->GetAbstractArray(i) != nullptr) out.push_back(array_of(from->GetAbstractArray(i)));
  return out;
}

MeshGrid grid_of(vtkUnstructuredGrid* from) {
  MeshGrid out;
  for (vtkIdType i = 0; i < from->GetNumberOfPoints(); ++i) {
    std::array<double, 3> x{};
    from->GetPoint(i, x.data());
    out.points.insert(out.points.end(), x.begin(), x.end());
  }
  vtkNew<vtkIdList> ids;
  for (vtkIdType i = 0; i < from->GetNumberOfCells(); ++i) {
    from->GetCellPoints(i, ids);
    for (vtkIdType k = 0; k < ids->GetNumberOfIds(); ++k) out.connectivity.push_back(ids->GetId(k));
    out.offsets.push_back(static_cast<std::int64_t>(out.connectivity.size()));
    out.types.push_back(from->GetCellType(i));
  }
  out.point_arrays = arrays_of(from->GetPointData());
  out.cell_arrays = arrays_of(from->GetCellData());
  out.fields = arrays_of(from->GetFieldData());
  return out;
}

template <class Reader> void set_input(Reader* reader, const std::string& bytes);
template <> void set_input(vtkXMLUnstructuredGridReader* reader, const std::string& bytes) {
  reader->ReadFromInputStringOn();
  reader->SetInputString(bytes);
}
template <> void set_input(vtkUnstructuredGridReader* reader, const std::string& bytes) {
  reader->ReadFromInputStringOn();
  reader->ReadAllScalarsOn(); // else only the first array of each kind
  reader->ReadAllVectorsOn();
  reader->ReadAllFieldsOn();
  reader->ReadAllTensorsOn();
  reader->ReadAllNormalsOn();
  reader->ReadAllTCoordsOn();
  reader->ReadAllColorScalarsOn();
  reader->SetBinaryInputString(bytes.data(), static_cast<int>(bytes.size()));
}

template <class Reader> MeshGrid read_with(const std::string& bytes, const Listener& listener) {
  vtkNew<Reader> reader;
  set_input<Reader>(reader, bytes);
  reader->Update();
  const std::string said = in_short(listener.said());
  if (reader->GetErrorCode() != 0 || !said.empty() || reader->GetOutput() == nullptr)
    throw std::runtime_error("it is broken" + (said.empty() ? "" : " (" + said + ")"));
  return grid_of(reader->GetOutput());
}

} // namespace

MeshGrid read_grid(const std::string& bytes, bool legacy) {
  static std::mutex one_at_a_time; // VTK has one window for all messages
  const std::scoped_lock lock(one_at_a_time);
  vtkLogger::SetStderrVerbosity(vtkLogger::VERBOSITY_OFF); // the listener receives all messages
  vtkNew<Listener> listener;
  const vtkSmartPointer<vtkOutputWindow> before = vtkOutputWindow::GetInstance();
  vtkOutputWindow::SetInstance(listener);
  const auto restored = [&](MeshGrid grid) {
    vtkOutputWindow::SetInstance(before);
    return grid;
  };
  try {
    return restored(legacy ? read_with<vtkUnstructuredGridReader>(bytes, *listener)
                           : read_with<vtkXMLUnstructuredGridReader>(bytes, *listener));
  } catch (...) {
    vtkOutputWindow::SetInstance(before);
    throw;
  }
}

} // namespace bedbow
