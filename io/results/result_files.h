/// \file
/// The result files of a solved case, all of them or none.
#pragma once

#include "solver/findings/findings.h"

#include <nlohmann/json_fwd.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace bedbow {

struct ResultFile {
  std::string name, content;
};

/// Writes results.json, bend_line.csv, machine.pvd with machine_N.vtu (and assembly.pvd, its former name), and
/// forces.pvd with forces_N.vtu; where modes were requested, modes.pvd and buckling.pvd with a time step per shape.
/// Files of further steps that an earlier run left are removed. \param results content of results.json. \param more
/// further files, written with the others. \param stale names of files of earlier results: removed unless they are
/// among `more`. \return names of the files that a person opens. Throws FileError; then the directory is as it was
/// before.
std::vector<std::string> write_results(const std::filesystem::path& directory, const Findings& findings,
                                       const nlohmann::ordered_json& results, const std::vector<ResultFile>& more = {},
                                       const std::vector<std::string>& stale = {});

/// Names of all files that write_results itself makes.
std::vector<std::string> result_names(const Findings& findings);

} // namespace bedbow
