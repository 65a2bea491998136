/// \file
/// Functions that turn a solved step into its StepResult, one concern each.
#pragma once

#include "solver/findings/findings.h"
#include "solver/findings/shell_patches.h"
#include "solver/model/steps.h"

#include <memory>

namespace bedbow {

/// Greatest von Mises stress, utilisation and local peak of each bar, member and panel.
void fill_bars(const Model& model, const StepSolution& step, StepResult& out);

/// Forces of all joints that results list, in the order of their kinds.
void fill_joints(const Model& model, const StepSolution& step, StepResult& out);

/// Forces and moments of plain holds on what they hold, as further supports: a line's about its middle,
/// of a set about the mean of its points.
void fill_holds(const Model& model, const StepSolution& step, StepResult& out);

/// Dial readings.
void fill_dials(const Model& model, const StepSolution& step, StepResult& out);

/// Certificate: equilibrium of every part and of the whole, residual, one-sidedness. \param out with its joints filled
/// in.
void fill_checks(const Model& model, const StepSolution& step, StepResult& out);

/// Fields for writers. \param sections one shared copy per mesh section.
void fill_fields(const Model& model, const StepSolution& step,
                 const std::vector<std::shared_ptr<const Section>>& sections, StepResult& out);

/// Verdict against the limits over all steps. A utilisation above 100 % is a reason even without a limit; bend angle
/// and bow of the apron are checked in bend steps only.
Verdict judge(const Machine& machine, const std::vector<StepResult>& steps);

/// One warning for each part whose displacement is too large for small-displacement theory.
void warn_of_displacements(const Verdict& verdict, std::vector<std::string>& warnings);

/// Stress field of the shells of one owner, at its nodes.
struct ShellStress {
  std::vector<Eigen::Vector3d> points;          ///< as meshed, axes of the frame [m]
  std::vector<Vector6d> motion;                 ///< there, axes of the frame; of strips only where not judged
  std::vector<std::array<double, 3>> von_mises; ///< top, middle, bottom [Pa]
  std::vector<std::array<double, 4>> principal; ///< top s1 s2, bottom s1 s2 [Pa]; only where not judged
  std::vector<Eigen::Vector3d> normals;         ///< axes of the frame
  std::vector<std::array<int, 4>> quads;        ///< into points
  Frame frame = Frame::fixed;
  double thickness = 0;
  int material = 0;
  Ref owner;
  bool fingers = false; ///< plate fingers of the nose, which `owner` carries
  PatchPeak judged;     ///< of von Mises of the means over a patch; only where requested
};
std::vector<ShellStress> shell_stresses(const Model& model, const StepSolution& step);
/// The same with the stress that is judged: of resultants averaged over a disc as wide as the plate is thick
/// (theory/validity.md).
std::vector<ShellStress> judged_shell_stresses(const Model& model, const StepSolution& step);
/// The middle plane of a bar that bends across its width, as a surface of quads. \param layout of a strip.
ShellStress strip_stress(const Model& model, const StepSolution& step, const BarLayout& layout, bool judged);

} // namespace bedbow
