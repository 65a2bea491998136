/// \file
/// SQLite databases and statements that close themselves and throw FileError.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace bedbow {

class Database;

/// A prepared statement. Parameters count from 1, columns from 0.
class Statement {
public:
  Statement(const Database& database, const std::string& sql);
  Statement& bind(int parameter, std::string_view text);
  Statement& bind(int parameter, std::int64_t value);
  /// NaN is stored as NULL.
  Statement& bind(int parameter, double value);
  /// One step. \return whether there is a row. Throws FileError.
  bool step();
  /// Runs a statement that returns no rows, and makes it ready for the next values.
  void run();
  void reset();
  [[nodiscard]] std::string text(int column) const;
  [[nodiscard]] std::int64_t integer(int column) const;
  /// NULL reads as NaN.
  [[nodiscard]] double number(int column) const;

private:
  const Database* database_;
  std::unique_ptr<sqlite3_stmt, int (*)(sqlite3_stmt*)> statement_;
};

/// An open database file.
class Database {
public:
  enum class Access { write, read };
  /// Opens, or for `write` creates. A database on a read-only medium is read as it is.
  /// Throws FileError.
  Database(std::filesystem::path file, Access access);
  /// Runs SQL without results.
  void execute(const std::string& sql) const;
  [[nodiscard]] const std::filesystem::path& file() const { return file_; }
  [[nodiscard]] sqlite3* handle() const { return handle_.get(); }
  /// Throws FileError with the library's message. \param doing "read", "write".
  [[noreturn]] void fail(const std::string& doing) const;

private:
  std::filesystem::path file_;
  std::unique_ptr<sqlite3, int (*)(sqlite3*)> handle_;
};

/// One transaction: rolled back unless committed.
class Transaction {
public:
  explicit Transaction(const Database& database);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

private:
  const Database& database_;
  bool open_ = true;
};

/// A name in double quotes, for columns with dots.
std::string quoted_name(std::string_view name);

} // namespace bedbow
