#include "mesh/piece/fastener.h"
#include "mesh/piece/si.h"

#include <array>
#include <cmath>

namespace bedbow {

namespace {

using si::mm;

// [mm] ISO 273 medium hole; ISO 4032 nut height and across flats; ISO 7089 washer diameter and thickness. From memory.
struct Sizes {
  double d, hole, nut, flats, washer, washer_thickness;
};
constexpr std::array<Sizes, 17> metric_sizes{{{3, 3.4, 2.4, 5.5, 7, 0.5},
                                              {4, 4.5, 3.2, 7, 9, 0.8},
                                              {5, 5.5, 4.7, 8, 10, 1},
                                              {6, 6.6, 5.2, 10, 12, 1.6},
                                              {8, 9, 6.8, 13, 16, 1.6},
                                              {10, 11, 8.4, 16, 20, 2},
                                              {12, 13.5, 10.8, 18, 24, 2.5},
                                              {14, 15.5, 12.8, 21, 28, 2.5},
                                              {16, 17.5, 14.8, 24, 30, 3},
                                              {18, 20, 15.8, 27, 34, 3},
                                              {20, 22, 18, 30, 37, 3},
                                              {22, 24, 19.4, 34, 39, 3},
                                              {24, 26, 21.5, 36, 44, 4},
                                              {27, 30, 23.8, 41, 50, 4},
                                              {30, 33, 25.6, 46, 56, 4},
                                              {33, 36, 28.7, 50, 60, 5},
                                              {36, 39, 31, 55, 66, 5}}};

} // namespace

Hardware hardware(const Thread& thread) {
  const double d = thread.d;
  for (const Sizes& r : metric_sizes)
    if (!thread.inch && std::abs(r.d * mm - d) < 1e-9)
      return {r.hole * mm,
              r.nut * mm,
              r.flats * mm,
              1.5 * d, // ISO 4762: head 1.5 d from M8 up
              r.washer * mm,
              r.washer_thickness * mm,
              "ISO 273 medium, ISO 4032, ISO 4762, ISO 7089 (from memory)"};
  return {1.1 * d, 0.8 * d, 1.5 * d, 1.5 * d, 1.9 * d, 0.15 * d, "proportions of d, common practice, no source"};
}

} // namespace bedbow
