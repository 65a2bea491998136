// Built by library.sh against the installed library: a machine of structs, as the text of its case (into the file named
// first) and solved (results.json on standard output).
#include <bedbow/bedbow.h>

#include <cstdio>
#include <string>

using namespace bedbow::library;

static Machine folder() {
  Machine m{.title = "structs: \"quoted\", a \\ and a line\nbreak, 20 \xC2\xB5m"};
  m.materials = {{.name = "own steel", .E_GPa = 205.5, .nu = 0.29, .density_kg_m3 = 7850, .yield_MPa = 1.0 / 3 * 825}};
  m.sheet = Machine::Sheet{.material = "DC01", .thickness_mm = 1, .width_mm = 500, .centre_mm = 300, .flange_mm = 25};
  m.sheet->inside_radius_mm = 1.5;
  m.sheet->grip_mm = 15;
  m.bed = {.length_mm = 600, .material = "own steel"};
  m.bed.bars = {{"web", "rectangle", {{"width", 20}, {"height", 100}}, 10, -60},
                {.name = "top", .sizes_mm = {{"width", 40}, {"height", 10}}, .y_mm = 20, .z_mm = -5}};
  m.bed.edge_bar = "top";
  m.clamp = {.length_mm = 600, .material = "S275JR"};
  m.clamp.bars = {{"rib", "tube", {{"width", 40}, {"height", 60}, {"wall", 4}}, 22.5, 31}};
  m.apron = {.length_mm = 600, .material = "S275JR"};
  m.apron.bars = {{"face", "rectangle", {{"width", 20}, {"height", 60}}, -10, -31}};
  m.apron.edge_bar = "face";
  m.nose = {.setback_mm = 2.5, .land_mm = 15};
  m.welds = {{.name = "top on web", .one = "bed.top", .other = "bed.web"}};
  for (const double x : {30.0, 570.0}) {
    const std::string name = x < 300 ? "left" : "right";
    m.posts.push_back({name, "bed.web", "clamp.rib", x, 20, "M16", "8.8", 100, 8000});
    m.cams.push_back({name, "bed.top", "clamp.rib", x, 36, 0.1, 30, 20});
    m.handles.push_back({name, "apron.face", x, 400});
    m.supports.push_back({name, "bed.web", x});
  }
  m.supports.back().holds = {"y", "z", "rx"};
  for (const double x : {0.0, 600.0})
    m.hinges.push_back(
        {x < 300 ? "left" : "right", "bed.top", "apron.face", x, 16, 20, "pin_material = \"bolt steel 12.9\""});
  m.dials = {{"middle", "clamp.rib", 300, 0, 1}};
  m.limits = {.bow_mm = 0.25, .angle_deg = 0.5, .utilisation = 0.67};
  m.element_size_mm = 30;
  m.angles_deg = {0, 90};
  return m;
}

int main(int argc, char** argv) {
  if (argc != 2) return 2;
  try {
    Machine m = folder();
    std::FILE* file = std::fopen(argv[1], "w");
    if (!file) return 4;
    std::fputs(m.toml().c_str(), file);
    std::fclose(file);
    std::fputs(Case::from_machine(m).solve().json().c_str(), stdout);
    m.posts.front().thread = "M99.5"; // no such thread: refused as in a file
    Case::from_machine(m);
  } catch (const Error& e) {
    std::fprintf(stderr, "%s\n", e.what());
    return e.kind == Error::Kind::case_file ? 10 : 11;
  }
  return 0;
}
