#pragma once

#include "engine/strict/file.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::strict {

/// Allowed numbers, ends included, and the unit to name in a complaint ("" for none).
struct Range {
  double low = 0;
  double high = 0;
  std::string unit;
};

/// A table of a strict file. Asking for a key makes it known; a wrong value is reported to the file and the
/// fallback (or zero,
/// "", empty) returned, so that reading goes on and finds every problem. Cheap to copy.
class Table {
public:
  [[nodiscard]] bool has(const std::string& key) const; ///< Also makes the key known.
  [[nodiscard]] double number(const std::string& key, const Range& range) const;
  [[nodiscard]] double number_or(const std::string& key, const Range& range, double fallback) const;
  [[nodiscard]] int integer(const std::string& key, const Range& range) const;
  [[nodiscard]] int integer_or(const std::string& key, const Range& range, int fallback) const;
  [[nodiscard]] bool boolean_or(const std::string& key, bool fallback) const;
  [[nodiscard]] std::string text(const std::string& key) const; ///< Required and not empty.
  [[nodiscard]] std::string text_or(const std::string& key, const std::string& fallback) const;
  /// Required; must be one of `allowed`. Gives the first allowed word when it is not.
  [[nodiscard]] std::string word(const std::string& key, const std::vector<std::string>& allowed) const;
  [[nodiscard]] std::string word_or(const std::string& key, const std::vector<std::string>& allowed,
                                    const std::string& fallback) const;
  /// Required array of numbers; `count` 0 takes any length.
  [[nodiscard]] std::vector<double> numbers(const std::string& key, const Range& range,
                                            std::size_t count = 0) const;
  [[nodiscard]] std::vector<double> numbers_or_none(const std::string& key, const Range& range) const;
  [[nodiscard]] std::vector<std::string> texts_or_none(const std::string& key) const;

  /// Required list of words, each one of `allowed` and none twice; every wrong one is reported at its own
  /// place and left out.
  [[nodiscard]] std::vector<std::string> words(const std::string& key,
                                               const std::vector<std::string>& allowed) const;
  [[nodiscard]] bool is_text(const std::string& key) const; ///< Whether words in quotes stand there.

  [[nodiscard]] Table table(const std::string& key) const; ///< Required; an empty table when missing.
  [[nodiscard]] std::optional<Table> table_if_any(const std::string& key) const;
  [[nodiscard]] std::vector<Table> tables(const std::string& key) const; ///< Required array of tables.
  [[nodiscard]] std::vector<Table> tables_or_none(const std::string& key) const;

  /// Keys that stand here, in the order they are written; for tables whose keys are names (species, say).
  /// Does not make them known.
  [[nodiscard]] std::vector<std::string> keys() const;

  /// Adds a problem at the key (at the table itself when the key is missing). `expected` says what to write
  /// instead.
  void complain(const std::string& key, const std::string& expected) const;

  [[nodiscard]] int line() const; ///< Where the table begins.
  [[nodiscard]] int line_of(const std::string& key) const;
  [[nodiscard]] const std::string& file_name() const;

private:
  friend class File;
  Table(File::Impl& file, const void* node) : file_(&file), node_(node) {}
  File::Impl* file_;
  const void* node_; ///< The parser's table; null for an empty stand-in.
};

} // namespace matula::strict
