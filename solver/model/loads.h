/// \file
/// Loads of one step: self-weight, the case's loads, and those of the sheet, as nodal loads and as line loads for the
/// recovery inside elements. Everything in the axes of each part's frame.
#pragma once

#include "solver/assembly/assembly.h"
#include "solver/sheet/sheet_law.h"

#include <string>
#include <vector>

namespace bedbow {

/// A load on a rigid arm: it matters in buckling, since it moves as the arm rotates.
struct ArmForce {
  int node = -1; ///< reference node that carries the arm
  Eigen::Vector3d arm, force;
};

struct StepLoads {
  std::vector<Vector6d> nodal;     ///< by reference node: force and moment [N, N m]
  std::vector<BeamLineLoad> beams; ///< by beam element, local axes
  std::vector<ArmForce> arms;      ///< of the loads in `nodal`; not those applied through elements
  double greatest = 0;             ///< greatest resultant of a single load, whatever the mesh: for relative checks [N]
};

/// One of the sheet's line loads, uniform over its width.
struct SheetLine {
  std::string what; ///< "push on the nose"
  BodyKind on = BodyKind::clamp;
  double y = 0;                                ///< where along y, apron at 0 deg; z = 0 [m]
  Eigen::Vector3d q = Eigen::Vector3d::Zero(); ///< axes of the body's frame [N/m]
};

class LoadBuilder {
public:
  LoadBuilder(const Machine& machine, const Mesh& mesh, const DofMap& map, const ElementData& data);

  /// Loads of the sheet at `angle` on the existing bodies, source by source.
  [[nodiscard]] std::vector<SheetLine> sheet_lines(const SheetLoads& sheet, double angle) const;
  void add_sheet_line(const SheetLine& line, StepLoads& loads) const;
  /// Self-weight, whether the case requests it or not.
  void add_gravity(double angle, StepLoads& loads) const;
  /// One [[load]] entry.
  void add_given(const Load& load, double angle, StepLoads& loads) const;

  /// Self-weight (if the case requests it) and [[load]] entries with the apron at `angle`.
  void add_applied_loads(double angle, StepLoads& loads) const;
  /// Line loads of the sheet being bent at `angle`: on nose, bed and apron, in equilibrium with each other.
  void add_sheet(const SheetLoads& sheet, double angle, StepLoads& loads) const;
  /// A force and moment on a place, axes of its frame.
  void add_point(const Place& place, const Eigen::Vector3d& force, const Eigen::Vector3d& moment,
                 StepLoads& loads) const;
  [[nodiscard]] StepLoads empty() const;

private:
  /// For buckling: a force that moves with its rotating arm.
  void note_arm(int node, const Eigen::Vector3d& arm, const Eigen::Vector3d& force, StepLoads& loads) const;
  void add_node(int ref_of, const Eigen::Vector3d& arm, const Eigen::Vector3d& force, const Eigen::Vector3d& moment,
                StepLoads& loads) const;
  /// Uniform line load [N/m], and couple per length [N m/m], frame axes, acting at `arm` from the element's axis.
  void add_element_line(int element, const Eigen::Vector3d& q, const Eigen::Vector3d& couple,
                        const Eigen::Vector3d& arm, StepLoads& loads) const;
  void add_bar_line(const Ref& bar, double from, double to, double y, double z, const Eigen::Vector3d& q,
                    StepLoads& loads) const;
  /// The share of a line load on whole elements of a strip, from the first to before the last, that its amplitudes
  /// take.
  void add_strip_line(const BarLayout& bar, int first, int last, double y, double z, const Eigen::Vector3d& q,
                      StepLoads& loads) const;
  void add_nose_line(double from, double to, double y, double z, const Eigen::Vector3d& q, StepLoads& loads) const;
  void add_pressure(const Load& load, StepLoads& loads) const;
  /// A force and moment shared by a set of the user mesh's points.
  void add_set(const Load& load, double angle, StepLoads& loads) const;
  void add_given_line(const Load& load, const Ref& on, const Eigen::Vector3d& q, StepLoads& loads) const;
  [[nodiscard]] Ref carrier_of(const Load& load) const;

  const Machine& machine_;
  const Mesh& mesh_;
  const DofMap& map_;
  const ElementData& data_;
};

/// A step's nodal loads as the right-hand side of a component's free unknowns.
Eigen::VectorXd gather(const DofMap& map, const Substructure& component, const StepLoads& loads);

/// Their resultant about the component's centre: force, moment.
Vector6d resultant(const Mesh& mesh, const Substructure& component, const StepLoads& loads);

} // namespace bedbow
