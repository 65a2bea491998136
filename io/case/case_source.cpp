#include "io/case/case_source.h"

#include "io/case/toml_source.h"
#include "io/files/errors.h"
#include "io/text/hash.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <system_error>

namespace bedbow {

namespace {

namespace fs = std::filesystem;

std::string megabytes(std::uintmax_t bytes) {
  return std::to_string((bytes + (1 << 20) - 1) >> 20) + " MB";
}

[[noreturn]] void refuse(const std::string& file, const std::string& text, SourcePos pos = {}) {
  throw CaseError(file, {{Severity::error, pos, "", text}});
}

std::string read_text(const fs::path& file) {
  std::error_code failed;
  const fs::file_status status = fs::status(file, failed);
  if (status.type() == fs::file_type::not_found) throw FileError("read", file, "there is no such file");
  if (status.type() == fs::file_type::directory)
    throw FileError("read", file, "it is a directory", "give the case file in it");
  if (fs::is_regular_file(status)) {
    const std::uintmax_t size = fs::file_size(file, failed);
    if (!failed && size > greatest_case_size)
      refuse(file.string(),
             "the file has " + megabytes(size) + "; the limit for a case is " + megabytes(greatest_case_size));
  }
  std::ifstream in(file, std::ios::binary);
  if (!in) throw FileError("read", file, std::strerror(errno));
  // The size of a pipe is not known beforehand.
  std::string text(greatest_case_size + 1, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (in.bad()) throw FileError("read", file, std::strerror(errno));
  text.resize(static_cast<std::size_t>(in.gcount()));
  return text;
}

/// Line and column of a byte.
SourcePos place_of(std::string_view text, std::size_t at) {
  const std::string_view before = text.substr(0, at);
  const std::size_t begin = before.rfind('\n') + 1; // npos + 1 is 0
  return {static_cast<int>(std::ranges::count(before, '\n')) + 1, static_cast<int>(at - begin) + 1};
}

/// First byte that text cannot contain, or npos. Line ends and tabs are allowed.
std::size_t binary_at(std::string_view text) {
  const auto it = std::ranges::find_if(text, [](char c) {
    return (static_cast<unsigned char>(c) < ' ' && c != '\n' && c != '\r' && c != '\t') || c == '\x7f';
  });
  return it == text.end() ? std::string_view::npos : static_cast<std::size_t>(it - text.begin());
}

} // namespace

CaseSource source_of_text(std::string_view text, std::string file) {
  if (text.size() > greatest_case_size)
    refuse(file, "the text is larger than the limit of " + megabytes(greatest_case_size) + " for a case");
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
    refuse(file, "the file is empty; a case needs at least a [bed], a [[member]], a [[panel]] or a [mesh]");
  if (const std::size_t at = binary_at(text); at != std::string_view::npos)
    refuse(file, "this is not text: it has a control character; a case is a TOML file", place_of(text, at));
  TomlText toml = read_toml(text);
  return {std::move(file), sha256(text), std::move(toml.root), std::move(toml.problems), nullptr};
}

CaseSource read_source(const fs::path& file) {
  return source_of_text(read_text(file), file.string());
}

std::vector<std::string> plugin_files(const CaseSource& source) {
  std::vector<std::string> out;
  const CaseNode* table = source.root.find("plugins");
  const CaseNode* files = table ? table->find("files") : nullptr;
  if (!files) return out;
  for (const CaseNode& item : files->items)
    if (item.type == CaseNode::Type::text) out.push_back(item.text);
  return out;
}

CaseSource with_values(const CaseSource& source, std::span<const std::pair<std::string, CaseNode>> values) {
  CaseSource out = source;
  for (const auto& [key, value] : values) {
    std::string last;
    CaseNode* parent = find_parent(out.root, key, last);
    if (!parent) throw std::invalid_argument("no table for the key \"" + key + "\" in " + source.file);
    if (CaseNode* old = parent->find(last)) {
      const SourcePos pos = old->pos;
      *old = value;
      old->pos = pos;
    } else {
      parent->entries.push_back({last, parent->pos, value});
      parent->entries.back().value.pos = parent->pos;
    }
  }
  return out;
}

} // namespace bedbow
