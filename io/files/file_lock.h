/// \file
/// One program at a time in a place. The system lets go of the lock when the program ends, however it ends.
#pragma once

#include <filesystem>

namespace bedbow {

class FileLock {
public:
  /// Takes the lock by a file, which stays. Throws FileError naming the process that has it.
  /// \param guarded what the message names.
  FileLock(const std::filesystem::path& file, const std::filesystem::path& guarded);
  ~FileLock();
  FileLock(FileLock&& other) noexcept;
  FileLock& operator=(FileLock&&) = delete;

private:
  int fd_ = -1;
};

} // namespace bedbow
