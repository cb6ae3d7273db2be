#pragma once

#include "engine/records/store.hpp"

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

namespace matula::records {

/// Pseudonyms and names from lines of `pseudonym,name`; a first line of these words is passed over. Throws
/// Trouble that names the line.
[[nodiscard]] std::vector<std::pair<std::string, std::string>>
read_name_list(const std::filesystem::path& file);

/// "1 student(s), 1 name(s), ..."
[[nodiscard]] std::string in_words(const Removed& removed);

} // namespace matula::records
