#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace matula::drafting {

/// What came of saving.
struct Saved {
  enum class Outcome {
    Written, ///< It is on the disk.
    Asks,    ///< Something is there that would be lost: say so, and save again with `replace`.
    Refused
  };
  Outcome outcome = Outcome::Refused;
  std::string words; ///< Where it lies, what is there, or why not.
};

/// Where the text of a draft lives on the disk.
class Store {
public:
  /// Cases are written into `own`; names of cases in `shipped` are not to be taken.
  Store(std::filesystem::path own, std::filesystem::path shipped)
      : own_(std::move(own)), shipped_(std::move(shipped)) {}

  /// Reads an own file, which further saves then go to; the problem in words, or "".
  [[nodiscard]] std::string open(const std::filesystem::path& file, std::string& text);
  /// A draft that has no file yet.
  void forget();

  /// Writes the text as NAME.toml, all of it at once. Asks before it writes over a file that is not this
  /// draft's, or was changed by someone else since it was read.
  [[nodiscard]] Saved save(const std::string& name, const std::string& text, bool replace);

  /// Whether the text differs from what was last read or written.
  [[nodiscard]] bool differs(const std::string& text) const { return !file_ || text != on_disk_; }
  [[nodiscard]] const std::optional<std::filesystem::path>& file() const { return file_; }

private:
  std::filesystem::path own_;
  std::filesystem::path shipped_;
  std::optional<std::filesystem::path> file_;
  std::string on_disk_; ///< Of file_, as last read or written.
};

/// What is wrong with a name for a case; "" when it will do: small letters, digits, _ and -.
[[nodiscard]] std::string name_problem(const std::string& name);

} // namespace matula::drafting
