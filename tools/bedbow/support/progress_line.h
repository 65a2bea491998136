/// \file
/// A progress line of a long run: updated in place on a terminal, else a plain line now and then.
#pragma once

#include "io/sweep/sweep_runner.h"

#include <chrono>

namespace bedbow {

class ProgressLine {
public:
  /// Writes to standard error.
  ProgressLine();
  /// Ends the line on a terminal.
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;
  void show(const SweepProgress& progress);

private:
  bool terminal_;
  bool shown_ = false;
  std::chrono::steady_clock::time_point next_;
};

} // namespace bedbow
