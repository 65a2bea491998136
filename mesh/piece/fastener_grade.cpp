#include "mesh/piece/fastener.h"
#include "mesh/piece/si.h"

#include <array>
#include <limits>

namespace bedbow {

namespace {

using si::inch, si::ksi, si::mm, si::MPa;
constexpr double any = std::numeric_limits<double>::infinity();

// One row per grade and range of diameters, above < d <= up_to.
struct Strength {
  const char* name;
  double above, up_to;
  double proof, yield, tensile;
  const char* source;
};

constexpr const char* iso = "ISO 898-1:2013 Table 3";
constexpr const char* iso_soft = "ISO 898-1:2013 Table 3 (yield, tensile from memory)";
constexpr const char* iso_memory = "ISO 898-1 (from memory)";
constexpr const char* sae = "SAE J429";
constexpr const char* sae_memory = "SAE J429 (from memory)";
constexpr const char* astm = "ASTM A574";
constexpr const char* astm_memory = "ASTM A574 (yield from memory)"; // the tables read print 153 ksi for it
constexpr const char* iso_stainless = "ISO 3506-1 (from memory); no proof stress stated, Rp0.2 used instead";

constexpr std::array strengths{
    Strength{"4.6", 0, any, 225 * MPa, 240 * MPa, 400 * MPa, iso_soft},
    Strength{"4.8", 0, any, 310 * MPa, 340 * MPa, 420 * MPa, iso_memory},
    Strength{"5.6", 0, any, 280 * MPa, 300 * MPa, 500 * MPa, iso_memory},
    Strength{"5.8", 0, any, 380 * MPa, 420 * MPa, 520 * MPa, iso_soft},
    Strength{"6.8", 0, any, 440 * MPa, 480 * MPa, 600 * MPa, iso_soft},
    Strength{"8.8", 0, 16 * mm, 580 * MPa, 640 * MPa, 800 * MPa, iso},
    Strength{"8.8", 16 * mm, any, 600 * MPa, 660 * MPa, 830 * MPa, iso},
    Strength{"9.8", 0, 16 * mm, 650 * MPa, 720 * MPa, 900 * MPa, iso_soft},
    Strength{"10.9", 0, any, 830 * MPa, 940 * MPa, 1040 * MPa, iso},
    Strength{"12.9", 0, any, 970 * MPa, 1100 * MPa, 1220 * MPa, iso},
    Strength{"SAE 2", 0, 0.75 * inch, 55 * ksi, 57 * ksi, 74 * ksi, sae},
    Strength{"SAE 2", 0.75 * inch, 1.5 * inch, 33 * ksi, 36 * ksi, 60 * ksi, sae_memory},
    Strength{"SAE 5", 0, 1 * inch, 85 * ksi, 92 * ksi, 120 * ksi, sae},
    Strength{"SAE 5", 1 * inch, 1.5 * inch, 74 * ksi, 81 * ksi, 105 * ksi, sae},
    Strength{"SAE 8", 0, 1.5 * inch, 120 * ksi, 130 * ksi, 150 * ksi, sae},
    Strength{"A574", 0, 0.5 * inch, 140 * ksi, 162 * ksi, 180 * ksi, astm_memory},
    Strength{"A574", 0.5 * inch, any, 135 * ksi, 153 * ksi, 170 * ksi, astm},
    Strength{"A2-70", 0, 24 * mm, 450 * MPa, 450 * MPa, 700 * MPa, iso_stainless},
    Strength{"A4-80", 0, 24 * mm, 600 * MPa, 600 * MPa, 800 * MPa, iso_stainless},
};

} // namespace

std::optional<Grade> find_grade(std::string_view name, double diameter) {
  constexpr double slack = 1e-9; // 16 mm given as 0.63 in must still count as 16 mm
  for (const Strength& r : strengths)
    if (r.name == name && diameter > r.above + slack && diameter <= r.up_to + slack)
      return Grade{r.name, r.proof, r.yield, r.tensile, r.source};
  return {};
}

std::string grade_names() {
  std::string out;
  std::string_view last;
  for (const Strength& r : strengths) {
    if (last == r.name) continue;
    out.append(out.empty() ? "" : ", ").append(r.name);
    last = r.name;
  }
  return out;
}

} // namespace bedbow
