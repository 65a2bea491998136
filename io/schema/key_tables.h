/// \file
/// The keys of a case file as tables of a Markdown page: docs/case-format.md is written from the same description that
/// reads a case, so that the two cannot disagree.
#pragma once

#include "io/schema/schema.h"

#include <string>

namespace bedbow {

/// One section per table of the schema, in its order: heading, description, and a row per key with the value it takes,
/// whether it is required or its default, and its meaning.
std::string key_tables(const Schema& schema);

} // namespace bedbow
