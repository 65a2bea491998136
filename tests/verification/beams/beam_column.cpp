#include "tests/verification/beams/beam_column.h"

#include "solver/linear/dense.h"

#include <algorithm>
#include <stdexcept>

namespace bedbow::verification {

using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {
// The matrix of the kept rows and columns. (Indexed views make GCC 12 warn of what is not there.)
MatrixXd reduced(const MatrixXd& full, const std::vector<int>& kept) {
  const auto n = static_cast<Eigen::Index>(kept.size());
  MatrixXd out(n, n);
  for (Eigen::Index j = 0; j < n; ++j)
    for (Eigen::Index i = 0; i < n; ++i) out(i, j) = full(kept[i], kept[j]);
  return out;
}

std::vector<int> kept_dofs(Eigen::Index count, const std::vector<int>& held) {
  std::vector<int> kept;
  for (int i = 0; i < count; ++i)
    if (std::find(held.begin(), held.end(), i) == held.end()) kept.push_back(i);
  return kept;
}
} // namespace

BeamColumn::BeamColumn(const BeamData& beam, double whole_length, int count)
    : data(beam)
    , length(whole_length)
    , elements(count)
    , stiffness(MatrixXd::Zero(6 * (count + 1), 6 * (count + 1)))
    , geometric(stiffness) {
  const Matrix12d K = beam_stiffness(data, length / elements);
  for (int e = 0; e < elements; ++e) stiffness.block<12, 12>(6 * e, 6 * e) += K;
}

void BeamColumn::hold(int node, std::initializer_list<int> components) {
  for (const int c : components) held.push_back(dof(node, c));
}

void BeamColumn::add_state(const VectorXd& load) {
  const std::vector<int> kept = kept_dofs(stiffness.rows(), held);
  VectorXd u = VectorXd::Zero(stiffness.rows());
  VectorXd f(kept.size());
  for (std::size_t i = 0; i < kept.size(); ++i) f(i) = load(kept[i]);
  const VectorXd solved = solve_dense(reduced(stiffness, kept), f);
  for (std::size_t i = 0; i < kept.size(); ++i) u(kept[i]) = solved(i);
  const double h = length / elements;
  for (int e = 0; e < elements; ++e) {
    const Vector12d ue = u.segment<12>(6 * e);
    geometric.block<12, 12>(6 * e, 6 * e) +=
        beam_geometric(data, h, beam_forces(data, h, ue, {}, 0), beam_forces(data, h, ue, {}, 1));
  }
}

double BeamColumn::buckling_factor() const {
  const std::vector<int> kept = kept_dofs(stiffness.rows(), held);
  // -K_g u = (1 / factor) K u; K is positive, so the largest 1 / factor is the one sought.
  const VectorXd values = generalized_eigenvalues(-reduced(geometric, kept), reduced(stiffness, kept));
  const double largest = values(values.size() - 1);
  if (!(largest > 0)) throw std::runtime_error("no positive buckling factor: the state stiffens every movement");
  return 1 / largest;
}

} // namespace bedbow::verification
