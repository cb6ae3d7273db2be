#include "engine/seal/base32.hpp"

#include "engine/seal/hash.hpp"

#include <algorithm>

namespace matula::seal {

namespace {

constexpr std::string_view alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
constexpr unsigned bits_a_letter = 5;
constexpr unsigned bits_a_byte = 8;
constexpr std::size_t letters_a_block = 8;

} // namespace

std::string base32(View bytes, bool padded) {
  std::string letters;
  unsigned held = 0;
  unsigned bits = 0;
  for (const unsigned byte : bytes) {
    held = (held << bits_a_byte) | byte;
    bits += bits_a_byte;
    while (bits >= bits_a_letter) {
      bits -= bits_a_letter;
      letters += alphabet[(held >> bits) & 31U];
      held &= (1U << bits) - 1U;
    }
  }
  if (bits > 0) {
    letters += alphabet[(held << (bits_a_letter - bits)) & 31U];
  }
  while (padded && letters.size() % letters_a_block != 0) {
    letters += '=';
  }
  return letters;
}

std::optional<Bytes> from_base32(std::string_view letters) {
  Bytes bytes;
  unsigned held = 0;
  unsigned bits = 0;
  for (const char letter : letters) {
    const std::size_t value = alphabet.find(letter);
    if (value == std::string_view::npos) {
      return std::nullopt;
    }
    held = (held << bits_a_letter) | static_cast<unsigned>(value);
    bits += bits_a_letter;
    if (bits >= bits_a_byte) {
      bits -= bits_a_byte;
      bytes.push_back(static_cast<unsigned char>(held >> bits));
      held &= (1U << bits) - 1U;
    }
  }
  return bits < bits_a_letter && held == 0 ? std::optional(bytes) : std::nullopt;
}

std::string in_groups(std::string_view letters, std::size_t each) {
  std::string grouped;
  for (std::size_t i = 0; i < letters.size(); ++i) {
    if (i > 0 && i % each == 0) {
      grouped += '-';
    }
    grouped += letters[i];
  }
  return grouped;
}

std::string tidy(std::string_view typed) {
  std::string letters;
  for (const char letter : typed) {
    switch (letter) {
    case ' ':
    case '-':
    case '\t':
    case '\r':
    case '\n':
      break;
    case '0':
      letters += 'O';
      break;
    case '1':
      letters += 'I';
      break;
    case '8':
      letters += 'B';
      break;
    default:
      letters += letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
    }
  }
  return letters;
}

std::string with_check(std::string_view letters, std::size_t many) {
  const Hash sum = hash({view_of("matula check"), view_of(letters)});
  return std::string(letters) + base32(sum).substr(0, many);
}

std::optional<std::string> without_check(std::string_view letters, std::size_t many) {
  if (letters.size() < many) {
    return std::nullopt;
  }
  const std::string_view body = letters.substr(0, letters.size() - many);
  return with_check(body, many) == letters ? std::optional<std::string>(body) : std::nullopt;
}

} // namespace matula::seal
