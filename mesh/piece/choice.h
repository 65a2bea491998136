/// \file
/// Choices: the words of a key or an option beside the values they stand for. Schema, reader, command line and
/// messages take them from one list.
#pragma once

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

template <class T> struct Choice {
  std::string_view word; ///< as files and the command line have it
  T value;
  std::string_view meaning{}; ///< longer, for sentences; may be empty
};

template <class T> Choice(std::string_view, T) -> Choice<T>;
template <class T> Choice(std::string_view, T, std::string_view) -> Choice<T>;

/// All words of a list of choices, in its order.
template <class List> std::vector<std::string> words_of(const List& choices) {
  std::vector<std::string> out;
  for (const auto& c : choices) out.emplace_back(c.word);
  return out;
}

/// The value that a word stands for. Throws std::invalid_argument naming the words for any other.
template <class List> auto chosen(const List& choices, std::string_view word) {
  for (const auto& c : choices)
    if (c.word == word) return c.value;
  std::string words;
  for (const auto& c : choices) words.append(words.empty() ? "" : ", ").append(c.word);
  throw std::invalid_argument("\"" + std::string(word) + "\" is none of " + words);
}

/// The choice of a value. Throws std::out_of_range where the list has none.
template <class List, class T> const auto& choice_of(const List& choices, const T& value) {
  for (const auto& c : choices)
    if (c.value == value) return c;
  throw std::out_of_range("a value without a word");
}

/// Its word.
template <class List, class T> std::string word_for(const List& choices, const T& value) {
  return std::string(choice_of(choices, value).word);
}

} // namespace bedbow
