/// \file
/// One machine and many sheets: meshed, factored and condensed once; each sheet after that, wherever it lies and
/// however thick it is, is a few small dense systems.
#pragma once

#include "solver/findings/results.h"
#include "solver/model/model.h"

#include <optional>
#include <span>
#include <vector>

namespace bedbow {

/// Where a sheet lies along the bend line [m].
struct SheetPlace {
  double width = 0, centre = 0;
  [[nodiscard]] double left() const { return centre - width / 2; }
  [[nodiscard]] double right() const { return centre + width / 2; }
};

class PreparedMachine {
public:
  /// \param machine with a sheet, whose other sizes (flange, grip, ...) hold for all. \param places all that will be
  /// used: their ends become stations, and pads are made wherever one of them lies.
  /// Loose fingers are placed for the thickness of the machine's own sheet, whatever the sheet: their roots are
  /// correspondingly too high or too low on the bar. Throws std::invalid_argument for a machine without bed and clamp.
  PreparedMachine(const Machine& machine, const Registries& registries, std::span<const SheetPlace> places);
  PreparedMachine(const PreparedMachine&) = delete;
  PreparedMachine& operator=(const PreparedMachine&) = delete;

  /// What is computed: bow, angle and joints always, stress in the bars only where requested.
  enum class Look { movements, stresses };
  /// Solves clamp and bend steps with that sheet: the same as `analyse`, on this mesh. One caller at a time.
  /// \param place one of those given. \param material index into the machine's materials.
  Findings solve(const SheetPlace& place, int material, double thickness, Look look = Look::stresses);
  /// Steps solved so far: a sheet at one apron angle, or clamped, each.
  [[nodiscard]] long load_cases() const { return load_cases_; }

private:
  void lay_sheet(const SheetPlace& place, int material, double thickness);

  const Registries& registries_;
  Machine machine_;
  std::optional<Model> model_;
  std::vector<std::size_t> pads_; ///< joints between nose and bed, under a sheet or beyond it, by increasing x
  std::vector<double> shares_;    ///< of a joint's stiffness among those of one spot
  long load_cases_ = 0;
};

} // namespace bedbow
