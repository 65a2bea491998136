/// \file
/// An elastic body of boxes, in the plane or in space, that lies on a one-sided bed and on cams: GetFEM's quadratic
/// elements (9 or 27 nodes), one sparse factorization, and the contact solved on the compliance of the land's nodes.
/// Millimetres, newtons, MPa. The last direction is up. Nothing of bedbow is used here.
#pragma once

#include "tests/reference/solid.h"
#include <Eigen/Dense>

#include <memory>

namespace referee {

/// Ascending places of the element edges in one direction.
using Line = std::vector<double>;

/// A line that has all `marks`, with elements of `least` beside `focus` that grow by `growth` up to `most` away from
/// it.
Line graded(const Line& marks, double focus, double least, double growth, double most);

/// Integration point on a face of the outer surface.
struct FacePoint {
  Point at;
  double area;                                 ///< its share of the face [mm2]; in the plane: length [mm]
  std::vector<std::pair<int, double>> heights; ///< unknown that moves up, and its shape function
};

/// The body on its own: held only at the pins and in symmetry planes, so that loads must balance by themselves.
class Body {
public:
  struct Shape {
    std::vector<Line> lines;  ///< by direction: two in the plane (plane strain), three in space
    std::vector<Box> solid;   ///< union of boxes, their faces among the lines
    std::vector<Box> sliding; ///< faces of the surface held along their normal: symmetry planes
    std::vector<Pin> pins;
    double E = 210000, nu = 0.3;
  };
  explicit Body(const Shape& shape);
  ~Body();

  int elements() const, unknowns() const;

  /// Integration points of the surface in a flat box.
  std::vector<FacePoint> face(const Box& patch) const;
  /// The force 1 N up, spread evenly over a patch: a vector over all unknowns; its product with a displacement is
  /// the patch's mean height.
  Eigen::VectorXd unit(const Box& patch) const;
  /// Unknowns that move up or along `direction` at the node there; throws where there is none.
  int unknown(const Point& at, int direction) const;
  Point place(int unknown) const;
  /// Displacements, one column for each of the loads.
  Eigen::MatrixXd solve(const Eigen::MatrixXd& loads) const;

private:
  struct Kept;
  std::unique_ptr<Kept> kept_;
};

/// A body on a bed that only presses, and on a cam that holds the mean height of its patch at zero.
struct Pressing {
  Box land, cam;
  Eigen::VectorXd load;
  std::vector<double> beds; ///< stiffnesses of the bed [N/mm3], each a solution of its own
};

/// What the bed does at one of its points.
struct BedForce {
  Point at;
  double force; ///< [N] up
};

struct Pressed {
  Eigen::VectorXd u; ///< over all unknowns of the body [mm]
  double cam = 0;    ///< [N] up
  std::vector<BedForce> bed;
  int rounds = 0; ///< until the set of pressed points stood
};

/// One solution for each stiffness of the bed; throws when the set of pressed points does not settle.
std::vector<Pressed> press(const Body& body, const Pressing& pressing);

/// A load that balances the cam's force without a bed, in the frame where the cam's mean height and that of `still`
/// are zero.
Pressed balance(const Body& body, const Box& cam, const Eigen::VectorXd& load, const Box& still);

} // namespace referee
