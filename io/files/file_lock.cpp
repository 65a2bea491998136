#include "io/files/file_lock.h"

#include "io/files/errors.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <string>
#include <utility>

namespace bedbow {

namespace {

/// The process number that the owner wrote into its lock.
std::string owner_of(int fd) {
  std::array<char, 32> text{};
  const ssize_t n = ::pread(fd, text.data(), text.size() - 1, 0);
  std::string out(text.data(), n > 0 ? static_cast<std::size_t>(n) : 0);
  while (!out.empty() && (out.back() < '0' || out.back() > '9')) out.pop_back();
  return out.empty() ? "another process" : "process " + out;
}

} // namespace

FileLock::FileLock(const std::filesystem::path& file, const std::filesystem::path& guarded)
    : fd_(::open(file.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666)) {
  if (fd_ < 0) throw FileError("lock", file, std::strerror(errno), "choose a directory that you may write to");
  if (::flock(fd_, LOCK_EX | LOCK_NB) != 0) {
    const std::string owner = owner_of(fd_);
    ::close(fd_);
    throw FileError("use", guarded, owner + " is working on it",
                    "wait until it has ended, stop it, or choose another --out");
  }
  const std::string pid = std::to_string(::getpid()) + "\n";
  // The number is optional: on a full disk the lock holds without it.
  if (::ftruncate(fd_, 0) == 0) (void)!::pwrite(fd_, pid.data(), pid.size(), 0);
}

FileLock::FileLock(FileLock&& other) noexcept
    : fd_(std::exchange(other.fd_, -1)) {}

FileLock::~FileLock() {
  if (fd_ >= 0) ::close(fd_);
}

} // namespace bedbow
