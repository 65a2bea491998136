/// \file
/// A file that is written piece by piece, too large to hold in memory, and yet appears completely or not at all.
#pragma once

#include <cstdio>
#include <filesystem>
#include <memory>
#include <string_view>

namespace bedbow {

class StreamedFile {
public:
  /// Begins under a temporary name, making the directory where it is missing. Throws FileError.
  explicit StreamedFile(std::filesystem::path target);
  /// Removes an uncommitted file.
  ~StreamedFile();
  StreamedFile(const StreamedFile&) = delete;
  StreamedFile& operator=(const StreamedFile&) = delete;
  void write(std::string_view text);
  /// Flushes to the disk and renames into place.
  void commit();

private:
  std::filesystem::path target_, partial_;
  std::unique_ptr<std::FILE, int (*)(std::FILE*)> file_;
};

} // namespace bedbow
