#include "io/files/atomic_file.h"

#include "io/files/errors.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <cstring>
#include <system_error>

namespace bedbow {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view partial_suffix = ".partial";
constexpr std::string_view backup_suffix = ".before";

std::string advice_on_errno(int error) {
  switch (error) {
  case ENOSPC:
  case EDQUOT:
    return "free some space or choose another directory";
  case EACCES:
  case EPERM:
  case EROFS:
    return "choose a directory that you may write to";
  case ENOENT: // no directory can be made there, as under /proc
    return "choose another directory";
  case EISDIR:
  case ENOTDIR:
    return "choose another name";
  case EFBIG:
    return "raise the limit on file sizes or choose another directory";
  default:
    return "";
  }
}

[[noreturn]] void fail(const std::string& doing, const fs::path& file, int error) {
  throw FileError(doing, file, std::strerror(error), advice_on_errno(error));
}

/// File descriptor that closes itself.
class Descriptor {
public:
  explicit Descriptor(int fd)
      : fd_(fd) {}
  ~Descriptor() {
    if (fd_ >= 0) ::close(fd_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  [[nodiscard]] int get() const { return fd_; }
  /// Some file systems report a full disk only here.
  int close() {
    const int fd = fd_;
    fd_ = -1;
    return ::close(fd);
  }

private:
  int fd_;
};

/// ".NAME.PID.partial": hidden, in the target directory, and distinct from other running programs' files.
fs::path beside(const fs::path& target, std::string_view suffix) {
  return target.parent_path() /
         ("." + target.filename().string() + "." + std::to_string(::getpid()) + std::string(suffix));
}

/// Whether a file name is an unfinished file of a process that no longer runs.
bool left_by_the_dead(const std::string& name) {
  for (const std::string_view suffix : {partial_suffix, backup_suffix}) {
    if (name.empty() || name[0] != '.' || !name.ends_with(suffix)) continue;
    const std::string stem = name.substr(0, name.size() - suffix.size());
    const std::size_t dot = stem.rfind('.');
    pid_t pid = 0;
    const auto parsed = std::from_chars(stem.data() + dot + 1, stem.data() + stem.size(), pid);
    if (dot == 0 || parsed.ec != std::errc() || parsed.ptr != stem.data() + stem.size() || pid <= 0) continue;
    if (::kill(pid, 0) != 0 && errno == ESRCH) return true;
  }
  return false;
}

void write_all(int fd, std::string_view content, const fs::path& target) {
  while (!content.empty()) {
    const ssize_t n = ::write(fd, content.data(), content.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) fail("write", target, errno);
    content.remove_prefix(static_cast<std::size_t>(n));
  }
}

} // namespace

FileSet::FileSet(fs::path directory)
    : directory_(directory.empty() ? fs::path(".") : std::move(directory)) {
  make_directories();
  clear_leftovers();
}

void FileSet::make_directories() {
  std::vector<fs::path> missing;
  for (fs::path p = directory_; !p.empty(); p = p.parent_path()) {
    std::error_code error;
    const fs::file_status status = fs::status(p, error);
    if (fs::exists(status)) {
      if (!fs::is_directory(status)) fail("make directory", p, ENOTDIR);
      break;
    }
    if (status.type() == fs::file_type::none) fail("make directory", p, error.value());
    if (p.has_filename()) missing.push_back(p);
    if (p == p.parent_path()) break;
  }
  for (auto p = missing.rbegin(); p != missing.rend(); ++p) {
    std::error_code error;
    if (fs::create_directory(*p, error)) made_.push_back(*p);
    if (error) fail("make directory", *p, error.value());
  }
}

void FileSet::clear_leftovers() const {
  std::error_code ignored; // files that can't be listed or removed do no harm
  for (const fs::directory_entry& entry : fs::directory_iterator(directory_, ignored))
    if (left_by_the_dead(entry.path().filename().string())) fs::remove(entry.path(), ignored);
}

FileSet::~FileSet() {
  std::error_code ignored;
  for (const Entry& e : entries_) {
    if (!e.placed) fs::remove(e.partial, ignored);
    if (!e.backup.empty()) fs::remove(e.backup, ignored);
  }
  if (committed_) return;
  for (auto p = made_.rbegin(); p != made_.rend(); ++p) fs::remove(*p, ignored); // only when empty
}

void FileSet::add(const std::string& name, std::string_view content) {
  Entry entry;
  entry.target = directory_ / name;
  entry.partial = beside(entry.target, partial_suffix);
  if (fs::is_directory(entry.target)) fail("write", entry.target, EISDIR);
  Descriptor file(::open(entry.partial.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
  if (file.get() < 0) fail("write", entry.target, errno);
  entries_.push_back(entry); // from here on the destructor cleans up
  write_all(file.get(), content, entry.target);
  if (::fsync(file.get()) != 0) fail("write", entry.target, errno);
  if (file.close() != 0) fail("write", entry.target, errno);
}

void FileSet::retire(const std::string& name) {
  retired_.push_back(directory_ / name);
}

void FileSet::place(Entry& entry) {
  // A second name keeps the previous file until all renames are done. Where the file system has no such links (FAT) a
  // rename that fails half-way can't be taken back; nothing but a fault of the disk makes it fail there.
  const fs::path backup = beside(entry.target, backup_suffix);
  if (::link(entry.target.c_str(), backup.c_str()) == 0) entry.backup = backup;
  if (::rename(entry.partial.c_str(), entry.target.c_str()) != 0) fail("write", entry.target, errno);
  entry.placed = true;
}

void FileSet::roll_back() {
  std::error_code ignored;
  for (auto e = entries_.rbegin(); e != entries_.rend(); ++e) {
    if (!e->placed) continue;
    if (e->backup.empty())
      fs::remove(e->target, ignored);
    else
      fs::rename(e->backup, e->target, ignored);
  }
}

void FileSet::commit() {
  try {
    for (Entry& entry : entries_) place(entry);
  } catch (...) {
    roll_back();
    throw;
  }
  committed_ = true;
  std::error_code ignored;
  for (const fs::path& file : retired_) fs::remove(file, ignored);
  // The names themselves reach the disk with their directory; a file system without this feature is not an error.
  const Descriptor dir(::open(directory_.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (dir.get() >= 0) ::fsync(dir.get());
}

void write_file(const fs::path& file, std::string_view content) {
  FileSet one(file.parent_path());
  one.add(file.filename().string(), content);
  one.commit();
}

} // namespace bedbow
