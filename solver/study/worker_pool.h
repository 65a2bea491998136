/// \file
/// Work shared among threads: each takes the next index until none is left. The result for an index must not
/// depend on which thread does it or when; then no result depends on the number of threads.
#pragma once

#include "solver/linear/process.h"

#include <atomic>
#include <cstdint>
#include <exception>
#include <functional>
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

namespace bedbow {

/// Number of threads; all of the machine's where 0 is given.
inline int thread_count(int wanted) {
  if (wanted > 0) return wanted;
  const unsigned n = std::thread::hardware_concurrency();
  return n > 0 ? static_cast<int>(n) : 1;
}

/// A thread that may call solvers: runs a copy of `work`.
template <class Work> std::jthread worker(Work work) {
  return std::jthread([work = std::move(work)] {
    single_thread_openmp();
    work();
  });
}

/// Calls work(i) for every i in 0 .. count-1. \param threads 0: all of the machine's.
/// The first exception stops the rest and is thrown again here.
inline void for_each_index(std::uint64_t count, int threads, const std::function<void(std::uint64_t)>& work) {
  std::atomic<std::uint64_t> next{0};
  std::exception_ptr trouble;
  std::mutex guard;
  const auto take = [&] {
    for (std::uint64_t i = next++; i < count; i = next++) {
      try {
        work(i);
      } catch (...) {
        const std::scoped_lock lock(guard);
        if (!trouble) trouble = std::current_exception();
        next = count;
      }
    }
  };
  const auto n = static_cast<std::uint64_t>(thread_count(threads));
  std::vector<std::jthread> pool;
  for (std::uint64_t t = 1; t < n && t < count; ++t) pool.push_back(worker([&take] { take(); }));
  take();
  pool.clear(); // joins
  if (trouble) std::rethrow_exception(trouble);
}

} // namespace bedbow
