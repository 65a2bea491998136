/// \file
/// Screw threads, their areas, strength grades, and the nuts, washers and holes that go with them.
/// Source: ISO 724 (basic sizes), ISO 898-1:2013, ASME B1.1, SAE J429, ASTM A574; see docs/theory/fasteners.md.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace bedbow {

/// A 60 degree thread of the ISO / Unified basic profile. Lengths in m.
struct Thread {
  std::string name; ///< "M20", "M20x1.5", "5/8-11"
  double d = 0;     ///< nominal diameter
  double pitch = 0;
  bool inch = false; ///< Unified: another constant in the stress area

  [[nodiscard]] double pitch_diameter() const { return d - 0.6495190528 * pitch; } ///< d2 = D2 = d - (3/8) sqrt3 P
  [[nodiscard]] double nut_minor() const { return d - 1.0825317547 * pitch; }      ///< D1 = d - (5/8) sqrt3 P
  [[nodiscard]] double core() const { return d - 1.2268693222 * pitch; }           ///< d3 = d - (17/24) sqrt3 P
};

/// The thread of that name: metric coarse "M3" to "M36", any metric "M20x1.5", Unified coarse "1/4-20" to "1-8",
/// with or without " UNC". \return nullopt for anything else.
std::optional<Thread> find_thread(std::string_view name);

/// The named thread, or the metric coarse one of a plain diameter; where there is none, coarse proportions (pitch an
/// eighth of the diameter; common practice, no source). \param diameter [m].
Thread thread_of_size(const std::string& name, double diameter);

/// Names for messages: "M3, M4, ... a fine pitch such as M20x1.5, or 1/4-20, ...".
std::string thread_names();

/// Diameter of the stressed circle [m]: d - 0.9382 P, ISO 898-1; Unified d - 0.9743 P, ASME B1.1 (from memory).
double stress_diameter(const Thread& thread);

/// Tensile stress area, that of the stressed circle [m^2].
double stress_area(const Thread& thread);

/// Area of the core, (pi/4) d3^2 [m^2].
double core_area(const Thread& thread);

/// Area sheared per length of engagement [m^2/m], basic profile. Source: FED-STD-H28.
struct ThreadShear {
  double bolt = 0; ///< pi D1/P (P/2 + (d2 - D1)/sqrt3): the screw's threads strip
  double nut = 0;  ///< pi d/P (P/2 + (d - D2)/sqrt3): the nut's threads strip
};
ThreadShear thread_shear(const Thread& thread);

/// Strength grade of a screw or stud.
struct Grade {
  std::string name;
  double proof = 0, yield = 0, tensile = 0; ///< [Pa]
  std::string source;
};

/// Grade by name at a nominal diameter [m]: ISO 898-1 classes "4.6" to "12.9", "SAE 2", "SAE 5", "SAE 8", "A574"
/// (alloy socket screws), stainless "A2-70", "A4-80". \return nullopt where there is none, or none of that diameter.
std::optional<Grade> find_grade(std::string_view name, double diameter);

/// Names for messages.
std::string grade_names();

/// Proof load [N]: proof stress times stress area.
double proof_load(const Thread& thread, const Grade& grade);

/// Young's modulus of studs, screws and pins, steel [Pa]: common practice, no source.
inline constexpr double fastener_E = 205e9;

/// Standard hardware of a thread. Lengths in m.
struct Hardware {
  double hole = 0;             ///< clearance hole
  double nut_height = 0;       ///< hexagon nut
  double across_flats = 0;     ///< of nut and hexagon head
  double socket_head = 0;      ///< diameter of a socket head
  double washer_diameter = 0;  ///< plain washer
  double washer_thickness = 0; ///< plain washer
  std::string source;
};

/// Hardware of a metric coarse size M3 to M36: ISO 273 medium, ISO 4032, ISO 4762, ISO 7089 (all from memory). For
/// other threads, proportions of d that are common practice.
Hardware hardware(const Thread& thread);

} // namespace bedbow
