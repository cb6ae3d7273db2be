#include "engine/seal/names.hpp"

#include <algorithm>

namespace matula::seal {

namespace {

constexpr std::size_t longest_name = 40;

bool is_plain(char letter) {
  return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') ||
         (letter >= '0' && letter <= '9');
}

unsigned byte_at(std::string_view words, std::size_t at) {
  return static_cast<unsigned char>(words[at]);
}

/// Bytes of the sign that begins here; 0 when it is none (Unicode 15, table 3-7).
std::size_t sign_at(std::string_view words, std::size_t at) {
  const unsigned first = byte_at(words, at);
  if (first < 0x80) {
    return 1;
  }
  const std::size_t size = first >= 0xC2 && first <= 0xDF   ? 2
                           : first >= 0xE0 && first <= 0xEF ? 3
                           : first >= 0xF0 && first <= 0xF4 ? 4
                                                            : 0;
  if (size == 0 || at + size > words.size()) {
    return 0;
  }
  for (std::size_t i = 1; i < size; ++i) {
    if ((byte_at(words, at + i) & 0xC0U) != 0x80) {
      return 0;
    }
  }
  const unsigned second = byte_at(words, at + 1);
  const bool wrong = (first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F) ||
                     (first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F);
  return wrong ? 0 : size;
}

bool is_utf8(std::string_view words, std::string_view allowed) {
  std::size_t at = 0;
  while (at < words.size()) {
    const std::size_t size = sign_at(words, at);
    const unsigned first = byte_at(words, at);
    const bool control = first < 0x20 || first == 0x7F;
    if (size == 0 || (control && allowed.find(words[at]) == std::string_view::npos)) {
      return false;
    }
    at += size;
  }
  return true;
}

} // namespace

bool is_name(std::string_view word) {
  return !word.empty() && word.size() <= longest_name && is_plain(word.front()) &&
         std::all_of(word.begin(), word.end(),
                     [](char letter) { return is_plain(letter) || letter == '-' || letter == '_'; });
}

bool is_line(std::string_view words, std::size_t most) {
  return words.size() <= most && is_utf8(words, "");
}

bool is_text(std::string_view words) {
  return is_utf8(words, "\n\r\t");
}

} // namespace matula::seal
