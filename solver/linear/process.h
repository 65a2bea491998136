/// \file
/// Settings of the process that fast factorization depends on.
#pragma once

namespace bedbow {

/// To be called once at the start of main, before any thread: lets the allocator keep big blocks instead of giving
/// them back to the system (page faults cost more than the arithmetic of small fronts), one thread per BLAS call
/// (parallelism is over the elimination tree and over variants, not inside small products), and no OpenMP threads
/// inside the libraries. Measured in docs/performance.md.
void tune_process();

/// One thread per BLAS call; part of tune_process, for solvers that must have it even in untuned processes.
void single_thread_blas();

/// While an object exists, BLAS calls of the process and OpenMP in the calling thread use one thread each: the order of
/// sums is fixed, and results are identical to the last digit in any process. The last object restores the previous
/// setting.
class OneThread {
public:
  OneThread();
  ~OneThread();
  OneThread(const OneThread&) = delete;
  OneThread& operator=(const OneThread&) = delete;

private:
  int levels_ = 0; ///< of nested OpenMP teams that the thread allowed before
};

/// Limits OpenMP in the calling thread to one thread, so that libraries start no threads of their own. OpenMP keeps
/// this setting per thread, so each new thread that calls solvers must set it; otherwise waiting threads spin and take
/// cores from working ones.
void single_thread_openmp();

} // namespace bedbow
