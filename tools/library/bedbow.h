/// \file
/// bedbow as a library: from the text of a case to what was found, in a dozen calls. Standard C++20 types only, so a
/// program needs no other header, and the library's own innards may change without it.
///
///     bedbow::library::Case folder = bedbow::library::Case::from_file("case.toml");
///     bedbow::library::Result r = folder.with("sheet.thickness", "\"2 mm\"").solve();
///     std::printf("%s: angle spread %.3f deg\n", r.pass ? "pass" : "fail", r.steps.back().bow.angle_spread_deg);
///
/// Numbers are in mm, N, MPa, deg as the names say. A Case and a Result are values: copy them, use them in several
/// threads, one thread each. Versions: see VERSION_MAJOR below and docs/guide/library.md.
#pragma once

#include <filesystem>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#define BEDBOW_LIBRARY __attribute__((visibility("default")))

namespace bedbow::library {

/// What went wrong; what() has one line per problem, as the program prints them.
class BEDBOW_LIBRARY Error : public std::runtime_error {
public:
  enum class Kind {
    case_file, ///< the case is wrong
    file,      ///< a file could not be read or written
    unsolvable ///< a free movement, or contact that does not settle
  };
  Error(Kind kind, const std::string& what)
      : std::runtime_error(what)
      , kind(kind) {}
  ~Error() override;
  Kind kind;
};

/// Version of the library, "0.1.0". The header's shape changes with the first number only (semantic versioning).
BEDBOW_LIBRARY std::string version();

/// Greatest distance of each body's bend-line edge from its chord, smallest zone between two parallel lines (ISO 1101),
/// and the bend angle's mean and spread. NaN where a figure has no meaning in its step.
struct Bow {
  double clamp_mm, bed_mm, apron_mm;
  double clamp_straightness_mm, bed_straightness_mm, apron_straightness_mm;
  double angle_mean_deg, angle_spread_deg;
};

/// Along the bend line, one entry per station. Clamp force: compression positive.
struct BendLine {
  std::vector<double> x_mm, nose_z_mm, bed_z_mm, apron_n_mm, angle_deviation_deg, clamp_N_per_mm;
};

/// A bar at its worst place.
struct Bar {
  std::string name;
  double stress_MPa, at_x_mm, utilisation;
};

/// A post, cam, hinge, row of screws, support or tie.
struct Joint {
  std::string kind, name;
  double force_N, utilisation;
};

struct Dial {
  std::string name;
  double x_mm, y_mm, z_mm;
};

struct Step {
  std::string name; ///< "clamp", "bend 90 deg", "load"
  double angle_deg;
  Bow bow;
  BendLine bend_line;
  std::vector<Bar> bars;
  std::vector<Joint> joints;
  std::vector<Dial> dials;
};

/// What a solved case says.
class BEDBOW_LIBRARY Result {
public:
  bool pass = true;                 ///< within all limits
  std::vector<std::string> reasons; ///< where not
  std::vector<Step> steps;
  double mass_kg = 0;
  /// The whole of results.json.
  [[nodiscard]] std::string json() const;
  /// The table that `bedbow solve` prints, with its cautions.
  [[nodiscard]] std::string summary() const;
  /// Writes the result files of `bedbow solve`, all or none. \return their names. Throws Error (file).
  std::vector<std::string> write(const std::filesystem::path& directory) const;

private:
  friend class Case;
  struct Inner;
  std::shared_ptr<const Inner> inner_;
};

/// A case that has been read and understood.
class BEDBOW_LIBRARY Case {
public:
  /// \param text TOML as docs/case-format.md describes it. \param name what messages call it. Throws Error (case_file).
  static Case from_text(std::string_view text, const std::string& name = "case");
  /// Throws Error (file, case_file).
  static Case from_file(const std::filesystem::path& file);
  /// The same case with another value under a dotted key; elements of arrays of tables by their name, as in
  /// "bed.bar.web.height". \param value as TOML writes it: "\"80 mm\"", "0.3", "true". Throws Error (case_file).
  [[nodiscard]] Case with(const std::string& key, const std::string& value) const;
  [[nodiscard]] std::string title() const;
  [[nodiscard]] std::vector<std::string> warnings() const;
  /// What holds because the case says nothing else.
  [[nodiscard]] std::vector<std::string> assumptions() const;
  /// Clamps and bends. Throws Error (unsolvable), naming what moves and where.
  [[nodiscard]] Result solve() const;

private:
  struct Inner;
  std::shared_ptr<const Inner> inner_;
};

} // namespace bedbow::library
