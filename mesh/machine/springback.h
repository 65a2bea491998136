/// \file
/// How much further than wanted a bend is swung, by where the sheet gives.
#pragma once

namespace bedbow {

/// Springback by where it arises [rad]: the apron swings so much further than the wanted angle.
struct Springback {
  double arc = 0;    ///< of the bend itself
  double flange = 0; ///< of the flange between the bend and where the apron bears
  double grip = 0;   ///< of the sheet under the nose, held by the nose's edge and the bed `grip` behind it
  [[nodiscard]] double elastic() const { return flange + grip; }
  [[nodiscard]] double sum() const { return arc + flange + grip; }
};

} // namespace bedbow
