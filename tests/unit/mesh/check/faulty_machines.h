/// \file
/// Machines with one fault each, made from a shipped case by one change.
#pragma once

#include "mesh/check/buildable.h"

#include <string>
#include <vector>

namespace bedbow::test {

struct FaultyMachine {
  const char* story;
  FaultKind kind;    ///< the fault that must be named
  std::string part;  ///< a part that must be named with it
  std::string other; ///< likewise
  void (*change)(Machine&);
  std::string from = "hive-lid"; ///< case
};

/// Twenty, written before the predicate: from decisions (D1) and shop sense alone.
std::vector<FaultyMachine> faults_of_the_shop();

/// Twenty more, written with it.
std::vector<FaultyMachine> faults_of_the_drawing();

} // namespace bedbow::test
