#pragma once

#include <string>
#include <vector>

namespace matula::drafting {

/// Words of a list as TOML writes it, in order; empty for anything that is no list of words.
[[nodiscard]] std::vector<std::string> words_of_list(const std::string& list);

/// The list with one more word behind its last; remarks and line ends in it stay. Unchanged when it is there.
[[nodiscard]] std::string with_word(const std::string& list, const std::string& word);

/// The list without that word and its comma; remarks stay. Unchanged when it is not there.
[[nodiscard]] std::string without_word(const std::string& list, const std::string& word);

/// Numbers of a list as TOML writes it, each as it stands there; empty for a list of anything else.
[[nodiscard]] std::vector<std::string> numbers_of_list(const std::string& list);

/// The list with these numbers. As many as there were take the places of those, so that remarks and line ends
/// stay; fewer or more make a new list.
[[nodiscard]] std::string with_numbers(const std::string& list, const std::vector<std::string>& numbers);

} // namespace matula::drafting
