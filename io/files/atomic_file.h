/// \file
/// Files that appear completely or not at all. A set of files is first written under temporary names in the same
/// directory, flushed to the disk, and only then renamed; a failure before that leaves the previous files unchanged and
/// no partial ones.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// Files of one directory that are replaced together.
class FileSet {
public:
  /// Makes the directory (with its parents) where it is missing, and removes unfinished files of a killed earlier run.
  /// Throws FileError.
  explicit FileSet(std::filesystem::path directory);
  /// Removes uncommitted files, and empty directories that this set made.
  ~FileSet();
  FileSet(const FileSet&) = delete;
  FileSet& operator=(const FileSet&) = delete;

  /// Writes one file under a temporary name. \param name file name without a directory; once per set. Throws FileError.
  void add(const std::string& name, std::string_view content);
  /// A file to be removed once the set is committed: results of an earlier run that this one does not have.
  void retire(const std::string& name);
  /// Puts all files into place, in the order added, or none: a failing rename restores those before it. Throws
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

/// One file, completely or not at all. Throws FileError.
void write_file(const std::filesystem::path& file, std::string_view content);

} // namespace bedbow
