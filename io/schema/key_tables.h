/// \file
/// The keys of a case file as tables of a Markdown page: docs/case-format.md is written from the same description that
/// reads a case, so that it cannot say otherwise.
#pragma once

#include "io/schema/schema.h"

#include <string>

namespace bedbow {

/// One section a table of the schema, in its order: heading, what it is, and a row per key with the value it takes,
/// whether it is required or what holds without it, and its meaning.
std::string key_tables(const Schema& schema);

} // namespace bedbow
