#pragma once

#include "engine/strict/parsed.hpp"

#include <string>
#include <vector>

namespace matula::strict {

/// A TOML text by its bytes, found by the parser's lines and columns. Ends of lines are kept as they are.
class Places {
public:
  explicit Places(const std::string& text);

  /// Byte at the parser's place, whose columns count letters.
  [[nodiscard]] std::size_t at(const toml::source_position& position) const;
  [[nodiscard]] std::size_t size() const { return text_.size(); }
  [[nodiscard]] std::size_t begin_of_line(std::size_t byte) const;
  /// Behind the end of the line.
  [[nodiscard]] std::size_t end_of_line(std::size_t byte) const;
  /// How lines end in this text.
  [[nodiscard]] const std::string& line_end() const { return line_end_; }
  [[nodiscard]] bool ends_line_before(std::size_t byte) const { return byte == 0 || text_[byte - 1] == '\n'; }
  /// Whether a node begins with the bracket of a heading, [x] or [[x]].
  [[nodiscard]] bool is_heading(const toml::source_region& region) const;
  /// Whether a key is the last one of its heading.
  [[nodiscard]] bool closes_heading(const toml::source_region& key) const;
  /// Behind the remarks at the top of the text, with the blank line after them.
  [[nodiscard]] std::size_t behind_first_remarks() const;
  /// Behind the last letter before a byte that is no blank.
  [[nodiscard]] std::size_t behind_last_word(std::size_t byte) const;
  /// The blanks the line before begins with.
  [[nodiscard]] std::string indent_before(std::size_t byte) const;
  /// "a.b." as it stands before the last part of a dotted key.
  [[nodiscard]] std::string dotted_prefix(const toml::key& entry) const;

  [[nodiscard]] std::string insert(std::size_t byte, const std::string& words) const;
  [[nodiscard]] std::string replace(std::size_t from, std::size_t to, const std::string& words) const;
  /// Without the lines, and one of the blank lines around them.
  [[nodiscard]] std::string cut_block(std::size_t from, std::size_t to) const;
  /// Without an entry of an inline table, and the comma it no longer needs.
  [[nodiscard]] std::string cut_inline(std::size_t from, std::size_t to) const;

private:
  const std::string& text_;
  std::string line_end_ = "\n";
  std::vector<std::size_t> lines_; ///< Where each begins.
};

/// A key as TOML writes it: bare, or in quotes where it must.
[[nodiscard]] std::string written_key(const std::string& key);

} // namespace matula::strict
