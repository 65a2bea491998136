#include "io/files/sqlite.h"

#include "io/files/errors.h"

#include <sqlite3.h>

#include <cmath>

namespace bedbow {

namespace {

std::string advice_on_sqlite(int code) {
  switch (code & 0xff) {
  case SQLITE_FULL:
  case SQLITE_IOERR:
    return "free some space or choose another directory; the stored data is intact, and the same command continues "
           "from it";
  case SQLITE_READONLY:
  case SQLITE_CANTOPEN:
  case SQLITE_PERM:
    return "choose a directory that you may write to";
  case SQLITE_NOTADB:
  case SQLITE_CORRUPT:
    return "it is not a valid database; move it away and start again";
  case SQLITE_BUSY:
  case SQLITE_LOCKED:
    return "another program has it open; close that one first";
  default:
    return "";
  }
}

sqlite3* open(const std::filesystem::path& file, int flags) {
  sqlite3* handle = nullptr;
  sqlite3_open_v2(file.c_str(), &handle, flags | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE, nullptr);
  return handle;
}

/// Whether the file can be queried: a write-ahead log needs a writable directory.
bool readable(sqlite3* handle) {
  return sqlite3_errcode(handle) == SQLITE_OK &&
         sqlite3_exec(handle, "SELECT count(*) FROM sqlite_master", nullptr, nullptr, nullptr) == SQLITE_OK;
}

} // namespace

Database::Database(std::filesystem::path file, Access access)
    : file_(std::move(file))
    , handle_(nullptr, sqlite3_close_v2) {
  if (access == Access::write) {
    handle_.reset(open(file_, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE));
    if (sqlite3_errcode(handle_.get()) != SQLITE_OK) fail("open");
    sqlite3_busy_timeout(handle_.get(), 2000);
    return;
  }
  if (!std::filesystem::exists(file_)) throw FileError("read", file_, "there is no such file");
  handle_.reset(open(file_, SQLITE_OPEN_READWRITE));
  if (readable(handle_.get())) return;
  handle_.reset(open("file:" + file_.string() + "?immutable=1", SQLITE_OPEN_READONLY | SQLITE_OPEN_URI));
  if (!readable(handle_.get())) fail("read");
}

void Database::fail(const std::string& doing) const {
  throw FileError(doing, file_, sqlite3_errmsg(handle_.get()),
                  advice_on_sqlite(sqlite3_extended_errcode(handle_.get())));
}

void Database::execute(const std::string& sql) const {
  if (sqlite3_exec(handle_.get(), sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) fail("write");
}

Statement::Statement(const Database& database, const std::string& sql)
    : database_(&database)
    , statement_(nullptr, sqlite3_finalize) {
  sqlite3_stmt* made = nullptr;
  if (sqlite3_prepare_v2(database.handle(), sql.c_str(), -1, &made, nullptr) != SQLITE_OK) database.fail("read");
  statement_.reset(made);
}

Statement& Statement::bind(int parameter, std::string_view text) {
  sqlite3_bind_text(statement_.get(), parameter, text.data(), static_cast<int>(text.size()), SQLITE_TRANSIENT);
  return *this;
}

Statement& Statement::bind(int parameter, std::int64_t value) {
  sqlite3_bind_int64(statement_.get(), parameter, value);
  return *this;
}

Statement& Statement::bind(int parameter, double value) {
  if (std::isnan(value))
    sqlite3_bind_null(statement_.get(), parameter);
  else
    sqlite3_bind_double(statement_.get(), parameter, value);
  return *this;
}

bool Statement::step() {
  const int code = sqlite3_step(statement_.get());
  if (code != SQLITE_ROW && code != SQLITE_DONE)
    database_->fail(sqlite3_stmt_readonly(statement_.get()) ? "read" : "write");
  return code == SQLITE_ROW;
}

void Statement::run() {
  step();
  reset();
}

void Statement::reset() {
  sqlite3_reset(statement_.get());
}

std::string Statement::text(int column) const {
  const auto* bytes = reinterpret_cast<const char*>(sqlite3_column_text(statement_.get(), column));
  return bytes ? std::string(bytes, static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column))) : "";
}

std::int64_t Statement::integer(int column) const {
  return sqlite3_column_int64(statement_.get(), column);
}

double Statement::number(int column) const {
  if (sqlite3_column_type(statement_.get(), column) == SQLITE_NULL) return std::nan("");
  return sqlite3_column_double(statement_.get(), column);
}

Transaction::Transaction(const Database& database)
    : database_(database) {
  database_.execute("BEGIN IMMEDIATE");
}

Transaction::~Transaction() {
  // A failed write has already rolled back what SQLite could not keep; then this does nothing.
  if (open_) sqlite3_exec(database_.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
}

void Transaction::commit() {
  database_.execute("COMMIT");
  open_ = false;
}

std::string quoted_name(std::string_view name) {
  std::string out = "\"";
  for (const char c : name) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

} // namespace bedbow
