#include "io/files/streamed_file.h"

#include "io/files/errors.h"

#include <unistd.h>

#include <cerrno>
#include <cstring>

namespace bedbow {

namespace fs = std::filesystem;

namespace {

[[noreturn]] void fail(const fs::path& file) {
  throw FileError("write", file, std::strerror(errno), "free some space or choose another directory");
}

} // namespace

StreamedFile::StreamedFile(fs::path target)
    : target_(std::move(target))
    , partial_(target_.parent_path() /
               ("." + target_.filename().string() + "." + std::to_string(::getpid()) + ".partial"))
    , file_(nullptr, std::fclose) {
  std::error_code failed;
  if (target_.has_parent_path()) fs::create_directories(target_.parent_path(), failed);
  if (failed) throw FileError("make directory", target_.parent_path(), failed.message());
  file_.reset(std::fopen(partial_.c_str(), "we"));
  if (!file_) fail(target_);
}

StreamedFile::~StreamedFile() {
  if (!file_) return;
  file_.reset();
  std::error_code ignored;
  fs::remove(partial_, ignored);
}

void StreamedFile::write(std::string_view text) {
  if (std::fwrite(text.data(), 1, text.size(), file_.get()) != text.size()) fail(target_);
}

void StreamedFile::commit() {
  if (std::fflush(file_.get()) != 0 || ::fsync(::fileno(file_.get())) != 0) fail(target_);
  if (::rename(partial_.c_str(), target_.c_str()) != 0) fail(target_);
  file_.reset();
}

} // namespace bedbow
