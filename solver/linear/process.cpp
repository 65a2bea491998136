#include "solver/linear/process.h"

#include <dlfcn.h>
#include <malloc.h>

namespace bedbow {

namespace {

// Which BLAS and whether an OpenMP runtime are loaded is the system's choice, so both are asked by name.
void call_if_loaded(const char* name, int argument) {
  if (void* symbol = dlsym(RTLD_DEFAULT, name)) reinterpret_cast<void (*)(int)>(symbol)(argument);
}

} // namespace

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
