/// \file
/// Joints as rows: each joint spring becomes one scalar spring between two generalised displacements. Rows of the
/// apron's joints turn with its angle.
#pragma once

#include "solver/assembly/displacement_functional.h"

#include <array>
#include <utility>
#include <vector>

namespace bedbow {

/// Functionals of a row with their coefficients: at most three per side, or along one axis two per side.
class SpringTerms {
public:
  using Term = std::pair<int, double>; ///< (functional, coefficient)
  void add(int functional, double coefficient) { terms_[count_++] = {functional, coefficient}; }
  [[nodiscard]] const Term* begin() const { return terms_.data(); }
  [[nodiscard]] const Term* end() const { return terms_.data() + count_; }
  [[nodiscard]] bool empty() const { return count_ == 0; }

private:
  std::array<Term, 6> terms_;
  std::size_t count_ = 0;
};

/// elongation = sum coefficient * functional. Force f > 0 is tension: it pulls the two places together.
struct JointSpring {
  int joint = -1;        ///< index into Mesh::joints
  int direction = 0;     ///< of its six springs
  double compliance = 0; ///< 1 / stiffness [m/N]; 0 rigid
  UnilateralType sense = UnilateralType::both;
  double gap = 0; ///< elongation at which it is slack
  SpringTerms terms;
};

/// All functionals that the joints need, and the rows made from them at any apron angle.
class JointSprings {
public:
  JointSprings(const Mesh& mesh, const DofMap& map);

  [[nodiscard]] const std::vector<DisplacementFunctional>& functionals() const { return functionals_; }
  /// Adds another functional (outputs). \return its index.
  int add(DisplacementFunctional f);
  /// Rows at an apron angle, in the order of the joints. Screws are springs of the matrix and have none.
  /// \param mesh the one the set was made from.
  [[nodiscard]] std::vector<JointSpring> rows(const Mesh& mesh, double angle) const;

private:
  struct Side {
    bool apron = false;
    std::array<int, 6> of{-1, -1, -1, -1, -1, -1}; ///< functional of each displacement in the frame's axes
  };
  void add_side(const Mesh& mesh, const DofMap& map, const Joint& j, const Place& place, Side& side);
  void side_terms(const Side& side, const Eigen::Vector3d& direction, bool rotation, double sign,
                  JointSpring& row) const;

  bool plane_;
  std::vector<DisplacementFunctional> functionals_;
  std::vector<std::array<Side, 2>> sides_; ///< by joint
};

} // namespace bedbow
