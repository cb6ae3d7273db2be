#pragma once

#include "engine/seal/secret.hpp"

#include <string>
#include <string_view>

namespace matula::seal {

/// Letters drawn for a passphrase; five bits each. Two more behind them show a slip of the pen.
inline constexpr std::size_t class_letters = 10;
inline constexpr std::size_t own_letters = 14;
inline constexpr std::size_t nonce_letters = 6;
inline constexpr std::size_t check_letters = 2;
inline constexpr int bits_a_letter_drawn = 5;

/// "ABCD-EFGH-JKLM": `drawn` letters from the system's chance and their check, in groups of four.
[[nodiscard]] std::string draw_letters(std::size_t drawn);

/// Whether this is a word of `draw_letters`, however it is typed (small letters, blanks, no dashes).
[[nodiscard]] bool is_drawn(std::string_view typed, std::size_t drawn);

/// Why a passphrase may not lock anything; "" when it may. One that was drawn here may; a typed one only when
/// it is long: 20 characters at least, ten of them different, letters, digits and marks of the plain
/// keyboard.
[[nodiscard]] std::string refuse_passphrase(std::string_view typed);

/// Why these words cannot be a class's passphrase: the length, or a check that does not fit. "" when they may
/// be.
[[nodiscard]] std::string refuse_drawn(std::string_view typed, std::size_t drawn, const std::string& what);

/// What goes into the key: drawn letters without groups, anything else as typed.
[[nodiscard]] Secret passphrase_bytes(std::string_view typed);

} // namespace matula::seal
