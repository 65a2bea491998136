#include "tests/verification/support/user_mesh_files.h"

#include <unistd.h>

#include <fstream>
#include <iomanip>
#include <ostream>
#include <sstream>

namespace bedbow::verification {

namespace fs = std::filesystem;

namespace {

template <class Range> std::string spaced(const Range& values) {
  std::ostringstream out;
  out << std::setprecision(17);
  for (const auto& v : values) out << v << ' ';
  return out.str();
}

std::string array(const std::string& type, const std::string& name, const std::string& values, int components = 1) {
  return "<DataArray type=\"" + type + "\" Name=\"" + name + "\" NumberOfComponents=\"" + std::to_string(components) +
         "\" format=\"ascii\">" + values + "</DataArray>\n";
}

std::vector<double> flat(const OwnFile& f) {
  std::vector<double> out;
  for (const auto& p : f.points) out.insert(out.end(), p.begin(), p.end());
  return out;
}

void write_xml(const OwnFile& f, std::ostream& out) {
  std::vector<int> connectivity, offsets, types;
  for (const OwnCell& c : f.cells) {
    connectivity.insert(connectivity.end(), c.points.begin(), c.points.end());
    offsets.push_back(static_cast<int>(connectivity.size()));
    types.push_back(c.type);
  }
  out << "<VTKFile type=\"UnstructuredGrid\" version=\"0.1\" byte_order=\"LittleEndian\"><UnstructuredGrid>"
      << "<Piece NumberOfPoints=\"" << f.points.size() << "\" NumberOfCells=\"" << f.cells.size()
      << "\">\n<PointData>\n";
  for (const auto& [name, values] : f.point_sets) out << array("Float64", name, spaced(values));
  out << "</PointData>\n<CellData>\n";
  if (!f.thickness.empty()) out << array("Float64", "thickness", spaced(f.thickness));
  if (!f.material.empty()) {
    out << "<Array type=\"String\" Name=\"material\" format=\"ascii\">";
    for (const std::string& word : f.material) {
      for (const char c : word) out << static_cast<int>(c) << ' ';
      out << "0 ";
    }
    out << "</Array>\n";
  }
  out << "</CellData>\n<Points>\n"
      << array("Float64", "Points", spaced(flat(f)), 3) << "</Points>\n<Cells>\n"
      << array("Int64", "connectivity", spaced(connectivity)) << array("Int64", "offsets", spaced(offsets))
      << array("UInt8", "types", spaced(types)) << "</Cells>\n</Piece></UnstructuredGrid></VTKFile>\n";
}

void write_legacy(const OwnFile& f, std::ostream& out) {
  std::size_t numbers = 0;
  for (const OwnCell& c : f.cells) numbers += 1 + c.points.size();
  out << "# vtk DataFile Version 3.0\na mesh of one's own\nASCII\nDATASET UNSTRUCTURED_GRID\nPOINTS " << f.points.size()
      << " double\n"
      << spaced(flat(f)) << "\nCELLS " << f.cells.size() << ' ' << numbers << '\n';
  for (const OwnCell& c : f.cells) out << c.points.size() << ' ' << spaced(c.points) << '\n';
  out << "CELL_TYPES " << f.cells.size() << '\n';
  for (const OwnCell& c : f.cells) out << c.type << '\n';
  out << "POINT_DATA " << f.points.size() << '\n';
  for (const auto& [name, values] : f.point_sets)
    out << "SCALARS " << name << " double 1\nLOOKUP_TABLE default\n" << spaced(values) << '\n';
}

} // namespace

std::string sample_material(double nu) {
  return "[material.sample]\nE = \"210 GPa\"\nnu = " + std::to_string(nu) +
         R"(
density = "7850 kg/m^3"
yield = "275 MPa"
)";
}

OwnFolder::OwnFolder()
    : path_(fs::temp_directory_path() / ("bedbow-own-" + std::to_string(::getpid()))) {
  fs::remove_all(path_);
  fs::create_directories(path_);
}

OwnFolder::~OwnFolder() {
  fs::remove_all(path_);
}

std::string OwnFolder::write(const OwnFile& file, bool legacy) const {
  const fs::path name = path_ / (legacy ? "mesh.vtk" : "mesh.vtu");
  std::ofstream out(name);
  legacy ? write_legacy(file, out) : write_xml(file, out);
  return name;
}

} // namespace bedbow::verification
