/// \file
/// Clamp fingers: the fewest widths whose sets make every box width of a step. Pure counting, no mechanics.
/// See find_fingers for the argument.
#pragma once

#include <span>
#include <vector>

namespace bedbow {

/// The task. Lengths in m.
struct FingerTask {
  double length = 0; ///< available for the fingers along the bend line
  double step = 0;   ///< of the box widths wanted: step, 2 step, ... up to the length
  bool fill = false; ///< all fingers together must fill the length; else their total is free
  double gap = 0;    ///< between neighbouring fingers
  double kerf = 0;   ///< lost by each cut of the bar
};

/// How to make one box width.
struct FingerUse {
  double width = 0;         ///< of the box [m], a whole number of steps
  double set = 0;           ///< width of the chosen fingers with their gaps [m]; at most one gap less than width
  std::vector<int> fingers; ///< indices into pieces; empty where the width can't be made
};

struct FingerSet {
  std::vector<double> pieces; ///< widths to cut, ascending [m]
  double filler = 0; ///< if the length is not a whole number of steps: width of the piece that fills the rest [m]
  double total = 0;  ///< all pieces with their gaps [m]
  double stock = 0;  ///< bar to cut them from: pieces and the kerfs between them [m]
  std::vector<FingerUse> uses;  ///< one per width wanted, ascending
  std::vector<double> not_made; ///< widths that no set makes [m]
};

/// The fewest pieces. With N steps in the length, at least floor(log2 N) + 1 are needed, since m pieces make no more
/// than 2^m - 1 sets. Free total: 1, 2, 4, ... steps. Filling: an exact search for as many pieces that sum to N steps;
/// where the length is not a whole number of steps one more piece is needed, the filler.
/// Each piece is a gap narrower than its steps, so that a set with its gaps is one gap narrower than its box.
/// Throws std::invalid_argument naming the size at fault.
FingerSet find_fingers(const FingerTask& task);

/// Which of the widths the available pieces make. \param pieces [m], at most 20. Throws std::invalid_argument.
FingerSet judge_fingers(const FingerTask& task, std::span<const double> pieces);

/// Fewest whole numbers, ascending, that sum to `total` and whose subset sums are every number from 1 to it; of those
/// the first in order. Exact search. \param total >= 1.
std::vector<int> complete_partition(int total);

} // namespace bedbow
