#pragma once

#include <string>
#include <vector>

namespace matula::exports {

/// Comma-separated values by RFC 4180 (Y. Shafranovich 2005): CRLF, quotes where needed and doubled inside,
/// UTF-8. A cell of words that a table program would take for a formula (it begins with =, +, -, @, a tab or
/// a carriage return) gets an apostrophe before it; plain numbers are left as they are.
class Csv {
public:
  explicit Csv(const std::vector<std::string>& head) : columns_(head.size()) { row(head); }
  /// Throws std::invalid_argument for a row that is longer or shorter than the head.
  void row(const std::vector<std::string>& cells);
  [[nodiscard]] const std::string& text() const { return text_; }

private:
  std::size_t columns_;
  std::string text_;
};

} // namespace matula::exports
