// How thick a sheet may be before a limit of the case is exceeded, by halving: thickness CASE
// Built against the installed library:
//   cmake -S tools/library/example -B /tmp/example -DCMAKE_PREFIX_PATH=/where/installed && cmake --build /tmp/example
//   c++ -std=c++20 thickness.cpp $(pkg-config --cflags --libs bedbow)
#include <bedbow/bedbow.h>

#include <cstdio>
#include <string>

namespace {

/// Whether the machine bends a sheet of that thickness [mm] within its limits. A sheet for whose
/// flange the clamp leaves no room is an invalid case.
bool bends(const bedbow::library::Case& machine, double thickness) {
  using bedbow::library::Error;
  try {
    const auto r = machine.with("sheet.thickness", '"' + std::to_string(thickness) + " mm\"").solve();
    std::printf("%.2f mm %s, angle spread %.3f deg\n", thickness, r.pass ? "passes" : "fails",
                r.steps.back().bow.angle_spread_deg);
    return r.pass;
  } catch (const Error& e) {
    if (e.kind != Error::Kind::case_file) throw;
    std::printf("%.2f mm has no room to fold\n", thickness);
    return false;
  }
}

} // namespace

int main(int argc, char** argv) {
  using namespace bedbow::library;
  if (argc != 2) {
    std::fprintf(stderr, "usage: thickness CASE\n");
    return 2;
  }
  try {
    const Case machine = Case::from_file(argv[1]);
    double passes = 0.3, fails = 6; // mm
    while (fails - passes > 0.01) {
      const double t = (passes + fails) / 2;
      (bends(machine, t) ? passes : fails) = t;
    }
    std::printf("%s: up to %.2f mm\n", machine.title().c_str(), passes);
  } catch (const Error& e) {
    std::fprintf(stderr, "%s\n", e.what());
    return e.kind == Error::Kind::case_file ? 2 : e.kind == Error::Kind::unsolvable ? 3 : 4;
  }
  return 0;
}
