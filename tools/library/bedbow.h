/// \file
/// bedbow as a library: from the text of a case, or from plain structs, to the results, in a dozen calls. Standard
/// C++20 types only, so a program needs no other header, and the library's internals may change without affecting it.
///
///     bedbow::library::Case folder = bedbow::library::Case::from_file("case.toml");
///     bedbow::library::Result r = folder.with("sheet.thickness", "\"2 mm\"").solve();
///     std::printf("%s: angle spread %.3f deg\n", r.pass ? "pass" : "fail", r.steps.back().bow.angle_spread_deg);
///
/// Numbers are in mm, N, MPa, deg as the names say. A Case and a Result are values: copy them, use them in several
/// threads, one thread each. Versions: see VERSION_MAJOR below and docs/guide/library.md.
#pragma once

#include <filesystem>
#include <limits>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#define BEDBOW_LIBRARY __attribute__((visibility("default")))

namespace bedbow::library {

/// A machine in plain structs, instead of the text of a case: the same bodies, bars and joints, in mm, N, MPa and deg.
/// Omitted values (NaN, an empty string, an empty list) are omitted in the case; defaults are in docs/case-format.md.
/// `more` of any part takes further lines of the case, for keys without a field here: more = "land = \"15 mm\"".
/// Places are those of docs/case-format.md: x along the bend line from the bed's left end, y to the rear, z up.
struct BEDBOW_LIBRARY Machine {
  static constexpr double left_out = std::numeric_limits<double>::quiet_NaN();
  /// A material of the case; common ones are built in by their designation ("S275JR", "DC01").
  struct Material {
    std::string name;
    double E_GPa = left_out, nu = left_out, density_kg_m3 = left_out;
    double yield_MPa = left_out, tensile_MPa = left_out, K_MPa = left_out, n = left_out;
    std::string more{};
  };
  struct Sheet {
    std::string material;
    double thickness_mm = left_out, width_mm = left_out, centre_mm = left_out, flange_mm = left_out;
    double inside_radius_mm = left_out, angle_deg = 90, grip_mm = left_out;
    std::string moment_law{}, more{};
  };
  /// Sizes by the keys of the shape: {{"width", 16}, {"height", 80}}. (y, z) of the centroid; a stacked bar ("on
  /// bed.web") needs one of the two, or none.
  struct Bar {
    std::string name, shape = "rectangle";
    std::vector<std::pair<std::string, double>> sizes_mm{};
    double y_mm = left_out, z_mm = left_out;
    bool plate = false; ///< shells instead of a beam
    std::string material{}, more{};
  };
  struct Body {
    double length_mm = left_out, start_mm = left_out;
    std::string material{};
    std::vector<Bar> bars{};
    std::string edge_bar{}; ///< which bar carries the bed's edge, the apron's face, the clamp's nose
    std::string more{};
  };
  struct Nose {
    double setback_mm = left_out, land_mm = left_out;
    std::string more{};
    double radius_mm = left_out; ///< of the rounded edge; omitted: sharp
  };
  /// Between two bars, "bed.web" and "clamp.spine". Omitted coordinates are taken from where they meet.
  struct Post {
    std::string name, one, other;
    double x_mm = left_out, y_mm = left_out;
    std::string thread{}, grade{}; ///< "M20", "8.8"
    double free_length_mm = left_out, preload_N = left_out;
    std::string more{};
  };
  struct Cam {
    std::string name, one, other;
    double x_mm = left_out, y_mm = left_out, lift_mm = left_out, radius_mm = left_out, width_mm = left_out;
    std::string more{};
  };
  struct Hinge {
    std::string name, one, other;
    double x_mm = left_out, pin_mm = left_out, bearing_length_mm = left_out;
    std::string more{};
  };
  struct Handle {
    std::string name, bar; ///< "apron.face"
    double x_mm = left_out, reach_mm = left_out;
    std::string more{};
  };
  struct Screws {
    std::string name, one, other, thread, grade;
    double first_mm = left_out, pitch_mm = left_out, y_mm = left_out, shear_stiffness_N_mm = left_out;
    std::string more{};
  };
  struct Weld {
    std::string name, one, other;
    double from_mm = left_out, to_mm = left_out;
    std::string more{};
  };
  struct Support {
    std::string name, bar;
    double x_mm = left_out;
    std::vector<std::string> holds{"x", "y", "z", "rx"}; ///< of x y z rx ry rz
    std::string more{};
  };
  struct Dial {
    std::string name, on;
    double x_mm = 0, y_mm = 0, z_mm = 0;
    std::string more{};
  };
  struct Limits {
    double bow_mm = left_out, angle_deg = left_out, utilisation = left_out;
  };

  std::string title;
  std::vector<Material> materials{};
  std::optional<Sheet> sheet{};
  Body bed{}, clamp{}, apron{}; ///< one without bars is absent
  Nose nose{};
  std::vector<Post> posts{};
  std::vector<Cam> cams{};
  std::vector<Hinge> hinges{};
  std::vector<Handle> handles{};
  std::vector<Screws> screws{};
  std::vector<Weld> welds{};
  std::vector<Support> supports{};
  std::vector<Dial> dials{};
  Limits limits{};
  double element_size_mm = left_out;
  std::vector<double> angles_deg{}; ///< apron positions to solve
  std::string more{};               ///< further tables

  /// The same as the text of a case: from_machine reads it, and it can be saved to a file.
  [[nodiscard]] std::string toml() const;
};

/// An error; what() has one line per problem, as the program prints them.
class BEDBOW_LIBRARY Error : public std::runtime_error {
public:
  enum class Kind {
    case_file, ///< the case is wrong
    file,      ///< a file could not be read or written
    plugin,    ///< a plugin that can't be used, or that the case requests without permission
    unsolvable ///< a mechanism, or contact that does not converge
  };
  Error(Kind kind, const std::string& what)
      : std::runtime_error(what)
      , kind(kind) {}
  ~Error() override;
  Kind kind;
};

/// Plugins whose entries a case may name: shared objects with the C interface of bedbow/plugin.h
/// (docs/guide/plugins.md). They run as part of this program and stay loaded as long as it runs.
struct Plugins {
  std::vector<std::filesystem::path> files{}; ///< loaded in this order
  bool of_case = false; ///< also those that the case names in [plugins], beside its file: only for cases you trust
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

/// Along the bend line, one entry per station. Clamp force: in all between nose and sheet, compression positive; the
/// reserve of clamping and the opening of the nose stand in json().
struct BendLine {
  std::vector<double> x_mm, nose_z_mm, bed_z_mm, apron_n_mm, angle_deviation_deg, clamp_N_per_mm;
};

/// A bar at its worst place, by the stress that is judged; its local peak stands in json().
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

/// A number that a plugin's finding gives; the key states quantity and unit.
struct Finding {
  std::string name, key;
  double value;
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

/// Results of a solved case.
class BEDBOW_LIBRARY Result {
public:
  bool pass = true;                 ///< within all limits
  std::vector<std::string> reasons; ///< where not
  std::vector<Step> steps;
  double mass_kg = 0;            ///< NaN where a material in use has no density
  std::vector<Finding> findings; ///< of plugins
  /// The whole of results.json.
  [[nodiscard]] std::string json() const;
  /// The table that `bedbow solve` prints, with its cautions.
  [[nodiscard]] std::string summary() const;
  /// Writes the result files of `bedbow solve`, and those of plugins, all or none. \return their names. Throws Error
  /// (file).
  std::vector<std::string> write(const std::filesystem::path& directory) const;

private:
  friend class Case;
  struct Inner;
  std::shared_ptr<const Inner> inner_;
};

/// A case that has been read and understood.
class BEDBOW_LIBRARY Case {
public:
  /// \param text TOML as docs/case-format.md describes it. \param name name in messages.
  /// \param plugins to load; what the text itself names is taken relative to the working directory.
  /// Throws Error (case_file, plugin; file where a plugin can't be read).
  static Case from_text(std::string_view text, const std::string& name = "case", const Plugins& plugins = {});
  /// \param name name in messages; their lines are those of machine.toml(). Throws Error as from_text.
  static Case from_machine(const Machine& machine, const std::string& name = "machine", const Plugins& plugins = {});
  /// \param plugins to load; what the case itself names is taken relative to it. Throws Error as from_text.
  static Case from_file(const std::filesystem::path& file, const Plugins& plugins = {});
  /// The same case with another value under a dotted key; elements of arrays of tables by their name, as in
  /// "bed.bar.web.height". \param value as TOML writes it: "\"80 mm\"", "0.3", "true". Throws Error (case_file).
  [[nodiscard]] Case with(const std::string& key, const std::string& value) const;
  [[nodiscard]] std::string title() const;
  [[nodiscard]] std::vector<std::string> warnings() const;
  /// Assumptions: defaults that the case does not override.
  [[nodiscard]] std::vector<std::string> assumptions() const;
  /// Loaded plugins, "file.so: name version" each.
  [[nodiscard]] std::vector<std::string> plugins() const;
  /// Clamps and bends. Throws Error (unsolvable, naming the free displacement and its place; plugin).
  [[nodiscard]] Result solve() const;

private:
  struct Inner;
  explicit Case(std::shared_ptr<const Inner> inner)
      : inner_(std::move(inner)) {}
  std::shared_ptr<const Inner> inner_;
};

} // namespace bedbow::library
