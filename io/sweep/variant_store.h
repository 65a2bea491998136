/// \file
/// Inputs and headline results of all variants of a sweep, in one SQLite database, DIR/variants.db: table `sweep`
/// identifies the sweep, table `variant` has one row each. Committed results survive however the program ends.
#pragma once

#include "io/files/file_lock.h"
#include "io/files/sqlite.h"

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bedbow {

/// Numbers of a variant, in units of result files.
enum class Figure {
  clamp_bow,
  bed_bow,
  apron_bow,
  clamp_straightness,
  angle_mean,
  angle_spread,
  utilisation,
  buckling_factor,
  mass,
  cost
};
inline constexpr std::size_t figure_count = 10;
/// Column name: "clamp_bow_mm".
std::string column_of(Figure figure);
/// In words, with its unit: "clamp bow [mm]".
std::string words_for(Figure figure);

struct VariantResult {
  std::uint64_t id = 0;
  std::vector<std::string> inputs; ///< as in the case, by key
  bool failed = false, pass = false;
  std::array<double, figure_count> figures{}; ///< NaN where there is none
  std::string utilisation_at;
  std::string message; ///< what failed, or why it does not pass
  double seconds = 0;  ///< computing time; the only value that a rerun does not reproduce
  [[nodiscard]] double operator[](Figure f) const { return figures[static_cast<std::size_t>(f)]; }
  double& operator[](Figure f) { return figures[static_cast<std::size_t>(f)]; }
};

/// Identity of a database: results of databases that differ must not be mixed.
struct SweepIdentity {
  std::string case_hash, version;
  std::vector<std::string> keys;
  std::uint64_t variants = 0;
  bool operator==(const SweepIdentity&) const = default;
};

/// Part `index` (from 0) of `count`: the variants whose number leaves that remainder.
struct Shard {
  std::uint64_t index = 0, count = 1;
};

struct NumberRange {
  std::uint64_t from = 0, to = 0; ///< from <= n < to
};

class VariantStore {
public:
  enum class Start { resume, fresh };
  /// Opens or makes DIR/variants.db and locks it against other processes. `fresh` first moves an old database to
  /// variants-DATE.db. Throws FileError; std::invalid_argument where it holds results of another sweep.
  static VariantStore open(const std::filesystem::path& directory, const SweepIdentity& identity, Start start);
  /// Opens a database (or a directory with one) for reading. Throws FileError.
  static VariantStore read(const std::filesystem::path& place);

  [[nodiscard]] const SweepIdentity& identity() const { return identity_; }
  [[nodiscard]] const std::filesystem::path& file() const { return database_.file(); }
  /// Adds results in one transaction, which is on the disk when this returns.
  void add(std::span<const VariantResult> results);
  /// Joins other databases, all in one transaction. Throws std::invalid_argument naming the variant and the figure
  /// where two disagree, or where one is of another sweep; then nothing is changed.
  void merge(std::span<const VariantStore> others);
  /// Variants that a shard still lacks, as ranges of j, where j * shard.count + shard.index is a variant.
  [[nodiscard]] std::vector<NumberRange> missing(const Shard& shard) const;
  [[nodiscard]] std::uint64_t count(const std::string& where = "1") const;
  /// Calls with each variant, one at a time. \param rest SQL after FROM variant: conditions and order.
  void each(const std::function<void(const VariantResult&)>& take, const std::string& rest = "ORDER BY id") const;

private:
  VariantStore(std::optional<FileLock> lock, Database database);
  void create();
  void read_identity();
  void insert(Statement& statement, const VariantResult& result) const;
  [[nodiscard]] std::vector<std::string> columns() const;
  [[nodiscard]] std::string insert_sql() const;

  std::optional<FileLock> lock_;
  Database database_;
  SweepIdentity identity_;
};

} // namespace bedbow
