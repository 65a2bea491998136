#include "io/files/atomic_file.h"
#include "io/files/errors.h"

#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

#include <csignal>
#include <fstream>
#include <iterator>

namespace fs = std::filesystem;
namespace bedbow {

namespace {

/// An empty directory of its own for each test, gone afterwards.
class AtomicFile : public ::testing::Test {
protected:
  AtomicFile() {
    const auto* test = ::testing::UnitTest::GetInstance()->current_test_info();
    dir = fs::temp_directory_path() / ("bedbow-" + std::to_string(::getpid()) + "-" + test->name());
    fs::remove_all(dir);
    fs::create_directory(dir);
  }
  ~AtomicFile() override { fs::remove_all(dir); }

  static std::string content(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  [[nodiscard]] std::ptrdiff_t files() const {
    return std::distance(fs::recursive_directory_iterator(dir), fs::recursive_directory_iterator());
  }
  fs::path dir;
};

/// Runs with a limit on file sizes, as a disk that fills up would act, and takes the limit back.
class SizeLimit {
public:
  explicit SizeLimit(rlim_t bytes) {
    std::signal(SIGXFSZ, SIG_IGN);
    ::getrlimit(RLIMIT_FSIZE, &before_);
    rlimit now = before_;
    now.rlim_cur = bytes;
    ::setrlimit(RLIMIT_FSIZE, &now);
  }
  ~SizeLimit() { ::setrlimit(RLIMIT_FSIZE, &before_); }

private:
  rlimit before_{};
};

TEST_F(AtomicFile, WritesWholeFiles) {
  const std::string big(3000000, 'b');
  {
    FileSet set(dir / "a" / "b");
    set.add("one", "1");
    set.add("big", big);
    EXPECT_FALSE(fs::exists(dir / "a/b/one")) << "nothing stands before commit";
    set.commit();
  }
  EXPECT_EQ(content(dir / "a/b/one"), "1");
  EXPECT_EQ(content(dir / "a/b/big"), big);
  EXPECT_EQ(files(), 4) << "no partial or backup file is left";
}

TEST_F(AtomicFile, GivenUpLeavesNothing) {
  { FileSet(dir / "a" / "b").add("one", "1"); }
  EXPECT_EQ(files(), 0) << "neither files nor the directories made for them";
}

TEST_F(AtomicFile, FullPlaceKeepsPreviousResults) {
  write_file(dir / "one", "old one");
  write_file(dir / "two", "old two");
  try {
    const SizeLimit limit(1000);
    FileSet set(dir);
    set.add("one", "new one");
    set.add("two", std::string(5000, 'x'));
    FAIL() << "the limit must be felt";
  } catch (const FileError& e) {
    EXPECT_NE(std::string(e.what()).find("two: File too large"), std::string::npos) << e.what();
  }
  EXPECT_EQ(content(dir / "one"), "old one");
  EXPECT_EQ(content(dir / "two"), "old two");
  EXPECT_EQ(files(), 2);
}

TEST_F(AtomicFile, FailingRenameBringsBackTheOthers) {
  write_file(dir / "one", "old one");
  {
    FileSet set(dir);
    set.add("zero", "new");
    set.add("one", "new one");
    set.add("two", "new two");
    fs::create_directory(dir / "two"); // comes up between writing and committing
    EXPECT_THROW(set.commit(), FileError);
  }
  EXPECT_EQ(content(dir / "one"), "old one");
  EXPECT_FALSE(fs::exists(dir / "zero"));
  EXPECT_EQ(files(), 2);
}

TEST_F(AtomicFile, DirectoryInTheWayIsNamedBeforeAnythingIsWritten) {
  fs::create_directory(dir / "one");
  FileSet set(dir);
  EXPECT_THROW(set.add("one", "x"), FileError);
  EXPECT_EQ(files(), 1);
}

TEST_F(AtomicFile, FileInPlaceOfTheDirectory) {
  write_file(dir / "out", "a file");
  try {
    FileSet set(dir / "out" / "deeper");
    FAIL();
  } catch (const FileError& e) {
    EXPECT_NE(std::string(e.what()).find("out: Not a directory"), std::string::npos) << e.what();
  }
  EXPECT_EQ(content(dir / "out"), "a file");
}

TEST_F(AtomicFile, DeviceIsNoDirectory) {
  EXPECT_THROW(FileSet("/dev/full"), FileError);
}

TEST_F(AtomicFile, KilledRunsLeftoversGoLivingOnesStay) {
  const fs::path dead = dir / ".one.2147483646.partial"; // beyond the greatest process number of Linux
  const fs::path alive = dir / (".one." + std::to_string(::getppid()) + ".partial");
  const fs::path foreign = dir / ".notes.partial";
  for (const fs::path& p : {dead, alive, foreign}) std::ofstream(p) << "x";
  write_file(dir / "one", "1");
  EXPECT_FALSE(fs::exists(dead));
  EXPECT_TRUE(fs::exists(alive));
  EXPECT_TRUE(fs::exists(foreign));
}

TEST_F(AtomicFile, RetiredFilesGoOnlyWithSuccess) {
  write_file(dir / "old", "x");
  {
    FileSet set(dir);
    set.retire("old");
  }
  EXPECT_TRUE(fs::exists(dir / "old"));
  FileSet set(dir);
  set.retire("old");
  set.retire("never there");
  set.commit();
  EXPECT_FALSE(fs::exists(dir / "old"));
}

TEST_F(AtomicFile, PlainNameGoesIntoTheWorkingDirectory) {
  const fs::path before = fs::current_path();
  fs::current_path(dir);
  write_file("plain", "p");
  fs::current_path(before);
  EXPECT_EQ(content(dir / "plain"), "p");
}

} // namespace

} // namespace bedbow
