/// \file
/// Four doubles side by side, as the compilers' own vector type: AVX registers where the processor level has them,
/// pairs of SSE registers elsewhere. Always passed by pointer, never by value, so that the calling convention does
/// not depend on the processor level.
#pragma once

#include <cstddef>
#include <new>
#include <vector>

namespace bedbow::linear {

typedef double Vec __attribute__((vector_size(32), may_alias)); // NOLINT(modernize-use-using)

inline constexpr int lanes = 4;

inline Vec& vec(double* p) {
  return *reinterpret_cast<Vec*>(p);
}
inline const Vec& vec(const double* p) {
  return *reinterpret_cast<const Vec*>(p);
}

/// Memory that starts on a cache line, so that vectors never straddle two.
template <class T> struct LineAllocator {
  using value_type = T;
  static constexpr std::align_val_t line{64};
  LineAllocator() = default;
  template <class U> LineAllocator(const LineAllocator<U>&) {} // NOLINT(google-explicit-constructor)
  T* allocate(std::size_t n) { return static_cast<T*>(::operator new(n * sizeof(T), line)); }
  void deallocate(T* p, std::size_t) { ::operator delete(p, line); }
  bool operator==(const LineAllocator&) const { return true; }
};

using AlignedDoubles = std::vector<double, LineAllocator<double>>;

} // namespace bedbow::linear
