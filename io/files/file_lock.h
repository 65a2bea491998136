/// \file
/// Lock for one program at a time. The system releases it when the program ends, however it ends.
#pragma once

#include <filesystem>

namespace bedbow {

class FileLock {
public:
  /// Takes the lock on a file, which is kept. Throws FileError naming the process that has it.
  /// \param guarded path named in the message.
  FileLock(const std::filesystem::path& file, const std::filesystem::path& guarded);
  ~FileLock();
  FileLock(FileLock&& other) noexcept;
  FileLock& operator=(FileLock&&) = delete;

private:
  int fd_ = -1;
};

} // namespace bedbow
