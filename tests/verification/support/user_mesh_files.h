/// \file
/// Mesh files written for tests of [mesh], ASCII, as .vtu and as legacy .vtk.
#pragma once

#include <array>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace bedbow::verification {

struct OwnCell {
  int type = 3; ///< by VTK's numbers
  std::vector<int> points;
};

struct OwnFile {
  std::vector<std::array<double, 3>> points; ///< [mm]
  std::vector<OwnCell> cells;
  std::map<std::string, std::vector<double>> point_sets;
  std::vector<double> thickness;     ///< of cells [mm]; empty: no such array
  std::vector<std::string> material; ///< of cells; empty: no such array
};

/// [material.sample]: E = 210 GPa, 7850 kg/m^3, yield 275 MPa.
std::string sample_material(double nu = 0.3);
/// All six movements as `holds` takes them.
inline const std::string all_six = R"(["x", "y", "z", "rx", "ry", "rz"])";

/// A folder of its own that goes when the test ends.
class OwnFolder {
public:
  OwnFolder();
  OwnFolder(const OwnFolder&) = delete;
  OwnFolder& operator=(const OwnFolder&) = delete;
  ~OwnFolder();
  /// Writes a mesh. \return its absolute path.
  [[nodiscard]] std::string write(const OwnFile& file, bool legacy) const;

private:
  std::filesystem::path path_;
};

} // namespace bedbow::verification
