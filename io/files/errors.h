/// \file
/// Error classes of the program's interface: each corresponds to one exit code.
#pragma once

#include "mesh/machine/problem.h"

#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

namespace bedbow {

/// A file that could not be read or written: exit code 4.
class FileError : public std::runtime_error {
public:
  /// \param doing what was tried: "read", "write", ...
  /// \param wrong what went wrong: the system's message, or ours.
  /// \param way_out suggested remedy; may be empty.
  FileError(const std::string& doing, const std::filesystem::path& file, const std::string& wrong,
            const std::string& way_out = "")
      : std::runtime_error("cannot " + doing + " " + file.string() + ": " + wrong +
                           (way_out.empty() ? "" : "; " + way_out))
      , file_(file) {}
  [[nodiscard]] const std::filesystem::path& file() const { return file_; }

private:
  std::filesystem::path file_;
};

/// An invalid case: exit code 2. Carries all problems found, including warnings, sorted by position.
class CaseError : public std::runtime_error {
public:
  /// \param file name of the case in messages.
  CaseError(std::string file, std::vector<Problem> problems);
  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const std::vector<Problem>& problems() const { return problems_; }

private:
  std::string file_;
  std::vector<Problem> problems_;
};

/// One line as compilers write it, which editors can jump to: "case.toml:12:8: error: bed.length: text". Missing parts
/// are omitted.
std::string to_string(const Problem& problem, const std::string& file);

} // namespace bedbow
