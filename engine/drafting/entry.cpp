#include "engine/drafting/entry.hpp"

#include "engine/drafting/list_text.hpp"
#include "engine/generator/write.hpp"
#include "engine/scenario/quantity.hpp"
#include "engine/strict/edit.hpp"
#include "engine/strict/table.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <charconv>
#include <cmath>
#include <sstream>

namespace matula::drafting {

namespace {

/// A number as both a person and TOML write it: "6", "-0.002", "1.5e3".
bool is_number(const std::string& words) {
  double ignored = 0;
  const char* const end = words.data() + words.size();
  const auto read = std::from_chars(words.data(), end, ignored);
  const std::size_t first = words.size() > 1 && words.front() == '-' ? 1 : 0;
  const auto digit = [&](std::size_t at) {
    return at < words.size() && words[at] >= '0' && words[at] <= '9';
  };
  const bool leading_zero = digit(first + 1) && words[first] == '0';
  return read.ec == std::errc() && read.ptr == end && digit(first) && words.back() != '.' && !leading_zero;
}

/// Words in quotes, whatever is in them.
std::string in_quotes(const std::string& words) {
  std::string out = "\"";
  constexpr const char* digits = "0123456789ABCDEF";
  for (const char letter : words) {
    const auto code = static_cast<unsigned char>(letter);
    constexpr unsigned char first_printable = 0x20;
    constexpr unsigned char removed = 0x7F;
    if (letter == '"' || letter == '\\') {
      out += std::string("\\") + letter;
    } else if (code < first_printable || code == removed) {
      out += letter == '\n'   ? std::string("\\n")
             : letter == '\t' ? std::string("\\t")
                              : std::string("\\u00") + digits[code >> 4U] + digits[code & 0xFU];
    } else {
      out += letter;
    }
  }
  return out + "\"";
}

/// Several lines, as authors write them; in one line what would not come back so.
std::string in_block(const std::string& words) {
  const bool plain = words.find('\\') == std::string::npos && words.find("\"\"") == std::string::npos &&
                     words.find('\r') == std::string::npos;
  if (!plain) {
    return in_quotes(words);
  }
  return "\"\"\"\n" + words + (words.empty() || words.back() == '\n' ? "" : "\n") + "\"\"\"";
}

} // namespace

std::string trimmed(const std::string& words) {
  constexpr const char* blanks = " \t\r\n";
  const auto first = words.find_first_not_of(blanks);
  return first == std::string::npos ? "" : words.substr(first, words.find_last_not_of(blanks) - first + 1);
}

std::string typed_at(const std::string& text, const std::string& path) {
  const auto raw = strict::value_at(text, strict::path_from(path));
  if (raw && !raw->empty() && raw->front() == '[') {
    return fmt::format("{}", fmt::join(numbers_of_list(*raw), ", "));
  }
  if (!raw || raw->empty() || (raw->front() != '"' && raw->front() != '\'')) {
    return raw.value_or("");
  }
  strict::File alone("value = " + *raw + "\n", "");
  std::string words = alone.root().text_or("value", "");
  if (!words.empty() && words.back() == '\n') {
    words.pop_back(); // The line end before closing quotes that stand in a line of their own.
  }
  return words;
}

std::string toml_of(Entry entry, const std::string& typed, const std::string& unit) {
  const std::string words = trimmed(typed);
  switch (entry) {
  case Entry::Number:
    return is_number(words) ? words : in_quotes(words);
  case Entry::Quantity:
    return in_quotes(is_number(words) && !unit.empty() ? words + " " + unit : words);
  case Entry::Paragraph:
    return in_block(words);
  case Entry::Numbers: {
    const auto numbers = numbers_typed(words);
    return numbers.empty() ? in_quotes(words) : with_numbers("", numbers);
  }
  case Entry::YesNo:
    return words == "true" || words == "false" ? words : in_quotes(words);
  case Entry::Line:
  case Entry::Choice:
    break;
  }
  return in_quotes(words);
}

std::vector<std::string> numbers_typed(const std::string& typed) {
  std::vector<std::string> numbers;
  std::string rest = typed;
  for (char& letter : rest) {
    letter = letter == ',' || letter == '[' || letter == ']' ? ' ' : letter;
  }
  std::istringstream in(rest);
  for (std::string word; in >> word;) {
    if (!is_number(word)) {
      return {};
    }
    numbers.push_back(word);
  }
  return numbers;
}

std::string stepped(const std::string& value, bool more, double step) {
  const auto written = scenario::split_quantity(value);
  double number = 0;
  const auto read = std::from_chars(value.data(), value.data() + value.size(), number);
  if (!written && (read.ec != std::errc() || read.ptr != value.data() + value.size())) {
    return value;
  }
  number = written ? written->value : number;
  const std::string unit = written ? " " + written->unit : "";
  constexpr double quarter = 1.25;
  constexpr int figures = 3;
  if (step <= 0) {
    return generator::plain_number(more ? number * quarter : number / quarter, figures) + unit;
  }
  // Onto the steps' own marks, so that the way back leads to the same number.
  const double marks = std::round(number / step) + (more ? 1 : -1);
  const double next = marks * step;
  const std::string sign = next < 0 ? "-" : "";
  return (std::abs(next) < step / 2 ? "0" : sign + generator::plain_number(std::abs(next), figures)) + unit;
}

} // namespace matula::drafting
