#include "solver/linear/builtin.h"

#include "solver/linear/auto.h"
#include "solver/linear/cholmod.h"
#include "solver/linear/multifrontal.h"
#include "solver/linear/simplicial.h"

namespace bedbow {

void builtin_linear_solvers(Registry<LinearSolverEntry>& solvers) {
  solvers.add({"auto", "chosen by size and structure of the matrix", "docs/adr/0003-solver-choice.md", auto_factor});
  solvers.add({"band", "L D L' on the envelope, for frames numbered station by station",
               "Golub & Van Loan, Matrix Computations, sec. 4.3", band_factor});
  solvers.add({"cholmod", "supernodal L L', minimum degree", "Chen, Davis, Hager & Rajamanickam 2008, ACM TOMS 35(3)",
               cholmod_factor});
  solvers.add({"multifrontal", "L L' front by front on all cores, minimum degree with cuts across the structure",
               "Duff & Reid 1983, ACM TOMS 9(3); Liu 1992, SIAM Review 34(1)", multifrontal_factor});
  solvers.add(
      {"simplicial", "column by column L D L', minimum degree", "Eigen 3.4, SimplicialLDLT", simplicial_factor});
}

} // namespace bedbow
