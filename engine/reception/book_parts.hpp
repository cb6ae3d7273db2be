#pragma once

#include "engine/reception/book.hpp"

namespace matula::reception {

/// Reads day.toml into `book`; gives what is wrong with it.
[[nodiscard]] scenario::Problems read_day_rules(const std::filesystem::path& file, Book& book);

} // namespace matula::reception
