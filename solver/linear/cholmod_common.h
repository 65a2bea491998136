/// \file
/// CHOLMOD's workspace and its view of a matrix, for the solvers that call it.
#pragma once

#include "solver/linear/factorization.h"

#include <cholmod.h>

namespace bedbow::linear {

/// CHOLMOD's workspace is not shareable between threads: each solve makes its own.
struct Common {
  cholmod_common c{};
  Common() {
    cholmod_start(&c);
    c.print = 0;
    c.supernodal = CHOLMOD_SUPERNODAL;
    c.try_catch = 1;
  }
  ~Common() { cholmod_finish(&c); }
  Common(const Common&) = delete;
  Common& operator=(const Common&) = delete;
};

/// CHOLMOD's view of the lower triangle, without copying; it must be compressed and outlive the view.
inline cholmod_sparse view(const SymmetricMatrix& a) {
  cholmod_sparse s{};
  s.nrow = a.rows();
  s.ncol = a.cols();
  s.nzmax = a.nonZeros();
  s.p = const_cast<int*>(a.outerIndexPtr());
  s.i = const_cast<int*>(a.innerIndexPtr());
  s.x = const_cast<double*>(a.valuePtr());
  s.stype = -1;
  s.itype = CHOLMOD_INT;
  s.xtype = CHOLMOD_REAL;
  s.dtype = CHOLMOD_DOUBLE;
  s.sorted = 1;
  s.packed = 1;
  return s;
}

} // namespace bedbow::linear
