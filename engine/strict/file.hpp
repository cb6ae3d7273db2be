#pragma once

#include "engine/scenario/problem.hpp"

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace matula::strict {

class Table;

/// One TOML file read strictly: every value is asked for by name, range and unit, every problem is kept with
/// the line it stands on, and `finish` reports each key nobody asked for. Must outlive the tables it gives
/// out.
class File {
public:
  /// `name` is what problems call the file. Broken TOML is itself a problem; then no other problem is added.
  File(const std::string& text, std::string name);
  /// Reads the file; a file that cannot be read is a problem.
  explicit File(const std::filesystem::path& path);
  ~File();
  File(const File&) = delete;
  File& operator=(const File&) = delete;

  [[nodiscard]] Table root();

  /// Adds a problem at a place (line and column from 1; 0 for the whole file).
  void complain(int line, int column, const std::string& found, const std::string& expected);

  /// Reports keys nobody asked for (with the key that was probably meant) and gives every problem, in order
  /// of lines.
  [[nodiscard]] scenario::Problems finish();

  struct Impl; ///< Parsed text; known only inside this room.

private:
  std::unique_ptr<Impl> impl_;
};

/// The words of a text file; false when it cannot be read.
[[nodiscard]] bool read_text(const std::filesystem::path& path, std::string& text);

} // namespace matula::strict
