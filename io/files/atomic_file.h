/// \file
/// Files that appear whole or not at all. A set of files is first written beside its places under names of its own,
/// flushed to the disk, and only then renamed into place; whatever fails before that leaves the previous files as they
/// were and no half-written one.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// Files of one directory that are replaced together.
class FileSet {
public:
  /// Makes the directory (with its parents) where it is missing, and clears what a killed earlier run left of its own
  /// unfinished files. Throws FileError.
  explicit FileSet(std::filesystem::path directory);
  /// Removes what was not committed, and directories that this set made and nothing was put into.
  ~FileSet();
  FileSet(const FileSet&) = delete;
  FileSet& operator=(const FileSet&) = delete;

  /// Writes one file beside its place. \param name file name without a directory; once per set. Throws FileError.
  void add(const std::string& name, std::string_view content);
  /// A file that shall be gone once the set stands: results of an earlier run that this one does not have.
  void retire(const std::string& name);
  /// Puts all files into place, in the order added, or none: a failing rename brings back those before it. Throws
  /// FileError.
  void commit();
  [[nodiscard]] const std::filesystem::path& directory() const { return directory_; }

private:
  struct Entry {
    std::filesystem::path target, partial, backup;
    bool placed = false;
  };
  void make_directories();
  void clear_leftovers() const;
  void place(Entry& entry);
  void roll_back();

  std::filesystem::path directory_;
  std::vector<std::filesystem::path> made_; // directories, outermost first
  std::vector<Entry> entries_;
  std::vector<std::filesystem::path> retired_;
  bool committed_ = false;
};

/// One file, whole or not at all. Throws FileError.
void write_file(const std::filesystem::path& file, std::string_view content);

} // namespace bedbow
