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

/// The calling thread asks OpenMP for no help: libraries that would start threads of their own stay in it. OpenMP keeps
/// this setting by thread, so each new thread that calls solvers begins with it; without, threads that spin while they
/// wait take the cores from those that work.
void single_thread_openmp();

} // namespace bedbow
