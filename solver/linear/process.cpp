#include "solver/linear/process.h"

#include <dlfcn.h>
#include <malloc.h>

#include <mutex>

namespace bedbow {

namespace {

// The system chooses the BLAS and whether an OpenMP runtime is loaded, so both are looked up by name.
void call_if_loaded(const char* name, int argument) {
  if (void* symbol = dlsym(RTLD_DEFAULT, name)) reinterpret_cast<void (*)(int)>(symbol)(argument);
}

int ask_if_loaded(const char* name, int otherwise) {
  void* symbol = dlsym(RTLD_DEFAULT, name);
  return symbol ? reinterpret_cast<int (*)()>(symbol)() : otherwise;
}

/// BLAS has one number of threads per process: the first guard sets it to one, the last restores it.
struct BlasThreads {
  std::mutex mutex;
  int users = 0, before = 1;
};
BlasThreads& blas_threads() {
  static BlasThreads threads;
  return threads;
}

} // namespace

OneThread::OneThread()
    : levels_(ask_if_loaded("omp_get_max_active_levels", 0)) {
  BlasThreads& blas = blas_threads();
  const std::lock_guard lock(blas.mutex);
  if (blas.users++ == 0) {
    blas.before = ask_if_loaded("openblas_get_num_threads", 1);
    if (blas.before != 1) single_thread_blas();
  }
  single_thread_openmp();
}

OneThread::~OneThread() {
  call_if_loaded("omp_set_max_active_levels", levels_);
  BlasThreads& blas = blas_threads();
  const std::lock_guard lock(blas.mutex);
  if (--blas.users == 0 && blas.before != 1) call_if_loaded("openblas_set_num_threads", blas.before);
}

void single_thread_blas() {
  call_if_loaded("openblas_set_num_threads", 1);
}

void single_thread_openmp() {
  call_if_loaded("omp_set_max_active_levels", 0);
}

void tune_process() {
  mallopt(M_MMAP_THRESHOLD, 1 << 30);
  mallopt(M_TRIM_THRESHOLD, 2000000000);
  mallopt(M_TOP_PAD, 64 << 20);
  single_thread_openmp();
  single_thread_blas();
}

} // namespace bedbow
