/// \file
/// Plugins: shared objects that provide section shapes, moment laws, elements, linear solvers, findings
/// and result writers across the C interface of io/plugin/bedbow_plugin.h.
#pragma once

#include "mesh/piece/registry.h"
#include "solver/findings/findings.h"
#include "solver/registry/registries.h"

#include <filesystem>
#include <functional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace bedbow {

/// A plugin that can't be used: its file, its entry and the reason.
class PluginError : public std::runtime_error {
public:
  PluginError(const std::string& place, const std::string& wrong)
      : std::runtime_error("plugin " + place + ": " + wrong) {}
};

/// Further numbers from a solved case; keys state quantity and unit.
struct FindingEntry {
  std::string name, description, source;
  std::function<std::vector<std::pair<std::string, double>>(const Findings&)> evaluate; ///< throws PluginError
  std::string origin = "built in";
};

/// A file from a result writer.
struct WrittenFile {
  std::string name, content;
};

/// Further files of a solved case.
struct WriterEntry {
  std::string name, description, source;
  /// \param json content of results.json. \param taken names already in use. Throws PluginError.
  std::function<std::vector<WrittenFile>(const Findings&, const std::string& json,
                                         const std::vector<std::string>& taken)>
      write;
  std::string origin = "built in";
};

/// Entries of plugins other than those in the registries.
struct Plugins {
  Registry<FindingEntry> findings{"finding"};
  Registry<WriterEntry> writers{"result writer"};
  std::vector<std::string> loaded; ///< "file.so: name version", in the order loaded, for the results' stamp
};

/// Loads a shared object and registers its entries. The object stays loaded for the life of the process, since anything
/// made from it may be called. Interface version and structure sizes are checked before anything else.
/// Throws FileError where the file can't be loaded; PluginError for a missing symbol, a wrong version or size, an
/// unknown kind, a missing function, a name taken twice.
void load_plugin(const std::filesystem::path& file, Registries& registries, Plugins& plugins);

} // namespace bedbow
