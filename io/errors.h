/// \file
/// Error classes of the border: each stands for one exit code of the program.
#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>

namespace bedbow {

/// A file that could not be read or written: exit code 4.
class FileError : public std::runtime_error {
public:
  /// \param doing what was tried: "read", "write", ...
  /// \param wrong what went wrong: the system's own words, or ours.
  /// \param way_out what would help; may be empty.
  FileError(const std::string& doing, const std::filesystem::path& file, const std::string& wrong,
            const std::string& way_out = "")
      : std::runtime_error("cannot " + doing + " " + file.string() + ": " + wrong +
                           (way_out.empty() ? "" : "; " + way_out))
      , file_(file) {}
  [[nodiscard]] const std::filesystem::path& file() const { return file_; }

private:
  std::filesystem::path file_;
};

} // namespace bedbow
