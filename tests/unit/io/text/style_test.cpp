#include "io/text/style.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdlib>

namespace bedbow {

namespace {

/// The terminal end of a pseudo-terminal, or -1 where the system has none.
class Terminal {
public:
  Terminal()
      : master_(::posix_openpt(O_RDWR | O_NOCTTY)) {
    if (master_ >= 0 && ::grantpt(master_) == 0 && ::unlockpt(master_) == 0)
      slave_ = ::open(::ptsname(master_), O_RDWR | O_NOCTTY);
  }
  ~Terminal() {
    if (slave_ >= 0) ::close(slave_);
    if (master_ >= 0) ::close(master_);
  }
  Terminal(const Terminal&) = delete;
  Terminal& operator=(const Terminal&) = delete;
  [[nodiscard]] int descriptor() const { return slave_; }

private:
  int master_;
  int slave_ = -1;
};

TEST(Style, ColourOnlyOnATerminalAndNeverWithNoColor) {
  const Terminal terminal;
  if (terminal.descriptor() < 0) GTEST_SKIP() << "no pseudo-terminal here";
  const char* before = std::getenv("TERM");
  const std::string term = before ? before : "";
  ::unsetenv("NO_COLOR");
  ::setenv("TERM", "xterm", 1);
  EXPECT_TRUE(style_for(terminal.descriptor()).colour());
  ::setenv("NO_COLOR", "1", 1);
  EXPECT_FALSE(style_for(terminal.descriptor()).colour());
  ::setenv("NO_COLOR", "", 1);
  EXPECT_TRUE(style_for(terminal.descriptor()).colour()) << "empty counts as unset";
  ::setenv("TERM", "dumb", 1);
  EXPECT_FALSE(style_for(terminal.descriptor()).colour());
  ::unsetenv("NO_COLOR");
  ::setenv("TERM", "xterm", 1);
  const int file = ::open("/dev/null", O_RDWR);
  EXPECT_FALSE(style_for(file).colour());
  ::close(file);
  if (before)
    ::setenv("TERM", term.c_str(), 1);
  else
    ::unsetenv("TERM");
}

TEST(Style, PlainLeavesTextAlone) {
  EXPECT_EQ(Style(false).bad("x"), "x");
  EXPECT_EQ(Style(true).bad("x"), "\033[1;31mx\033[0m");
}

} // namespace

} // namespace bedbow
