/// \file
/// Ctrl-C (SIGINT) and SIGTERM as a flag that long runs check, so that they end cleanly.
#pragma once

#include <atomic>

namespace bedbow {

/// From now on the first Ctrl-C sets the flag; a second one ends the program at once.
const std::atomic<bool>& catch_interrupts();

} // namespace bedbow
