/// \file
/// Options that take one of a list of words.
#pragma once

#include "mesh/piece/choice.h"

#include <CLI/CLI.hpp>

#include <string>

namespace bedbow {

/// Adds an option for a choice. \param value its default; set where the option is given. It and the list outlive the
/// command line.
template <class T, class List>
void add_choice(CLI::App& command, const std::string& name, T& value, const List& choices, const std::string& text) {
  command
      .add_option_function<std::string>(
          name, [&value, &choices](const std::string& word) { value = chosen(choices, word); }, text)
      ->check(CLI::IsMember(words_of(choices)))
      ->default_str(word_for(choices, value));
}

} // namespace bedbow
