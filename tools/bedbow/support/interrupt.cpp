#include "tools/bedbow/support/interrupt.h"

#include <csignal>

namespace bedbow {

namespace {

std::atomic<bool> interrupted{false};
static_assert(std::atomic<bool>::is_always_lock_free); // so that a signal handler may set it

void note(int signal) {
  interrupted = true;
  std::signal(signal, SIG_DFL);
}

} // namespace

const std::atomic<bool>& catch_interrupts() {
  std::signal(SIGINT, note);
  std::signal(SIGTERM, note);
  // A file over the size limit must cause a write error, not end the program.
  std::signal(SIGXFSZ, SIG_IGN);
  return interrupted;
}

} // namespace bedbow
