#pragma once

#include <filesystem>
#include <iosfwd>
#include <string>

namespace matula::command {

/// Writes a file whole or not at all, making its folder where there is none; says on `err` why it could not.
[[nodiscard]] bool write_file(const std::filesystem::path& file, const std::string& text, std::ostream& err);

} // namespace matula::command
