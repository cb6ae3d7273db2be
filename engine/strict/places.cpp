#include "engine/strict/places.hpp"

#include <algorithm>

namespace matula::strict {

namespace {

bool is_blank(char letter) {
  return letter == ' ' || letter == '\t';
}

/// Whether a byte goes on with the letter begun before it (UTF-8).
bool goes_on(char byte) {
  constexpr unsigned mask = 0xC0U;
  constexpr unsigned follows = 0x80U;
  return (static_cast<unsigned char>(byte) & mask) == follows;
}

} // namespace

Places::Places(const std::string& text) : text_(text), lines_{0} {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\n') {
      lines_.push_back(i + 1);
    }
  }
  const auto first = text.find('\n');
  line_end_ = first != std::string::npos && first > 0 && text[first - 1] == '\r' ? "\r\n" : "\n";
}

std::size_t Places::at(const toml::source_position& position) const {
  std::size_t byte = lines_[std::min<std::size_t>(position.line, lines_.size()) - 1];
  constexpr const char* mark = "\xEF\xBB\xBF"; // A byte-order mark is no letter.
  byte += byte == 0 && text_.compare(0, 3, mark) == 0 ? 3 : 0;
  for (auto column = position.column; column > 1 && byte < text_.size(); --column) {
    do {
      ++byte;
    } while (byte < text_.size() && goes_on(text_[byte]));
  }
  return byte;
}

std::size_t Places::begin_of_line(std::size_t byte) const {
  const auto newline = byte == 0 ? std::string::npos : text_.rfind('\n', byte - 1);
  return newline == std::string::npos ? 0 : newline + 1;
}

std::size_t Places::end_of_line(std::size_t byte) const {
  const auto newline = text_.find('\n', byte);
  return newline == std::string::npos ? text_.size() : newline + 1;
}

bool Places::is_heading(const toml::source_region& region) const {
  const std::size_t byte = at(region.begin);
  if (byte >= text_.size() || text_[byte] != '[') {
    return false;
  }
  const std::size_t line = begin_of_line(byte);
  return std::all_of(text_.begin() + static_cast<std::ptrdiff_t>(line),
                     text_.begin() + static_cast<std::ptrdiff_t>(byte), is_blank);
}

bool Places::closes_heading(const toml::source_region& key) const {
  std::size_t byte = at(key.end);
  while (byte < text_.size() && is_blank(text_[byte])) {
    ++byte;
  }
  return byte < text_.size() && text_[byte] == ']';
}

std::size_t Places::behind_first_remarks() const {
  std::size_t byte = 0;
  while (byte < text_.size() && (text_[byte] == '#' || text_[byte] == '\n' || text_[byte] == '\r')) {
    byte = end_of_line(byte);
  }
  return byte;
}

std::size_t Places::behind_last_word(std::size_t byte) const {
  while (byte > 0 && is_blank(text_[byte - 1])) {
    --byte;
  }
  return byte;
}

std::string Places::indent_before(std::size_t byte) const {
  if (byte == 0) {
    return "";
  }
  const std::size_t line = begin_of_line(byte - 1);
  std::size_t end = line;
  while (end < text_.size() && is_blank(text_[end])) {
    ++end;
  }
  return text_.substr(line, end - line);
}

std::string Places::dotted_prefix(const toml::key& entry) const {
  const std::size_t line = begin_of_line(at(entry.source().begin));
  std::size_t from = line;
  while (from < text_.size() && is_blank(text_[from])) {
    ++from;
  }
  return text_.substr(from, at(entry.source().begin) - from);
}

std::string Places::insert(std::size_t byte, const std::string& words) const {
  return replace(byte, byte, words);
}

std::string Places::replace(std::size_t from, std::size_t to, const std::string& words) const {
  return text_.substr(0, from) + words + text_.substr(to);
}

std::string Places::cut_block(std::size_t from, std::size_t to) const {
  const std::size_t before = from == 0 ? 0 : begin_of_line(from - 1);
  const bool blank = text_.find_first_not_of("\r\n \t", before) >= from;
  return replace(blank ? before : from, to, "");
}

std::string Places::cut_inline(std::size_t from, std::size_t to) const {
  std::size_t end = to;
  while (end < text_.size() && is_blank(text_[end])) {
    ++end;
  }
  if (end < text_.size() && text_[end] == ',') {
    ++end;
    while (end < text_.size() && is_blank(text_[end])) {
      ++end;
    }
    return replace(from, end, "");
  }
  std::size_t begin = behind_last_word(from);
  begin -= begin > 0 && text_[begin - 1] == ',' ? 1 : 0;
  return replace(begin, to, "");
}

std::string written_key(const std::string& key) {
  const bool bare = !key.empty() && std::all_of(key.begin(), key.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
  });
  if (bare) {
    return key;
  }
  std::string quoted = "\"";
  for (const char letter : key) {
    quoted += letter == '"' || letter == '\\' ? std::string("\\") + letter : std::string(1, letter);
  }
  return quoted + "\"";
}

} // namespace matula::strict
