// A folder built of plain structs, without any file: which height of the clamp's rib keeps the bend angle within
// limits. Built against the installed library, as thickness.cpp.
#include <bedbow/bedbow.h>

#include <cstdio>

using namespace bedbow::library;

static Machine folder(double rib_mm) {
  Machine m{.title = "bench folder with a rib of " + std::to_string(static_cast<int>(rib_mm)) + " mm"};
  m.sheet = Machine::Sheet{.material = "DC01", .thickness_mm = 1, .width_mm = 500, .centre_mm = 300, .flange_mm = 25};
  m.sheet->inside_radius_mm = 1.5;
  m.sheet->grip_mm = 15;
  m.bed = {.length_mm = 600,
           .material = "S275JR",
           .bars = {{"web", "rectangle", {{"width", 40}, {"height", 100}}, 20, -50}}};
  m.clamp = {.length_mm = 600,
             .material = "S275JR",
             .bars = {{"rib", "rectangle", {{"width", 40}, {"height", rib_mm}}, 22.5, 1 + rib_mm / 2}}};
  m.apron = {.length_mm = 600,
             .material = "S275JR",
             .bars = {{"face", "rectangle", {{"width", 20}, {"height", 60}}, -10, -31}}};
  m.nose = {.setback_mm = 2.5, .land_mm = 15};
  for (const double x : {30.0, 570.0}) {
    const std::string name = x < 300 ? "left" : "right";
    m.posts.push_back({name, "bed.web", "clamp.rib", x, 20, "M16", "8.8", 100, 8000});
    m.cams.push_back({name, "bed.web", "clamp.rib", x, 36, 0.05, 33, 30});
    m.handles.push_back({name, "apron.face", x});
    m.supports.push_back({name, "bed.web", x});
  }
  m.supports.back().holds = {"y", "z", "rx"};
  for (const double x : {0.0, 600.0})
    m.hinges.push_back(
        {.name = {}, .one = "bed.web", .other = "apron.face", .x_mm = x, .pin_mm = 16, .bearing_length_mm = 20});
  m.limits = {.bow_mm = 0.25, .angle_deg = 0.5};
  m.angles_deg = {90};
  return m;
}

int main() {
  try {
    for (const double rib : {30.0, 45.0, 60.0, 80.0, 100.0}) {
      const Result r = Case::from_machine(folder(rib)).solve();
      const Bow& bow = r.steps.back().bow;
      std::printf("rib %3.0f mm: clamp bow %.3f mm, angle spread %.3f deg, %.1f kg, %s\n", rib, bow.clamp_mm,
                  bow.angle_spread_deg, r.mass_kg, r.pass ? "within limits" : r.reasons.front().c_str());
    }
  } catch (const Error& e) {
    std::fprintf(stderr, "%s\n", e.what());
    return 1;
  }
  return 0;
}
