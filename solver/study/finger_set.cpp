#include "solver/study/finger_set.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <stdexcept>
#include <string>

namespace bedbow {

namespace {

// Sets are enumerated one by one: a million of them.
constexpr std::size_t most_pieces = 20;
constexpr int most_steps = (1 << most_pieces) / 2 - 1;
// Widths that differ by less are the same: far below what a saw can do, far above rounding.
constexpr double same = 1e-8;

// Fingers chosen so far and still to choose. Every number up to `sum` is made; a next piece up to sum + 1 leaves no
// gap.
bool extend(std::vector<int>& pieces, int sum, int left, int total) {
  if (left == 0) return sum == total;
  const int least = pieces.empty() ? 1 : pieces.back();
  for (int next = least; next <= sum + 1; ++next) {
    const int reached = sum + next;
    const std::int64_t most = (static_cast<std::int64_t>(reached + 1) << (left - 1)) - 1; // doubling from here on
    const std::int64_t fewest = reached + static_cast<std::int64_t>(left - 1) * next;     // repeating from here on
    if (fewest > total) return false;
    if (most < total) continue;
    pieces.push_back(next);
    if (extend(pieces, reached, left - 1, total)) return true;
    pieces.pop_back();
  }
  return false;
}

void check(const FingerTask& t) {
  if (!(t.length > 0) || !std::isfinite(t.length))
    throw std::invalid_argument("fingers: length must be greater than 0");
  if (!(t.step > 0)) throw std::invalid_argument("fingers: step must be greater than 0");
  if (!(t.gap >= 0) || !(t.kerf >= 0)) throw std::invalid_argument("fingers: gap and kerf must not be negative");
  if (t.gap >= t.step)
    throw std::invalid_argument("fingers: the gap must be smaller than the step, or the narrowest finger vanishes");
  if (t.step > t.length + same) throw std::invalid_argument("fingers: the step must not be greater than the length");
  if (t.length / t.step > most_steps)
    throw std::invalid_argument("fingers: more than " + std::to_string(most_steps) + " steps; give a greater step");
}

// Whole steps that fit in the length, with one gap added at the end.
int steps_in(const FingerTask& t) {
  return static_cast<int>(std::floor((t.length + t.gap + same) / t.step));
}

std::vector<int> doubling(int steps) {
  std::vector<int> out;
  for (int piece = 1; piece <= steps; piece *= 2) out.push_back(piece);
  return out;
}

// Keeps the better of two sets for a width: fewer fingers, then the wider set.
void offer(FingerUse& use, std::uint32_t& best, std::uint32_t mask, double set) {
  const int count = std::popcount(mask), least = std::popcount(best);
  if (best != 0 && (count > least || (count == least && set <= use.set + same))) return;
  best = mask;
  use.set = set;
}

} // namespace

std::vector<int> complete_partition(int total) {
  if (total < 1) throw std::invalid_argument("fingers: the total must be at least one step");
  std::vector<int> pieces;
  for (int count = 1;; ++count)
    if (extend(pieces, 0, count, total)) return pieces;
}

FingerSet judge_fingers(const FingerTask& task, std::span<const double> pieces) {
  check(task);
  if (pieces.size() > most_pieces)
    throw std::invalid_argument("fingers: at most " + std::to_string(most_pieces) + " pieces can be searched");
  for (const double piece : pieces)
    if (!(piece > 0)) throw std::invalid_argument("fingers: every piece must be wider than 0");
  FingerSet out;
  out.pieces.assign(pieces.begin(), pieces.end());
  std::ranges::sort(out.pieces);
  const int steps = steps_in(task);
  out.uses.resize(static_cast<std::size_t>(steps));
  std::vector<std::uint32_t> best(out.uses.size(), 0);
  std::vector<double> width(std::size_t{1} << out.pieces.size(), 0); // with one gap per finger
  for (std::uint32_t mask = 1; mask < width.size(); ++mask) {
    const auto lowest = static_cast<std::size_t>(std::countr_zero(mask));
    width[mask] = width[mask & (mask - 1)] + out.pieces[lowest] + task.gap;
    const double set = width[mask] - task.gap;
    const auto box = static_cast<int>(std::ceil((set - same) / task.step)); // the narrowest box that it fits
    if (box < 1 || box > steps || box * task.step - set > task.gap + same) continue;
    const auto i = static_cast<std::size_t>(box - 1);
    offer(out.uses[i], best[i], mask, set);
  }
  for (std::size_t i = 0; i < out.uses.size(); ++i) {
    out.uses[i].width = static_cast<double>(i + 1) * task.step;
    for (std::uint32_t rest = best[i]; rest != 0; rest &= rest - 1)
      out.uses[i].fingers.push_back(std::countr_zero(rest));
    if (best[i] == 0) out.not_made.push_back(out.uses[i].width);
  }
  if (!out.pieces.empty()) {
    out.total = width.back() - task.gap;
    const auto count = static_cast<double>(out.pieces.size());
    out.stock = out.total - (count - 1) * task.gap + (count - 1) * task.kerf;
  }
  return out;
}

FingerSet find_fingers(const FingerTask& task) {
  check(task);
  const int steps = steps_in(task);
  std::vector<double> pieces;
  for (const int count : task.fill ? complete_partition(steps) : doubling(steps))
    pieces.push_back(count * task.step - task.gap);
  const double left = task.length - (steps * task.step - task.gap) - task.gap; // space for a filler and its gap
  const double filler = task.fill && left > same ? left : 0;
  if (filler > 0) pieces.push_back(filler);
  FingerSet out = judge_fingers(task, pieces);
  out.filler = filler;
  return out;
}

} // namespace bedbow
