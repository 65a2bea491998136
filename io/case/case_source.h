/// \file
/// A case file before it is interpreted: its text, its tree of values and its syntax errors.
#pragma once

#include "io/case/case_node.h"
#include "io/vtk/mesh_grid.h"
#include "mesh/machine/problem.h"

#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace bedbow {

struct CaseSource {
  std::string file;      ///< name used in messages
  std::string text_hash; ///< SHA-256 of the text
  CaseNode root;
  std::vector<Problem> problems;          ///< of syntax
  std::shared_ptr<const MeshSource> mesh; ///< of [mesh], once it has been read: variants share it
};

/// Greatest size of a case file [bytes]. The largest that a machine needs is a hundredth of it.
inline constexpr std::size_t greatest_case_size = 4 << 20;

/// Reads a case file. Throws FileError where it can't be read, CaseError where it cannot be a case: too large (not read
/// then), binary, empty.
CaseSource read_source(const std::filesystem::path& file);

/// The same from text in memory. \param file the name used in messages. Throws CaseError as above.
CaseSource source_of_text(std::string_view text, std::string file);

/// Paths of [plugins] files, as the case gives them; they are needed before the case can be interpreted. Errors in the
/// table are reported then.
std::vector<std::string> plugin_files(const CaseSource& source);

/// A variant: the same case with other values under some dotted keys. A key that the file omits is added.
/// Throws std::invalid_argument naming a key whose table does not exist.
CaseSource with_values(const CaseSource& source, std::span<const std::pair<std::string, CaseNode>> values);

} // namespace bedbow
