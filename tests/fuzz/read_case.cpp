/// \file
/// Fuzzes the case reader with libFuzzer: whatever the text, read_case_text gives a Case or throws CaseError, or
/// FileError for a mesh that is not there, soon and without undefined behaviour, and what it gives can be explained.
/// tools/fuzz runs it.
#include "io/case/case_reader.h"
#include "io/explain/explain.h"
#include "io/files/errors.h"

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const bedbow::Registries registries = bedbow::builtin_registries();
  try {
    const bedbow::Case c =
        bedbow::read_case_text(std::string_view(reinterpret_cast<const char*>(data), size), registries);
    bedbow::explain(c, {}, bedbow::Style(false));
  } catch (const bedbow::CaseError&) {
    // What is wrong has been said; anything else that escapes is a fault.
  } catch (const bedbow::FileError&) {
    // A [mesh] names a file that is not there.
  }
  return 0;
}
