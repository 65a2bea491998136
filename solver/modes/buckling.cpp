#include "solver/modes/eigen/eigenpairs.h"
#include "solver/modes/geometric.h"
#include "solver/modes/modes.h"

namespace bedbow {

namespace {

using Eigen::Index;
using Eigen::VectorXd;

constexpr double no_answer = 1e-9; // 1 / factor: a load factor of a thousand million means no buckling

/// Stiffness of the machine as a matrix to be inverted. Parts restrained by joints alone get springs at their anchors,
/// which rows of negative compliance remove again: exact, and each part can be factored by itself.
JointedMatrix stiffness_of(const Model& m, const FreeMap& free, const JointState& state, const FactorFunction& factor) {
  std::vector<SymmetricMatrix> parts =
      free.anchors.empty() ? m.factored.stiffness : assemble_stiffness(m.machine, m.mesh, free.map, m.data);
  JointRows rows = joint_rows(m.mesh, free, state.rows, state.angle);
  const Index own = rows.elongation.rows();
  const auto anchors = static_cast<Index>(free.anchors.size());
  std::vector<Eigen::Triplet<double>> entries;
  for (Index i = 0; i < own; ++i)
    for (decltype(rows.elongation)::InnerIterator it(rows.elongation, i); it; ++it)
      entries.emplace_back(static_cast<int>(i), static_cast<int>(it.col()), it.value());
  rows.compliance.conservativeResize(own + anchors);
  for (Index i = 0; i < anchors; ++i) {
    const Index unknown = free.anchors[static_cast<std::size_t>(i)];
    std::size_t c = free.start.size() - 1;
    while (free.start[c] > unknown) --c;
    double& diagonal = parts[c].coeffRef(unknown - free.start[c], unknown - free.start[c]);
    const double spring = diagonal;
    diagonal += spring;
    rows.compliance[own + i] = -1 / spring;
    entries.emplace_back(static_cast<int>(own + i), static_cast<int>(unknown), 1.0);
  }
  rows.elongation.resize(own + anchors, free.size);
  rows.elongation.setFromTriplets(entries.begin(), entries.end());
  std::vector<FactorHints> hints;
  for (const Substructure& c : free.map.substructures) hints.push_back(hints_of(c, free.map.plane));
  return {std::move(parts), std::move(rows), factor, hints};
}

} // namespace

Modes buckling_modes(const Model& m, const StepSolution& step, const Registry<LinearSolverEntry>& solvers, int wanted) {
  const FreeMap free = make_free_map(m.map);
  std::vector<SymmetricProduct> geometric;
  for (const SymmetricMatrix& g : assemble_geometric(m, free.map, step)) geometric.emplace_back(-g);
  const JointedMatrix k = stiffness_of(m, free, state_of(m, step), solver_of(m.machine, solvers).factor);
  const EigenProblem::Product softening = [&](const auto& x, auto y) {
    for (std::size_t c = 0; c < geometric.size(); ++c)
      geometric[c].multiply(x.middleRows(free.start[c], geometric[c].size()),
                            y.middleRows(free.start[c], geometric[c].size()));
  };
  const EigenProblem::Product stiffness = [&](const auto& x, auto y) {
    for (Index j = 0; j < x.cols(); ++j) k.multiply(x.col(j), y.col(j));
  };
  const EigenProblem problem{free.size, softening, stiffness, [&](auto b) { k.solve(b); }, false, 1e-6};
  // Loads that bend without compression leave only rounding in the geometric stiffness, as for a panel loaded only
  // laterally. The estimate may be ten times too small.
  if (10 * greatest_value(problem) < no_answer) return {Eigen::VectorXd(0), Eigen::MatrixXd(free.size, 0), {}, 0, 0, 0};
  EigenPairs pairs = largest_pairs(problem, wanted, Eigen::MatrixXd(free.size, 0));
  Index count = 0;
  while (count < pairs.values.size() && pairs.values[count] > no_answer) ++count;
  Modes out;
  out.values = pairs.values.head(count).cwiseInverse();
  out.vectors = pairs.vectors.leftCols(count);
  out.residual = count > 0 ? pairs.residual : 0;
  out.orthogonality = count > 0 ? pairs.orthogonality : 0;
  out.operations = pairs.operations;
  return out;
}

} // namespace bedbow
