#include "engine/seal/passphrase.hpp"

#include "engine/seal/base32.hpp"

#include <algorithm>
#include <set>

namespace matula::seal {

namespace {

constexpr std::size_t typed_least = 20;
constexpr std::size_t typed_different = 10;
constexpr std::size_t typed_pieces = 16;

/// Different pieces of three letters, so that repeats count once.
std::size_t pieces_of(std::string_view typed) {
  std::set<std::string_view> pieces;
  for (std::size_t i = 0; i + 3 <= typed.size(); ++i) {
    pieces.insert(typed.substr(i, 3));
  }
  return pieces.size();
}

/// Places where the next letter is neither the same nor a neighbour in the alphabet.
std::size_t turns_of(std::string_view typed) {
  std::size_t turns = 0;
  for (std::size_t i = 1; i < typed.size(); ++i) {
    const int step = typed[i] - typed[i - 1];
    turns += step > 1 || step < -1 ? 1 : 0;
  }
  return turns;
}

} // namespace

std::string draw_letters(std::size_t drawn) {
  return in_groups(with_check(base32(random_bytes(drawn)).substr(0, drawn), check_letters));
}

bool is_drawn(std::string_view typed, std::size_t drawn) {
  const std::string letters = tidy(typed);
  return letters.size() == drawn + check_letters && without_check(letters, check_letters).has_value();
}

std::string refuse_drawn(std::string_view typed, std::size_t drawn, const std::string& what) {
  const std::string letters = tidy(typed);
  if (letters.size() != drawn + check_letters) {
    return std::to_string(letters.size()) + " letters and digits, where " + what + " has " +
           std::to_string(drawn + check_letters);
  }
  return without_check(letters, check_letters)
             ? ""
             : what + " with a slip of the pen: its last two letters do not fit the others, so that at "
                      "least one is wrong";
}

std::string refuse_passphrase(std::string_view typed) {
  if (is_drawn(typed, class_letters) || is_drawn(typed, own_letters)) {
    return "";
  }
  if (!std::all_of(typed.begin(), typed.end(), [](char letter) { return letter >= ' ' && letter <= '~'; })) {
    return "letters outside the plain keyboard, which another machine may write in another way";
  }
  const std::set<char> different(typed.begin(), typed.end());
  if (typed.size() < typed_least || different.size() < typed_different || pieces_of(typed) < typed_pieces ||
      turns_of(typed) < typed_different) {
    return "a passphrase that is soon guessed (" + std::to_string(typed.size()) + " characters, " +
           std::to_string(different.size()) + " of them different)";
  }
  return "";
}

Secret passphrase_bytes(std::string_view typed) {
  if (is_drawn(typed, class_letters) || is_drawn(typed, own_letters)) {
    std::string letters = tidy(typed);
    Secret secret(view_of(letters));
    wipe(letters);
    return secret;
  }
  return Secret(view_of(typed));
}

} // namespace matula::seal
