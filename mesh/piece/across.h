/// \file
/// Functions across the width of a flat that bends across it: what its sections may do besides moving as a whole.
///
/// The movement of the flat's middle plane along its normal is
///   w(x, c) = sum phi_k(c) W_k(x) + sum chi_j(c) S_j(x),
/// bending from the first sum and shear deformation from the second. phi_0 = 1 and phi_1 = 2 c / b are the movements of
/// a rigid section; the others have no mean and equal values at both edges, so that W_0 is the mean movement and
/// phi_1's share the mean rotation. Source: docs/theory/strips.md.
#pragma once

#include <Eigen/Core>

#include <array>
#include <span>
#include <vector>

namespace bedbow {

/// Values of up to 24 functions at one place.
using AcrossVector = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, 24, 1>;

/// Functions and their derivatives by c at one place.
struct AcrossValues {
  AcrossVector phi;                ///< [1]
  AcrossVector slope;              ///< phi' [1/m]
  AcrossVector curvature;          ///< phi'' [1/m^2]; at a line the mean of both sides
  AcrossVector shear, shear_slope; ///< chi [1], chi' [1/m]
};

/// Lines of a flat where forces or feet of other bars stand, from the middle of its width [m].
struct AcrossLines {
  std::vector<double> feet;   ///< where a couple about the flat's length may enter: the curvature jumps there
  std::vector<double> points; ///< where forces stand: the shear force jumps there
};

class AcrossFunctions {
public:
  /// Products of two of them are integrated exactly by six Gauss points.
  static constexpr int greatest_degree = 5;

  /// \param width b [m] > 0. \param degree of the polynomials over the width, from 2 to greatest_degree.
  /// \param lines strictly inside the width. Throws std::invalid_argument otherwise.
  AcrossFunctions(double width, const AcrossLines& lines, int degree);

  [[nodiscard]] double width() const { return width_; }
  /// Number of functions phi, the two rigid ones included.
  [[nodiscard]] int bending() const { return static_cast<int>(coefficients_.rows()); }
  /// Number of functions chi.
  [[nodiscard]] int shearing() const { return static_cast<int>(shear_.size()); }
  /// Unknowns of a station besides its six displacements: the twist phi_1', value and slope of each further phi, the
  /// value of each chi, in this order.
  [[nodiscard]] int amplitudes() const { return 1 + 2 * (bending() - 2) + shearing(); }
  /// \param c from the middle of the width [m].
  [[nodiscard]] AcrossValues at(double c) const;
  /// Edges and lines, ascending [m]: between them all functions are polynomials.
  [[nodiscard]] std::vector<double> pieces() const;

private:
  /// A power of the distance beyond a place, on one side of it or, for Legendre's polynomials, on both.
  struct Generator {
    int side = 0; ///< +1, -1; 0: Legendre's polynomial of that degree
    int power = 0;
    double place = 0; ///< 2 c / b
    /// Value, first and second derivative by 2 c / b.
    [[nodiscard]] Eigen::Vector3d at(double xi) const;
  };
  void orthonormalise();

  double width_;
  std::vector<double> breaks_; ///< 2 c / b, ascending, -1 and 1 included
  std::vector<Generator> generators_, shear_;
  Eigen::MatrixXd coefficients_; ///< phi = coefficients * generators
};

/// Points and weights of Gauss's rule of six points on [0, 1].
std::span<const std::array<double, 2>, 6> gauss6();

} // namespace bedbow
