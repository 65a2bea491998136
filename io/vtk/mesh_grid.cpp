#include "io/vtk/mesh_grid.h"

#include "io/files/errors.h"
#include "io/text/hash.h"
#include "io/vtk/vtk_module.h"

#include <algorithm>
#include <cctype>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fstream>

namespace bedbow {

namespace {

namespace fs = std::filesystem;

constexpr const char* due = "[mesh] takes a VTK unstructured grid, as .vtu or as legacy .vtk";

std::string read_bytes(const fs::path& file) {
  std::error_code failed;
  const fs::file_status status = fs::status(file, failed);
  if (status.type() == fs::file_type::not_found)
    throw FileError("read", file, "there is no such file", "the path in [mesh] is relative to the case's folder");
  if (!fs::is_regular_file(status)) throw FileError("read", file, "it is not a file", due);
  const std::uintmax_t size = fs::file_size(file, failed);
  if (!failed && size > greatest_mesh_size) throw FileError("read", file, "it is larger than 1 GB", due);
  std::ifstream in(file, std::ios::binary);
  if (!in) throw FileError("read", file, std::strerror(errno));
  std::string bytes(static_cast<std::size_t>(size), '\0');
  in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  if (in.bad()) throw FileError("read", file, std::strerror(errno));
  bytes.resize(static_cast<std::size_t>(in.gcount()));
  return bytes;
}

/// Whether every count that follows the word is plausible for a mesh: VTK allocates memory for it at once.
bool counts_fit(std::string_view bytes, std::string_view word) {
  for (std::size_t at = bytes.find(word); at != std::string_view::npos; at = bytes.find(word, at + word.size())) {
    std::size_t i = at + word.size();
    while (i < bytes.size() && (std::isspace(static_cast<unsigned char>(bytes[i])) != 0 || bytes[i] == '"')) ++i;
    std::int64_t count = 0;
    for (; i < bytes.size() && std::isdigit(static_cast<unsigned char>(bytes[i])) != 0; ++i) {
      count = count * 10 + (bytes[i] - '0');
      if (count > 10 * most_mesh_items) return false; // in legacy files the size of CELLS includes the points
    }
  }
  return true;
}

} // namespace

std::shared_ptr<const MeshSource> read_mesh(const fs::path& file, const std::string& name) {
  const std::string bytes = read_bytes(file);
  const bool legacy = std::string_view(bytes).starts_with("# vtk DataFile");
  const std::size_t first = bytes.find_first_not_of(" \t\r\n\xef\xbb\xbf");
  if (!legacy && (first == std::string::npos || bytes[first] != '<'))
    throw FileError("read", file, "it begins neither as XML nor with \"# vtk DataFile\"", due);
  for (const char* word : {"NumberOfPoints=", "NumberOfCells=", "NumberOfTuples=", "\nPOINTS ", "\nCELLS ",
                           "\nCELL_TYPES ", "\nCELL_DATA ", "\nPOINT_DATA ", "\nFIELD "})
    if (!counts_fit(bytes, word))
      throw FileError("read", file, "it declares more points or cells than are permitted", due);
  auto out = std::make_shared<MeshSource>();
  out->file = name;
  out->hash = sha256(bytes);
  try {
    out->grid = vtk_module().read(bytes, legacy);
  } catch (const std::runtime_error& e) {
    if (dynamic_cast<const FileError*>(&e)) throw; // the module itself is missing
    throw FileError("read", file, e.what(), due);
  }
  return out;
}

} // namespace bedbow
