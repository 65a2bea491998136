#include "io/sweep/variant_store.h"

#include "io/files/errors.h"

#include <chrono>
#include <cmath>
#include <ctime>
#include <stdexcept>

namespace bedbow {

namespace fs = std::filesystem;

namespace {

constexpr std::array<const char*, figure_count> column_names{"clamp_bow_mm",   "bed_bow_mm",
                                                             "apron_bow_mm",   "clamp_straightness_mm",
                                                             "angle_mean_deg", "angle_spread_deg",
                                                             "utilisation",    "buckling_factor",
                                                             "mass_kg",        "cost"};
constexpr std::array<const char*, figure_count> figure_words{"clamp bow [mm]",   "bed bow [mm]",
                                                             "apron bow [mm]",   "clamp straightness [mm]",
                                                             "angle mean [deg]", "angle spread [deg]",
                                                             "utilisation",      "buckling factor",
                                                             "mass [kg]",        "cost"};
constexpr const char* format = "1"; // of the tables

/// A name beside the database that no file has yet: variants-20261125-160500.db.
fs::path dated_name(const fs::path& file) {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  char stamp[32];
  std::strftime(stamp, sizeof stamp, "%Y%m%d-%H%M%S", &local);
  fs::path out = file.parent_path() / (file.stem().string() + "-" + stamp + ".db");
  for (int i = 2; fs::exists(out); ++i)
    out = file.parent_path() / (file.stem().string() + "-" + stamp + "-" + std::to_string(i) + ".db");
  return out;
}

void move_away(const fs::path& file) {
  if (!fs::exists(file)) return;
  const fs::path target = dated_name(file);
  for (const char* tail : {"", "-wal", "-shm"}) { // the log of a killed run belongs to its database
    std::error_code failed;
    fs::rename(file.string() + tail, target.string() + tail, failed);
    if (failed && *tail == '\0') throw FileError("rename", file, failed.message());
  }
}

std::string joined(const std::vector<std::string>& parts, const std::string& separator) {
  std::string out;
  for (const std::string& p : parts) out += (out.empty() ? "" : separator) + p;
  return out;
}

[[noreturn]] void refuse(const fs::path& file, const std::string& what) {
  throw std::invalid_argument(
      file.string() + " " + what +
      "; --fresh starts over and keeps the old one under a dated name, or choose another --out");
}

/// What differs between two results of one variant, or nothing.
std::string difference(const VariantResult& a, const VariantResult& b, const std::vector<std::string>& keys) {
  for (std::size_t i = 0; i < keys.size(); ++i)
    if (a.inputs[i] != b.inputs[i]) return keys[i] + ": " + a.inputs[i] + " and " + b.inputs[i];
  if (a.failed != b.failed) return "one failed, the other did not";
  if (a.pass != b.pass) return "one passes, the other does not";
  for (std::size_t i = 0; i < figure_count; ++i)
    if (a.figures[i] != b.figures[i] && !(std::isnan(a.figures[i]) && std::isnan(b.figures[i])))
      return std::string(column_names[i]) + ": " + std::to_string(a.figures[i]) + " and " +
             std::to_string(b.figures[i]);
  return a.message != b.message ? "message: " + a.message + " and " + b.message : "";
}

} // namespace

std::string column_of(Figure figure) {
  return column_names[static_cast<std::size_t>(figure)];
}

std::string words_for(Figure figure) {
  return figure_words[static_cast<std::size_t>(figure)];
}

VariantStore::VariantStore(std::optional<FileLock> lock, Database database)
    : lock_(std::move(lock))
    , database_(std::move(database)) {}

VariantStore VariantStore::open(const fs::path& directory, const SweepIdentity& identity, Start start) {
  std::error_code failed;
  fs::create_directories(directory, failed);
  if (failed) throw FileError("make directory", directory, failed.message());
  const fs::path file = directory / "variants.db";
  FileLock lock(directory / "variants.lock", file);
  if (start == Start::fresh) move_away(file);
  VariantStore store(std::move(lock), Database(file, Database::Access::write));
  store.database_.execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA cache_size = -4000");
  store.identity_ = identity;
  Statement tables(store.database_, "SELECT count(*) FROM sqlite_master WHERE name = 'sweep'");
  if (tables.step() && tables.integer(0) == 0) {
    store.create();
    return store;
  }
  store.read_identity();
  const SweepIdentity& old = store.identity_;
  if (old.case_hash != identity.case_hash) refuse(file, "holds results of a case that has since been changed");
  if (old.version != identity.version) refuse(file, "holds results of another version of bedbow, " + old.version);
  if (old != identity) refuse(file, "holds results of another sweep");
  return store;
}

VariantStore VariantStore::read(const fs::path& place) {
  const fs::path file = fs::is_directory(place) ? place / "variants.db" : place;
  VariantStore store(std::nullopt, Database(file, Database::Access::read));
  store.read_identity();
  return store;
}

void VariantStore::create() {
  Transaction whole(database_);
  std::string columns;
  for (const std::string& key : identity_.keys) columns += quoted_name(key) + " TEXT, ";
  for (const char* name : column_names) columns += std::string(name) + " REAL, ";
  database_.execute("CREATE TABLE sweep (name TEXT PRIMARY KEY, value TEXT);"
                    "CREATE TABLE variant (id INTEGER PRIMARY KEY, " +
                    columns +
                    "status TEXT NOT NULL, pass INTEGER NOT NULL, utilisation_at TEXT, message TEXT, seconds REAL)");
  Statement put(database_, "INSERT INTO sweep VALUES (?, ?)");
  const auto say = [&](const std::string& name, const std::string& value) { put.bind(1, name).bind(2, value).run(); };
  say("format", format);
  say("case_hash", identity_.case_hash);
  say("version", identity_.version);
  say("variants", std::to_string(identity_.variants));
  for (std::size_t i = 0; i < identity_.keys.size(); ++i) say("key " + std::to_string(i), identity_.keys[i]);
  whole.commit();
}

void VariantStore::read_identity() {
  identity_ = {};
  Statement get(database_, "SELECT value FROM sweep WHERE name = ?");
  const auto ask = [&](const std::string& name) {
    get.reset();
    get.bind(1, name);
    return get.step() ? std::optional(get.text(0)) : std::nullopt;
  };
  if (ask("format") != format)
    throw FileError("read", file(), "its format differs from that of this version of bedbow",
                    "export it with the version that made it");
  identity_.case_hash = ask("case_hash").value_or("");
  identity_.version = ask("version").value_or("");
  identity_.variants = std::stoull(ask("variants").value_or("0"));
  for (std::size_t i = 0; const auto key = ask("key " + std::to_string(i)); ++i) identity_.keys.push_back(*key);
}

std::vector<std::string> VariantStore::columns() const {
  std::vector<std::string> out{"id"};
  for (const std::string& key : identity_.keys) out.push_back(quoted_name(key));
  out.insert(out.end(), column_names.begin(), column_names.end());
  out.insert(out.end(), {"status", "pass", "utilisation_at", "message", "seconds"});
  return out;
}

std::string VariantStore::insert_sql() const {
  const std::vector<std::string> names = columns();
  return "INSERT INTO variant (" + joined(names, ", ") + ") VALUES (" +
         joined(std::vector<std::string>(names.size(), "?"), ", ") + ")";
}

void VariantStore::insert(Statement& statement, const VariantResult& r) const {
  int p = 1;
  statement.bind(p++, static_cast<std::int64_t>(r.id));
  for (const std::string& input : r.inputs) statement.bind(p++, input);
  for (const double figure : r.figures) statement.bind(p++, figure);
  statement.bind(p++, std::string_view(r.failed ? "failed" : "ok"));
  statement.bind(p++, static_cast<std::int64_t>(r.pass));
  statement.bind(p, r.utilisation_at).bind(p + 1, r.message).bind(p + 2, r.seconds);
  statement.run();
}

void VariantStore::add(std::span<const VariantResult> results) {
  if (results.empty()) return;
  Transaction whole(database_);
  Statement statement(database_, insert_sql());
  for (const VariantResult& r : results) insert(statement, r);
  whole.commit();
}

void VariantStore::merge(std::span<const VariantStore> others) {
  Transaction whole(database_);
  Statement statement(database_, insert_sql());
  for (const VariantStore& other : others) {
    if (other.identity() != identity_)
      throw std::invalid_argument(other.file().string() + " holds results of a different sweep than " +
                                  file().string() + ": case, version and [sweep] must be the same");
    other.each([&](const VariantResult& r) {
      bool there = false;
      each(
          [&](const VariantResult& old) {
            there = true;
            if (const std::string what = difference(old, r, identity_.keys); !what.empty())
              throw std::invalid_argument("variant " + std::to_string(r.id) + " in " + other.file().string() +
                                          " disagrees with the existing result: " + what + "; nothing has been merged");
          },
          "WHERE id = " + std::to_string(r.id));
      if (!there) insert(statement, r);
    });
  }
  whole.commit();
}

std::vector<NumberRange> VariantStore::missing(const Shard& shard) const {
  const std::uint64_t n = identity_.variants;
  const std::uint64_t size = n > shard.index ? (n - shard.index - 1) / shard.count + 1 : 0;
  std::vector<NumberRange> out;
  std::uint64_t next = 0;
  Statement done(database_, "SELECT id FROM variant WHERE id % ? = ? ORDER BY id");
  done.bind(1, static_cast<std::int64_t>(shard.count)).bind(2, static_cast<std::int64_t>(shard.index));
  while (done.step()) {
    const std::uint64_t j = static_cast<std::uint64_t>(done.integer(0)) / shard.count;
    if (j > next) out.push_back({next, j});
    next = j + 1;
  }
  if (size > next) out.push_back({next, size});
  return out;
}

std::uint64_t VariantStore::count(const std::string& where) const {
  Statement s(database_, "SELECT count(*) FROM variant WHERE " + where);
  return s.step() ? static_cast<std::uint64_t>(s.integer(0)) : 0;
}

void VariantStore::each(const std::function<void(const VariantResult&)>& take, const std::string& rest) const {
  Statement s(database_, "SELECT " + joined(columns(), ", ") + " FROM variant " + rest);
  VariantResult r;
  r.inputs.resize(identity_.keys.size());
  while (s.step()) {
    int c = 0;
    r.id = static_cast<std::uint64_t>(s.integer(c++));
    for (std::string& input : r.inputs) input = s.text(c++);
    for (double& figure : r.figures) figure = s.number(c++);
    r.failed = s.text(c++) == "failed";
    r.pass = s.integer(c++) != 0;
    r.utilisation_at = s.text(c++);
    r.message = s.text(c++);
    r.seconds = s.number(c++);
    take(r);
  }
}

} // namespace bedbow
