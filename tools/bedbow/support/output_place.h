/// \file
/// Output directory of commands, and reading of lists of lengths.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace bedbow {

/// The requested directory; else out/NAME, NAME being the folder of a case.toml, else the file without its ending.
std::filesystem::path output_directory(const std::string& wanted, const std::filesystem::path& case_file);

/// Report and plots that a case's directory may hold from an earlier run: they are removed when results are written
/// without them.
const std::vector<std::string>& optional_files();

/// Lengths [m] of an option's texts. Throws std::invalid_argument naming the option.
std::vector<double> lengths_of(const std::string& option, const std::vector<std::string>& texts);

} // namespace bedbow
