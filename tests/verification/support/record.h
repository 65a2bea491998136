/// \file
/// One verification: computed against a published or derived reference. Prints the row, asserts it, and appends it to
/// the file named by BEDBOW_VERIFICATION_OUT (tools/verification makes docs/verification.md from that).
#pragma once

#include <string>

namespace bedbow::verification {

/// \param id row of the check ("A1"); empty where the reference is a derivation named in `source`.
/// \param source book, standard or paper, with "(from memory)" where so.
/// \param tolerance relative to |reference|, or absolute where the reference is 0.
void record(const std::string& id, const std::string& source, const std::string& quantity, double computed,
            double reference, double tolerance, const std::string& unit = "");

/// A trend instead of a number: computed must be less than what it is compared with.
void record_less(const std::string& id, const std::string& source, const std::string& quantity, double computed,
                 double than, const std::string& unit = "");

} // namespace bedbow::verification
