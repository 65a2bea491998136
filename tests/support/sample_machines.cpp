#include "tests/support/sample_machines.h"

namespace bedbow::test {

std::string bench(std::string_view more) {
  return R"([bed]
length = "900 mm"
material = "S275JR"
[[bed.bar]]
name = "web"
shape = "rectangle"
width = "20 mm"
height = "100 mm"
at = ["10 mm", "-50 mm"]
[[support]]
name = "left"
bar = "bed.web"
x = "0 mm"
holds = ["x", "y", "z", "rx"]
[[support]]
name = "right"
bar = "bed.web"
x = "900 mm"
holds = ["y", "z", "rx"]
)" + std::string(more);
}

std::string folder(std::string_view more) {
  return R"([sheet]
material = "DC01"
thickness = "1 mm"
width = "400 mm"
centre = "350 mm"
flange = "20 mm"
inside_radius = "1.5 mm"
angle = "90 deg"
grip = "15 mm"
[bed]
length = "700 mm"
material = "S235JR"
[[bed.bar]]
name = "square"
shape = "rectangle"
width = "60 mm"
height = "60 mm"
at = ["30 mm", "-30 mm"]
[clamp]
length = "700 mm"
material = "S235JR"
nose = { land = "15 mm" }
[[clamp.bar]]
name = "flat"
shape = "rectangle"
width = "60 mm"
height = "60 mm"
at = ["32.5 mm", "31 mm"]
[apron]
length = "700 mm"
material = "S235JR"
[[apron.bar]]
name = "flat"
shape = "rectangle"
width = "50 mm"
height = "50 mm"
at = ["-26 mm", "-25 mm"]
[[support]]
name = "left foot"
bar = "bed.square"
x = "100 mm"
holds = ["x", "y", "z", "rx"]
[[support]]
name = "right foot"
bar = "bed.square"
x = "600 mm"
holds = ["y", "z", "rx"]
)" + std::string(more);
}

} // namespace bedbow::test
