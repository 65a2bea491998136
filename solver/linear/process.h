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

/// As long as one lives, BLAS calls of the process and OpenMP in the calling thread use one thread each: sums come in
/// one order, and results are the same to the last digit whether a program, a test or somebody else's process asks for
/// them. What the process had set before comes back when the last one goes.
class OneThread {
public:
  OneThread();
  ~OneThread();
  OneThread(const OneThread&) = delete;
  OneThread& operator=(const OneThread&) = delete;

private:
  int levels_ = 0; ///< of nested OpenMP teams that the thread allowed before
};

/// The calling thread asks OpenMP for no help: libraries that would start threads of their own stay in it. OpenMP keeps
/// this setting by thread, so each new thread that calls solvers begins with it; without, threads that spin while they
/// wait take the cores from those that work.
void single_thread_openmp();

} // namespace bedbow
